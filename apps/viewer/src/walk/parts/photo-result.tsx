/** What was judged on a photo, with the stained cells hatched: the person looks before it is kept. */
import type { PhotoQuadrat } from '@crownfall/imagery';
import { useEffect, useRef } from 'react';
import { useWords } from '../doing/walk-session.ts';
import { pctOf } from './quantities-shown.ts';

export const rangeOf = ({ interval }: PhotoQuadrat): readonly [number, number] => [interval.lower, interval.upper];

export function PhotoResult({ found }: { readonly found: PhotoQuadrat }) {
  const { quadrat } = useWords();
  const canvas = useRef<HTMLCanvasElement>(null);
  const { cells, stainedShare, notes } = found;
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!pen) return;
    const picture = new ImageData(new Uint8ClampedArray(cells.rgba), cells.width, cells.height);
    cells.kinds.forEach((kind, i) => {
      const isHatch = ((i % cells.width) + Math.floor(i / cells.width)) % 6 < 2;
      if ((kind === 1 || kind === 3) && isHatch) picture.data.set([179, 0, 27, 255], 4 * i);
    });
    pen.putImageData(picture, 0, 0);
  }, [cells]);
  const [lower, upper] = rangeOf(found);
  return (
    <div className="photo-result">
      <div className="photo-room">
        <canvas ref={canvas} width={cells.width} height={cells.height} role="img" aria-label={quadrat.shadow} />
      </div>
      <output className="share-found">
        {quadrat.share(pctOf(stainedShare * 100), pctOf(lower * 100), pctOf(upper * 100))}
      </output>
      <p>{quadrat.shadow}</p>
      {notes.map((note) => (
        <p key={note} className="hint">
          {quadrat.notes[note]}
        </p>
      ))}
    </div>
  );
}
