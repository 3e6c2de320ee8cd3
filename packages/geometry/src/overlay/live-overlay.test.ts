/** Thousands of random edits against a full reckoning: the clever way must give the very bits of the naive one. */
import { describe, expect, test } from 'vitest';
import type { Region } from '../ring.ts';
import type { FalloutZone } from './ledger.ts';
import { LiveOverlay } from './live-overlay.ts';
import { reckonOverlay } from './reckon-overlay.ts';

const EDITS = 1000;
const CHECK_EVERY = 100;
const SIDE_M = 60;

function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

function crown(next: () => number): FalloutZone {
  const [x, y, radius] = [next() * SIDE_M, next() * SIDE_M, 1 + 4 * next()];
  const layer = (r: number): Region => {
    const ring = new Float64Array(48);
    for (let i = 0; i < 24; i++) {
      const wave = r * (1 + 0.1 * Math.sin((3 * Math.PI * i) / 12));
      ring[2 * i] = x + wave * Math.cos((Math.PI * i) / 12);
      ring[2 * i + 1] = y + wave * Math.sin((Math.PI * i) / 12);
    }
    return [ring];
  };
  return { layers: [layer(radius), layer(radius + 0.5)] };
}

function strip(next: () => number): Region {
  const [x, y, angle] = [next() * SIDE_M, next() * SIDE_M, next() * Math.PI];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [length, width] = [5 + 20 * next(), 1 + 2 * next()];
  return [
    Float64Array.of(
      x,
      y,
      x + length * c,
      y + length * s,
      x + length * c - width * s,
      y + length * s + width * c,
      x - width * s,
      y + width * c,
    ),
  ];
}

describe('edits', () => {
  test(`${EDITS} random edits equal a full reckoning`, () => {
    const next = random(2026);
    const zones: FalloutZone[] = Array.from({ length: 80 }, () => crown(next));
    const pieces: Region[] = Array.from({ length: 60 }, () => strip(next));
    const half = SIDE_M / 2;
    const blocks: Region[] = [
      [Float64Array.of(-99, -99, half, -99, half, 199, -99, 199)],
      [Float64Array.of(half, -99, 199, -99, 199, 199, half, 199)],
    ];
    // Begun from the ledger of another thread, as from the start.
    const begun = { zones, pieces, blocks };
    const live = new LiveOverlay(begun, reckonOverlay(begun));
    expect(live.ledger()).toEqual(new LiveOverlay(begun).ledger());
    for (let edit = 1; edit <= EDITS; edit++) {
      const removes = next() < 0.15;
      if (next() < 0.7) {
        const i = Math.floor(next() * (zones.length + 1));
        const zone = removes ? null : crown(next);
        zones[i] = zone ?? { layers: [] };
        live.setZone(i, zone);
      } else {
        const i = Math.floor(next() * (pieces.length + 1));
        const piece = removes ? null : strip(next);
        pieces[i] = piece ?? [];
        live.setPiece(i, piece);
      }
      if (edit % CHECK_EVERY === 0) {
        expect(live.ledger(), `after ${edit} edits`).toEqual(reckonOverlay({ zones, pieces, blocks }));
      }
    }
  });

  test('an edit names the pieces it may have changed, and no others', () => {
    const square = (x: number): Region => [Float64Array.of(x, 0, x + 2, 0, x + 2, 2, x, 2)];
    const live = new LiveOverlay({
      zones: [{ layers: [square(0)] }],
      pieces: [square(0), square(10), square(20)],
      blocks: [],
    });
    expect(live.setZone(0, { layers: [square(10)] })).toEqual([0, 1]);
    expect(live.cells(0)).toEqual({
      block: Int32Array.of(-1),
      areaM2: expect.any(Float64Array),
      coverStart: Int32Array.of(0, 0),
      zone: new Int32Array(0),
      layer: new Uint8Array(0),
    });
    expect([...live.cells(0).areaM2]).toEqual([expect.closeTo(4, 12)]);
    expect(live.setZone(0, null)).toEqual([1]);
  });

  test('a number that would leave a gap is refused', () => {
    const live = new LiveOverlay({ zones: [], pieces: [], blocks: [] });
    expect(() => live.setZone(1, null)).toThrow(RangeError);
    expect(() => live.setPiece(-1, null)).toThrow(RangeError);
  });
});
