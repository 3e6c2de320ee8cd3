/** Real threads over a city large enough to be worth them: the bits of one thread, whatever their number. */
import { type CrownScene, type Region, reckonOverlay, sceneInput } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { overlayLedger } from './overlay-ledger.ts';

/** 2,500 strips of sidewalk in a grid, a crown over each end of each, every second one over its neighbour too. */
function city(): CrownScene {
  const pieces: Region[] = [];
  const crowns: Region[] = [];
  for (let i = 0; i < 2500; i++) {
    const [x, y] = [30 * (i % 50), 30 * Math.floor(i / 50)];
    pieces.push([Float64Array.of(x, y, x + 25, y + 3, x + 25, y + 5, x, y + 2)]);
    for (const end of [3, 22]) {
      const ring = new Float64Array(24);
      const r = 2 + ((i * 7 + end) % 5);
      for (let k = 0; k < 12; k++) {
        ring.set([x + end + r * Math.cos((Math.PI * k) / 6), y + 2 + r * Math.sin((Math.PI * k) / 6)], 2 * k);
      }
      crowns.push([ring]);
    }
  }
  const recipe = {
    driftRings: [{ to_m: 0.5, share: 0.5 }],
    chordToleranceM: 0.01,
    wind: { towards_deg: 0, distance_m: 0 },
  };
  return { crowns, recipe, pieces, blocks: [[Float64Array.of(-9, -9, 700, -9, 700, 1600, -9, 1600)]] };
}

describe('the overlay in threads', () => {
  const scene = city();
  const whole = reckonOverlay(sceneInput(scene));

  test.each([1, 2, 3])('%d threads give the same ledger', async (threads) => {
    expect(await overlayLedger(scene, threads)).toEqual(whole);
  });
});
