/** The button that opens the camera and hands over the picture taken. */
import { useRef, useState } from 'react';
import { useWords } from '../doing/walk-session.ts';
import { type MarkedPhoto, readPhoto } from '../stop/marked-photo.ts';

interface Props {
  readonly className: string;
  readonly words: string;
  readonly take: (photo: MarkedPhoto) => void;
}

export function TakePhoto({ className, words, take }: Props) {
  const { quadrat } = useWords();
  const input = useRef<HTMLInputElement>(null);
  const [failed, setFailed] = useState(false);
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const photo = await readPhoto(file).catch(() => null);
    setFailed(photo === null);
    if (photo) take(photo);
  };
  return (
    <>
      <input
        ref={input}
        className="spoken-only"
        type="file"
        accept="image/*"
        capture="environment"
        tabIndex={-1}
        aria-label={words}
        onChange={({ target }) => {
          void read(target.files?.[0]);
          target.value = '';
        }}
      />
      {failed ? (
        <p className="warn" role="alert">
          {quadrat.noPicture}
        </p>
      ) : null}
      <button type="button" className={className} onClick={() => input.current?.click()}>
        {words}
      </button>
    </>
  );
}
