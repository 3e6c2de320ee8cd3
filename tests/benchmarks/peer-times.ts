/** Times of one peer on a sample of the scene, scaled to the whole. */
import { reckonOverlay } from '@crownfall/geometry';
import { asRegion, type StreetScene } from './street-scene.ts';

/** CPU milliseconds. */
export interface Measured {
  readonly min: number;
  readonly median: number;
}

/** What peers.mjs gives; shapes are the peer's own. */
interface Peer {
  readonly name: string;
  readonly samplePieces: number;
  readonly shape: (ring: Float64Array) => unknown;
  readonly pair: (piece: unknown, crown: unknown) => number;
  readonly union: (piece: unknown, crowns: readonly unknown[]) => number;
  readonly offset?: (crown: unknown, distanceM: number) => number;
}

export interface PeerResult {
  readonly name: string;
  readonly pairs: Measured;
  readonly unions: Measured;
  readonly offsets: Measured | undefined;
  readonly sample: string;
  /** Largest difference of a pair area from the overlay's own, over the sample. */
  readonly offM2: number;
}

/** What a timed function returned, so that its work cannot be left out. */
const sink: unknown[] = [];

/** One round to warm up, then `repeats` timed ones. */
export function measure(repeats: number, work: () => unknown): Measured {
  work();
  const times = Array.from({ length: repeats }, () => {
    const before = process.cpuUsage();
    sink[0] = work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1e3;
  });
  return fromTimes(times);
}

export function fromTimes(times: readonly number[], scale = 1): Measured {
  const sorted = [...times].sort((a, b) => a - b);
  return { min: scale * sorted[0], median: scale * sorted[sorted.length >> 1] };
}

export function millis(value: number): string {
  return value >= 100 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);
}

/** Every so-manieth piece with its candidates, scaled by the number of candidate pairs; offsets by that of crowns. */
export function runPeer(
  peer: Peer,
  { crowns, pieces }: StreetScene,
  candidates: readonly (readonly number[])[],
  repeats: number,
): PeerResult {
  const step = Math.max(1, Math.floor(pieces.length / peer.samplePieces));
  const chosen = candidates.flatMap((near, piece) => (piece % step === 0 && near.length > 0 ? [{ piece, near }] : []));
  const sampled = [...new Set(chosen.flatMap(({ near }) => near))];
  const shapes = new Map(sampled.map((crown) => [crown, peer.shape(crowns[crown])]));
  const work = chosen.map(({ piece, near }) => ({
    piece: peer.shape(pieces[piece]),
    crowns: near.map((crown) => shapes.get(crown)),
  }));
  const pairCount = chosen.reduce((sum, { near }) => sum + near.length, 0);
  const all = candidates.reduce((sum, near) => sum + near.length, 0);
  const total = (areaOf: (one: (typeof work)[number]) => number) => work.reduce((sum, one) => sum + areaOf(one), 0);
  const pairs = measure(repeats, () =>
    total((one) => one.crowns.reduce<number>((s, c) => s + peer.pair(one.piece, c), 0)),
  );
  const unions = measure(repeats, () => total((one) => peer.union(one.piece, one.crowns)));
  const { offset } = peer;
  const offsets =
    offset &&
    measure(repeats, () => [...shapes.values()].reduce<number>((s, c) => s + offset(c, 0.5) + offset(c, 1), 0));
  return {
    name: peer.name,
    pairs: scaled(pairs, all / pairCount),
    unions: scaled(unions, all / pairCount),
    offsets: offsets && scaled(offsets, crowns.length / sampled.length),
    sample: `${work.length.toLocaleString('en')} pieces, ${pairCount.toLocaleString('en')} pairs`,
    offM2: largestDifference(peer, work, chosen, { crowns, pieces }),
  };
}

function scaled({ min, median }: Measured, by: number): Measured {
  return { min: min * by, median: median * by };
}

function largestDifference(
  peer: Peer,
  work: readonly { piece: unknown; crowns: readonly unknown[] }[],
  chosen: readonly { piece: number; near: readonly number[] }[],
  { crowns, pieces }: StreetScene,
): number {
  let worst = 0;
  chosen.forEach(({ piece, near }, i) => {
    near.forEach((crown, k) => {
      const area = pairArea(pieces[piece], crowns[crown]);
      worst = Math.max(worst, Math.abs(peer.pair(work[i].piece, work[i].crowns[k]) - area));
    });
  });
  return worst;
}

function pairArea(piece: Float64Array, crown: Float64Array): number {
  const zones = [{ layers: [asRegion(crown)] }];
  const ledger = reckonOverlay({ zones, pieces: [asRegion(piece)], blocks: [] });
  let area = 0;
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    if (ledger.coverStart[cell + 1] > ledger.coverStart[cell]) area += ledger.areaM2[cell];
  }
  return area;
}
