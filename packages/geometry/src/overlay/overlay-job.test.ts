/** Shares, streams and the whole must give the same bits. */
import { describe, expect, test } from 'vitest';
import type { Region } from '../ring.ts';
import { boxOf } from './box-index.ts';
import type { OverlayLedger } from './ledger.ts';
import { mergeLedgers } from './merge-ledgers.ts';
import { overlayJob, reckonInShares, ShareReckoner, sharesOf } from './overlay-job.ts';
import { type NumberedRegion, reckonStream } from './overlay-stream.ts';
import { reckonOverlay } from './reckon-overlay.ts';
import { zonesFromCrowns } from './zones-from-crowns.ts';

const RECIPE = {
  driftRings: [
    { to_m: 0.5, share: 0.5 },
    { to_m: 1, share: 0.25 },
  ],
  chordToleranceM: 0.01,
  wind: { towards_deg: 40, distance_m: 0.3 },
};

/** A seeded street of crowns, sidewalk strips that overlap at corners, and blocks of 50 m. */
function street(seed: number): { crowns: Region[]; pieces: Region[]; blocks: Region[] } {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const crowns = Array.from({ length: 150 }, (): Region => {
    const [x, y, r] = [400 * next(), 40 * next(), 1 + 4 * next()];
    const ring = new Float64Array(40);
    for (let i = 0; i < 20; i++) {
      const wave = r * (1 + 0.2 * Math.sin(i));
      ring.set([x + wave * Math.cos((Math.PI * i) / 10), y + wave * Math.sin((Math.PI * i) / 10)], 2 * i);
    }
    return [ring];
  });
  const pieces = Array.from({ length: 90 }, (): Region => {
    const [x, y, length, tilt] = [380 * next(), 38 * next(), 3 + 60 * next() ** 3, next() - 0.5];
    return [
      Float64Array.of(x, y, x + length, y + tilt * length, x + length - tilt, y + tilt * length + 2, x - tilt, y + 2),
    ];
  });
  pieces.push([], [new Float64Array(0)]);
  const blocks = Array.from({ length: 8 }, (_, i): Region => {
    const x = 50 * i;
    return [Float64Array.of(x, -10, x + 52, -10, x + 52, 30, x, 30)];
  });
  return { crowns, pieces, blocks };
}

function whole({ crowns, pieces, blocks }: ReturnType<typeof street>): OverlayLedger {
  return reckonOverlay({ zones: zonesFromCrowns(crowns.length, (i) => crowns[i], RECIPE), pieces, blocks });
}

const eastwards = (regions: readonly Region[]): NumberedRegion[] =>
  regions.map((region, number) => ({ region, number })).sort((a, b) => boxOf(a.region).minX - boxOf(b.region).minX);

describe.each([1, 2, 3])('town %d', (seed) => {
  const town = street(seed);

  test.each([1, 2, 7, 500])('%d shares merge to the whole', (count) => {
    const job = overlayJob({ ...town, recipe: RECIPE }, true);
    const shares = sharesOf(job, count);
    expect(shares.flatMap((share) => [...share]).sort((a, b) => a - b)).toEqual([...town.pieces.keys()]);
    const ledgers = shares.map((share) => new ShareReckoner(job).reckon(share));
    expect(mergeLedgers(ledgers)).toEqual(whole(town));
    expect(mergeLedgers([mergeLedgers(ledgers.slice(1).reverse()), ledgers[0]])).toEqual(whole(town));
  });

  test('workers of any speed give the bits of the whole', async () => {
    const job = overlayJob({ ...town, recipe: RECIPE }, false);
    const workers = [0, 3, 1].map((delayMs) => {
      const reckoner = new ShareReckoner(job);
      return {
        reckon: async (share: Int32Array) => {
          await new Promise((done) => setTimeout(done, delayMs));
          return reckoner.reckon(share);
        },
      };
    });
    expect(await reckonInShares(job, workers)).toEqual(whole(town));
  });

  test.each([5, 40, 1000])('strips of %d m merge to the whole', (stripM) => {
    const stream = {
      crowns: eastwards(town.crowns),
      recipe: RECIPE,
      pieces: eastwards(town.pieces),
      blocks: eastwards(town.blocks),
    };
    expect(mergeLedgers([...reckonStream(stream, stripM)])).toEqual(whole(town));
  });
});

test('a stream that is not sorted is refused', () => {
  const { crowns, pieces } = street(1);
  const stream = { crowns: eastwards(crowns).reverse(), recipe: RECIPE, pieces: eastwards(pieces), blocks: [] };
  expect(() => [...reckonStream(stream)]).toThrow(RangeError);
});

test('nothing in, nothing out', () => {
  expect(mergeLedgers([]).cellCount).toBe(0);
  expect([...reckonStream({ crowns: [], recipe: RECIPE, pieces: [], blocks: [] })]).toEqual([]);
});
