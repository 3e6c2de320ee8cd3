/** A quadrat on a photo: the frame's corners and a clean patch are marked by hand, the share is reckoned, the person confirms. */
import type { PhotoQuadrat, QuadratRefused } from '@crownfall/imagery';
import { useState } from 'react';
import { useWords } from '../doing/walk-session.ts';
import { Mark } from '../parts/mark.tsx';
import { FIRST_MARKS, PATCH, PATCH_HALF, PhotoMarking } from '../parts/photo-marking.tsx';
import { PhotoResult, rangeOf } from '../parts/photo-result.tsx';
import { TakePhoto } from '../parts/take-photo.tsx';
import { type MarkedPhoto, measurePhoto } from '../stop/marked-photo.ts';
import type { ShareFound } from '../stop/stop.ts';

interface Props {
  readonly photo: MarkedPhoto;
  readonly sideM: number;
  readonly keep: (found: ShareFound) => void;
  readonly take: (photo: MarkedPhoto | null) => void;
  readonly count: () => void;
}

export function PhotoQuadratScreen({ photo, sideM, keep, take, count }: Props) {
  const { quadrat, back } = useWords();
  const [marks, setMarks] = useState(FIRST_MARKS);
  const [found, setFound] = useState<PhotoQuadrat | QuadratRefused | 'reckoning' | 'failed' | null>(null);
  const result = found !== null && typeof found === 'object' && found.known ? found : null;
  const reckon = async (): Promise<void> => {
    setFound('reckoning');
    const corners = marks.slice(0, PATCH);
    const wish = { sideM, corners, patch: marks[PATCH], half: PATCH_HALF };
    setFound(await measurePhoto(photo, wish).catch(() => 'failed' as const));
  };
  return (
    <main className="photo-screen">
      <header className="screen-head">
        <button type="button" className="icon" aria-label={back} onClick={() => take(null)}>
          <Mark name="back" />
        </button>
        <h1>{quadrat.onPhoto}</h1>
      </header>
      {result ? (
        <PhotoResult found={result} />
      ) : (
        <>
          <p className={isRefusal(found) ? 'warn' : undefined} role="status">
            {isRefusal(found) ? quadrat.refused[found === 'failed' ? found : found.because] : quadrat.markHow}
          </p>
          <PhotoMarking
            photo={photo}
            marks={marks}
            move={(moved) => {
              setMarks(moved);
              setFound(null);
            }}
          />
        </>
      )}
      <div className="thumb-bar column">
        {result ? (
          <button
            type="button"
            className="main wide"
            onClick={() => keep({ share: result.stainedShare, range: rangeOf(result), method: 'photo' })}
          >
            {quadrat.confirm}
          </button>
        ) : (
          <button type="button" className="main wide" disabled={found === 'reckoning'} onClick={() => void reckon()}>
            {found === 'reckoning' ? quadrat.reckoning : quadrat.compute}
          </button>
        )}
        <div className="button-row halves">
          <button type="button" className="plain" onClick={count}>
            {result ? quadrat.recount : quadrat.countInstead}
          </button>
          {result ? (
            <button type="button" className="plain" onClick={() => setFound(null)}>
              {quadrat.again}
            </button>
          ) : (
            <TakePhoto className="plain" take={take} words={quadrat.another} />
          )}
        </div>
      </div>
    </main>
  );
}

function isRefusal(found: PhotoQuadrat | QuadratRefused | string | null): found is QuadratRefused | 'failed' {
  return found === 'failed' || (found !== null && typeof found === 'object' && !found.known);
}
