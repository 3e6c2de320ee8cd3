/**
 * Features ready to be sent: their GeoJSON text end to end in one buffer, with ids, boxes and days beside it. It crosses from
 * the reckoning thread by handing over memory, and a page of it is sent without parsing anything.
 */
import Flatbush from 'flatbush';

export interface FeatureSet {
  readonly ids: readonly string[];
  /** UTF-8; feature i lies from starts[i] to starts[i + 1]. */
  readonly text: Uint8Array;
  readonly starts: Float64Array;
  /** West, south, east, north of each feature, degrees; NaN for a feature without a place. */
  readonly boxes: Float64Array;
  /** ISO day of each feature's observation; null where it has none. */
  readonly days: readonly (string | null)[];
  /** Packed box index of the features that have a place, `placed[k]` being the k-th of them; null when none has. */
  readonly index: ArrayBuffer | null;
  readonly placed: Uint32Array;
}

export interface SetFeature {
  readonly id: string;
  readonly day: string | null;
  readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** Packs features, in their order, into a set. Ids must be unique. Time n log n. */
export function featureSet(features: Iterable<SetFeature>): FeatureSet {
  const ids: string[] = [];
  const days: (string | null)[] = [];
  const texts: Uint8Array[] = [];
  const boxes: number[] = [];
  const encoder = new TextEncoder();
  for (const { id, day, geometry, properties } of features) {
    ids.push(id);
    days.push(day);
    texts.push(encoder.encode(JSON.stringify({ type: 'Feature', id, geometry, properties })));
    boxes.push(...boxOf(geometry?.coordinates));
  }
  const packed = Float64Array.from(boxes);
  return { ids, days, ...joined(texts), boxes: packed, ...indexOf(packed) };
}

/** The memory that may be handed over to another thread without a copy. */
export function memoryOf({ text, starts, boxes, index, placed }: FeatureSet): ArrayBuffer[] {
  const views = [text, starts, boxes, placed].map(({ buffer }) => buffer as ArrayBuffer);
  return index === null ? views : [...views, index];
}

function joined(texts: readonly Uint8Array[]): Pick<FeatureSet, 'text' | 'starts'> {
  const starts = new Float64Array(texts.length + 1);
  texts.forEach((text, i) => {
    starts[i + 1] = starts[i] + text.length;
  });
  const text = new Uint8Array(starts[texts.length]);
  texts.forEach((each, i) => {
    text.set(each, starts[i]);
  });
  return { text, starts };
}

function indexOf(boxes: Float64Array): Pick<FeatureSet, 'index' | 'placed'> {
  const placed = Uint32Array.from({ length: boxes.length / 4 }, (_, i) => i).filter((i) => !Number.isNaN(boxes[4 * i]));
  if (placed.length === 0) return { index: null, placed };
  const index = new Flatbush(placed.length);
  for (const i of placed) index.add(boxes[4 * i], boxes[4 * i + 1], boxes[4 * i + 2], boxes[4 * i + 3]);
  index.finish();
  return { index: index.data as ArrayBuffer, placed };
}

function boxOf(coordinates: unknown): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  widen(box, coordinates);
  return box[0] <= box[2] ? box : [NaN, NaN, NaN, NaN];
}

function widen(box: [number, number, number, number], coordinates: unknown): void {
  if (!Array.isArray(coordinates)) return;
  if (typeof coordinates[0] !== 'number') {
    for (const each of coordinates) widen(box, each);
    return;
  }
  const [x, y] = coordinates as [number, number];
  box[0] = Math.min(box[0], x);
  box[1] = Math.min(box[1], y);
  box[2] = Math.max(box[2], x);
  box[3] = Math.max(box[3], y);
}
