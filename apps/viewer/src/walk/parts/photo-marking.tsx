/** Marks on a photo, moved by finger or arrow keys; what a finger hides is shown beside it, enlarged. */
import { type CSSProperties, type PointerEvent, useRef, useState } from 'react';
import { useWords } from '../doing/walk-session.ts';
import type { MarkedPhoto } from '../stop/marked-photo.ts';

/** A place as shares of the photo's width and height. */
type Point = readonly [x: number, y: number];

/** At first: four corners in order, then the middle of the clean patch. */
export const FIRST_MARKS: readonly Point[] = [
  [0.3, 0.3],
  [0.7, 0.3],
  [0.7, 0.7],
  [0.3, 0.7],
  [0.5, 0.12],
];
export const PATCH = 4;
/** Half the patch's side, as a share of the photo's shorter side. */
export const PATCH_HALF = 0.05;

interface Props {
  readonly photo: MarkedPhoto;
  readonly marks: readonly Point[];
  readonly move: (marks: readonly Point[]) => void;
}

/** A mark taken hold of: how far from its middle, so that it does not jump below the finger. */
interface Held {
  readonly mark: number;
  readonly off: Point;
  readonly shown: { readonly width: number; readonly height: number };
}

export function PhotoMarking({ photo, marks, move }: Props) {
  const { quadrat } = useWords();
  const box = useRef<HTMLDivElement>(null);
  const [held, hold] = useState<Held | null>(null);
  const put = (i: number, [x, y]: Point): void => {
    const inside = (value: number): number => Math.min(1, Math.max(0, value));
    move(marks.map((mark, k): Point => (k === i ? [inside(x), inside(y)] : mark)));
  };
  const placeOf = (event: PointerEvent): Point => {
    const { left, top, width, height } = (box.current as HTMLElement).getBoundingClientRect();
    return [(event.clientX - left) / width, (event.clientY - top) / height];
  };
  const take = (event: PointerEvent, mark: number): void => {
    const [x, y] = placeOf(event);
    const { width, height } = (box.current as HTMLElement).getBoundingClientRect();
    box.current?.setPointerCapture(event.pointerId);
    hold({ mark, off: [marks[mark][0] - x, marks[mark][1] - y], shown: { width, height } });
  };
  const drag = (event: PointerEvent): void => {
    if (!held) return;
    const [x, y] = placeOf(event);
    put(held.mark, [x + held.off[0], y + held.off[1]]);
  };
  const step = (i: number, key: string, isFar: boolean): void => {
    const by = STEPS[key];
    const far = isFar ? FAR : 1;
    if (by) put(i, [marks[i][0] + far * by[0], marks[i][1] + far * by[1]]);
  };
  const patchPx = 2 * PATCH_HALF * Math.min(photo.width, photo.height);
  const style = {
    '--ratio': photo.width / photo.height,
    '--patch-width': `${(100 * patchPx) / photo.width}%`,
  } as CSSProperties;
  return (
    <div className="photo-room">
      <div
        className="marking"
        ref={box}
        style={style}
        onPointerMove={drag}
        onPointerUp={() => hold(null)}
        onPointerCancel={() => hold(null)}
      >
        <img src={photo.url} alt="" draggable={false} />
        <svg viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true">
          {['under', 'over'].map((layer) => (
            <polygon key={layer} className={layer} points={marks.slice(0, PATCH).join(' ')} />
          ))}
        </svg>
        <span className="patch" style={placed(marks[PATCH])} />
        {marks.map((mark, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its place in the order
            key={i}
            type="button"
            className={i === PATCH ? 'handle square' : 'handle'}
            aria-label={i === PATCH ? quadrat.cleanPatch : quadrat.corner(i + 1)}
            style={placed(mark)}
            onPointerDown={(event) => take(event, i)}
            onKeyDown={({ key, shiftKey }) => step(i, key, shiftKey)}
          />
        ))}
        {held ? <Loupe photo={photo} at={marks[held.mark]} shown={held.shown} /> : null}
      </div>
    </div>
  );
}

/** A step of the arrow keys, and how much farther one with Shift goes. */
const STEP = 0.0025;
const FAR = 10;
const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

const placed = ([x, y]: Point): CSSProperties => ({ left: `${x * 100}%`, top: `${y * 100}%` });

const LOUPE_PX = 128;
const ENLARGED = 4;

/** In the upper corner that the mark is farther from. */
function Loupe({ photo, at: [x, y], shown }: { photo: MarkedPhoto; at: Point; shown: Held['shown'] }) {
  const [width, height] = [shown.width * ENLARGED, shown.height * ENLARGED];
  const style: CSSProperties = {
    width: LOUPE_PX,
    height: LOUPE_PX,
    [x < 0.5 ? 'right' : 'left']: 0,
    backgroundImage: `url(${photo.url})`,
    backgroundSize: `${width}px ${height}px`,
    backgroundPosition: `${LOUPE_PX / 2 - x * width}px ${LOUPE_PX / 2 - y * height}px`,
  };
  return <div className="loupe" style={style} aria-hidden="true" />;
}
