/** A quadrat on a photo: the frame's corners and a clean patch are marked by hand, the share is reckoned, the person confirms. */
import type { PhotoQuadrat, QuadratRefused } from '@crownfall/imagery';
import { type PointerEvent, useEffect, useRef, useState } from 'react';
import { useWords } from '../doing/walk-session.ts';
import { pctOf } from '../parts/quantities-shown.ts';
import { type MarkedPhoto, measurePhoto, readPhoto } from '../stop/marked-photo.ts';
import type { ShareFound } from '../stop/stop.ts';

interface PanelProps {
  readonly sideM: number;
  readonly keep: (found: ShareFound) => void;
  readonly count: () => void;
}

type Point = readonly [x: number, y: number];

/** Marks at first, as shares of the photo: four corners in order, then the middle of the clean patch. */
const FIRST_MARKS: readonly Point[] = [
  [0.25, 0.25],
  [0.75, 0.25],
  [0.75, 0.75],
  [0.25, 0.75],
  [0.5, 0.1],
];
const PATCH = 4;
/** Half the patch's side, as a share of the photo's shorter side. */
const PATCH_HALF = 0.05;

export function PhotoQuadratPanel({ sideM, keep, count }: PanelProps) {
  const { quadrat } = useWords();
  const [photo, setPhoto] = useState<MarkedPhoto | null>(null);
  const [marks, setMarks] = useState(FIRST_MARKS);
  const [found, setFound] = useState<PhotoQuadrat | QuadratRefused | 'reckoning' | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setPhoto(await readPhoto(file));
    setFound(null);
  };
  const reckon = async (): Promise<void> => {
    if (!photo) return;
    setFound('reckoning');
    setFound(
      await measurePhoto(photo, { sideM, corners: marks.slice(0, PATCH), patch: marks[PATCH], half: PATCH_HALF }),
    );
  };
  const result = found !== null && found !== 'reckoning' ? found : null;
  return (
    <>
      <input
        ref={input}
        className="spoken-only"
        type="file"
        accept="image/*"
        capture="environment"
        tabIndex={-1}
        aria-label={quadrat.takePhoto}
        onChange={({ target }) => void take(target.files?.[0])}
      />
      {photo && !result?.known ? (
        <>
          <p>{quadrat.corners}</p>
          <p>{quadrat.patch}</p>
          <Marking photo={photo} marks={marks} move={setMarks} />
        </>
      ) : null}
      {result?.known ? <Result found={result} /> : null}
      {result && !result.known ? (
        <p className="warn" role="status">
          {quadrat.refused[result.because]}
        </p>
      ) : null}
      <div className="thumb-bar column">
        {result?.known ? (
          <>
            <button
              type="button"
              className="main wide"
              onClick={() => keep({ share: result.stainedShare, range: rangeOf(result), method: 'photo' })}
            >
              {quadrat.confirm}
            </button>
            <div className="button-row">
              <button type="button" className="plain" onClick={count}>
                {quadrat.recount}
              </button>
              <button type="button" className="plain" onClick={() => setFound(null)}>
                {quadrat.again}
              </button>
            </div>
          </>
        ) : (
          <>
            <button type="button" className={photo ? 'plain wide' : 'main wide'} onClick={() => input.current?.click()}>
              {quadrat.takePhoto}
            </button>
            {photo ? (
              <button
                type="button"
                className="main wide"
                disabled={found === 'reckoning'}
                onClick={() => void reckon()}
              >
                {found === 'reckoning' ? quadrat.reckoning : quadrat.compute}
              </button>
            ) : null}
          </>
        )}
      </div>
    </>
  );
}

const rangeOf = ({ interval }: PhotoQuadrat): readonly [number, number] => [interval.lower, interval.upper];

interface MarkingProps {
  readonly photo: MarkedPhoto;
  readonly marks: readonly Point[];
  readonly move: (marks: readonly Point[]) => void;
}

/** By finger, or by arrow keys, a hundredth of the photo a step. */
function Marking({ photo, marks, move }: MarkingProps) {
  const { quadrat } = useWords();
  const box = useRef<HTMLDivElement>(null);
  const held = useRef<number | null>(null);
  const put = (i: number, x: number, y: number): void => {
    const inside = (value: number): number => Math.min(1, Math.max(0, value));
    move(marks.map((mark, k): Point => (k === i ? [inside(x), inside(y)] : mark)));
  };
  const drag = (event: PointerEvent): void => {
    const frame = box.current?.getBoundingClientRect();
    if (!frame || held.current === null) return;
    put(held.current, (event.clientX - frame.left) / frame.width, (event.clientY - frame.top) / frame.height);
  };
  const step = (i: number, key: string): void => {
    const by = STEPS[key];
    if (by) put(i, marks[i][0] + by[0], marks[i][1] + by[1]);
  };
  return (
    <div
      className="marking"
      ref={box}
      onPointerMove={drag}
      onPointerUp={() => {
        held.current = null;
      }}
    >
      <img src={photo.url} alt="" />
      <svg viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true">
        <polygon
          points={marks
            .slice(0, PATCH)
            .map((mark) => mark.join(','))
            .join(' ')}
        />
      </svg>
      {marks.map(([x, y], i) => (
        <button
          // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its place in the order
          key={i}
          type="button"
          className={i === PATCH ? 'handle patch' : 'handle'}
          aria-label={i === PATCH ? quadrat.cleanPatch : quadrat.corner(i + 1)}
          style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
          onPointerDown={(event) => {
            held.current = i;
            box.current?.setPointerCapture(event.pointerId);
          }}
          onKeyDown={({ key }) => step(i, key)}
        />
      ))}
    </div>
  );
}

const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-0.01, 0],
  ArrowRight: [0.01, 0],
  ArrowUp: [0, -0.01],
  ArrowDown: [0, 0.01],
};

/** What was judged, with the stained cells hatched: the person looks before it is kept. */
function Result({ found }: { readonly found: PhotoQuadrat }) {
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
      <canvas ref={canvas} width={cells.width} height={cells.height} role="img" aria-label={quadrat.shadow} />
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
