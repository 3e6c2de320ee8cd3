/** A plot on the pavement: counted field by field, or measured on a photo. */

import { METRES_PER_FOOT } from '@crownfall/geometry';
import { countedShare } from '@crownfall/imagery';
import { useState } from 'react';
import { newId } from '../../edits/new-id.ts';
import { goBack, useShown, useUnits, useWalk, useWords } from '../doing/walk-session.ts';
import { changeStop } from '../doing/walking.ts';
import { Chips, ScreenHead } from '../parts/parts.tsx';
import { pctOf } from '../parts/quantities-shown.ts';
import { TakePhoto } from '../parts/take-photo.tsx';
import type { MarkedPhoto } from '../stop/marked-photo.ts';
import type { MeasuredQuadrat, ShareFound } from '../stop/stop.ts';
import { PhotoQuadratScreen } from './photo-quadrat-screen.tsx';
import { PlaceOnMap } from './place-on-map.tsx';

/** Frames of known side that are carried. */
const SIDES_M = { metric: [0.5, 1], us: [1, 2, 3] } as const;
const ROWS = 5;
const FIELDS = ROWS * ROWS;

export function QuadratScreen() {
  const { quadrat } = useWords();
  const units = useUnits();
  const sides: readonly number[] = SIDES_M[units];
  const [side, setSide] = useState(sides[0]);
  const [method, setMethod] = useState<MeasuredQuadrat['method']>('count');
  const sideM = units === 'us' ? side * METRES_PER_FOOT : side;
  const sideWords = Object.fromEntries(sides.map((each) => [each, quadrat.size(each, units === 'us' ? 'ft' : 'm')]));
  const keep = useKeep(sideM);
  const [photo, setPhoto] = useState<MarkedPhoto | null>(null);
  const take = (taken: MarkedPhoto | null): void => {
    if (photo) URL.revokeObjectURL(photo.url);
    setPhoto(taken);
  };
  const count = (): void => {
    take(null);
    setMethod('count');
  };
  if (photo)
    return <PhotoQuadratScreen key={photo.url} photo={photo} sideM={sideM} keep={keep} take={take} count={count} />;
  return (
    <main className="tree-card over-map">
      <ScreenHead title={quadrat.title} />
      <div className="tree-text">
        <PlaceOnMap how={quadrat.whereHow} here={quadrat.here} />
        <Chips
          label={quadrat.frame}
          of={sides}
          words={sideWords}
          value={side}
          choose={(each) => each && setSide(each)}
        />
        <Chips
          label={quadrat.by}
          of={['count', 'photo'] as const}
          words={{ count: quadrat.count, photo: quadrat.photo }}
          value={method}
          choose={(each) => each && setMethod(each)}
        />
        {method === 'count' ? (
          <Counting keep={keep} />
        ) : (
          <div className="thumb-bar column">
            <TakePhoto className="main wide" take={take} words={quadrat.takePhoto} />
          </div>
        )}
      </div>
    </main>
  );
}

/** Notes the quadrat where the cross lies, and goes back to the tree. */
function useKeep(sideM: number): (found: ShareFound) => void {
  const walk = useWalk();
  const quadrats = useShown((state) => state.stop?.quadrats ?? NONE);
  return ({ share, range, method }) => {
    const at = walk.mapMiddle?.();
    if (!at) return;
    const made: MeasuredQuadrat = {
      quadratId: `Q-${newId().slice(0, 8)}`,
      areaM2: Math.round(sideM * sideM * 1e6) / 1e6,
      stainedPct: tenths(share),
      range: [tenths(range[0]), tenths(range[1])],
      method,
      at,
    };
    void changeStop(walk, { quadrats: [...quadrats, made] });
    goBack();
  };
}

const NONE: readonly MeasuredQuadrat[] = [];
/** A share 0–1 in per cent to one decimal. */
const tenths = (share: number): number => Math.round(share * 1000) / 10;

function Counting({ keep }: { readonly keep: (found: ShareFound) => void }) {
  const { quadrat } = useWords();
  const [stained, setStained] = useState<ReadonlySet<number>>(new Set());
  const toggle = (field: number): void => {
    const next = new Set(stained);
    if (!next.delete(field)) next.add(field);
    setStained(next);
  };
  const counted = countedShare(stained.size, FIELDS);
  if (!counted.defined) return null;
  const { share, interval } = counted.value;
  const range = [interval.lower, interval.upper] as const;
  return (
    <>
      <p>{quadrat.countHow}</p>
      <div className="count-grid">
        {Array.from({ length: FIELDS }, (_, field) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a field is its place in the frame
            key={field}
            type="button"
            aria-label={quadrat.field(Math.floor(field / ROWS) + 1, (field % ROWS) + 1)}
            aria-pressed={stained.has(field)}
            onClick={() => toggle(field)}
          />
        ))}
      </div>
      <div className="thumb-bar column">
        <output className="share-found" aria-live="polite">
          {quadrat.share(pctOf(share * 100), pctOf(range[0] * 100), pctOf(range[1] * 100))}
        </output>
        <button type="button" className="main wide" onClick={() => keep({ share, range, method: 'count' })}>
          {quadrat.keep}
        </button>
      </div>
    </>
  );
}
