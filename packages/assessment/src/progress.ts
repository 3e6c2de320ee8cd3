/** How a long run tells where it is. The caller decides what to do with it; a run is the same with and without. */

export const STAGES = [
  'survey',
  'crowns',
  'pavement',
  'blocks',
  'overlay',
  'stain',
  'rank',
  'draws',
  'results',
] as const;
export type Stage = (typeof STAGES)[number];

/** Called at the start of a stage (`done` 0), now and then within it, and at its end (`done` = `total`). */
export type Progress = (stage: Stage, done: number, total: number) => void;

export const noProgress: Progress = () => {};

/** Steps between two calls within a stage. */
const STRIDE = 1000;

/** Passes through a list with progress: an iterator over `[index, item]`. */
export function* counted<T>(stage: Stage, items: readonly T[], progress: Progress): Generator<[number, T]> {
  for (let i = 0; i < items.length; i++) {
    if (i % STRIDE === 0) progress(stage, i, items.length);
    yield [i, items[i]];
  }
  progress(stage, items.length, items.length);
}
