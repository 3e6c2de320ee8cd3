/** The sweep against its plain twin, on neighbourhoods made to hurt: many coincident edges, turned and shifted. */
import { describe, expect, test } from 'vitest';
import { CoverStates } from './cover-states.ts';
import { MASK_LAYER, Neighbourhood, ZONE } from './neighbourhood.ts';
import { areaByStateInSlabs } from './slabs.ts';
import { Sweep } from './sweep.ts';

const CASES = 3000;
/** Rounding of sums over a 14 m box whose coordinates are known to 4e-12 m. */
const TOLERANCE_M2 = 1e-9;

/** Numerical Recipes' quick linear congruential generator: enough to vary shapes, the same everywhere. */
function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** A rectangle or crossed quadrilateral on a 14 × 14 grid, turned and shifted. */
function gridShape(next: () => number, angle: number, shift: number): Float64Array {
  const [x, y] = [Math.floor(next() * 8), Math.floor(next() * 8)];
  const [w, h] = [1 + Math.floor(next() * 6), 1 + Math.floor(next() * 6)];
  const corners = next() < 0.25 ? [x, y, x + w, y + h, x, y + h] : [x, y, x + w, y, x + w, y + h, x, y + h];
  const ring = new Float64Array(corners.length);
  for (let i = 0; i < corners.length; i += 2) {
    ring[i] = corners[i] * Math.cos(angle) - corners[i + 1] * Math.sin(angle) + shift;
    ring[i + 1] = corners[i] * Math.sin(angle) + corners[i + 1] * Math.cos(angle) - shift;
  }
  return ring;
}

function gridNeighbourhood(seed: number, angle: number, shift: number): Neighbourhood {
  const next = random(seed);
  const neighbourhood = new Neighbourhood();
  const count = 5 + Math.floor(next() * 8);
  for (let i = 0; i < count; i++) {
    const rings = [gridShape(next, angle, shift)];
    if (next() < 0.3) {
      rings.push(gridShape(next, angle, shift));
    }
    if (i === 0) {
      neighbourhood.begin(rings, 0);
    } else {
      neighbourhood.add(rings, { role: ZONE, number: i, ring: 0 });
    }
  }
  return neighbourhood;
}

describe.each([0, 0.3, 1.234567, Math.PI / 4, 0.001, 1e-9, 1e-12])('grid shapes turned by %f rad', (angle) => {
  test.each([0, 3e4])('%d m from the origin', (shift) => {
    const sweep = new Sweep();
    const states = new CoverStates();
    let vouched = 0;
    for (let seed = 1; seed <= CASES / 10; seed++) {
      const neighbourhood = gridNeighbourhood(seed * 7919, angle, shift);
      states.reset();
      sweep.run(neighbourhood, states);
      if (sweep.doubtM2 > 1e-10) {
        continue;
      }
      vouched++;
      const twin = areaByStateInSlabs(neighbourhood, states);
      for (let state = 1; state < states.count; state++) {
        if (
          states.coverEnd(state) > states.coverStart(state) &&
          states.layerAt(states.coverStart(state)) === MASK_LAYER
        ) {
          const difference = Math.abs((sweep.areas[state] ?? 0) - (twin[state] ?? 0));
          expect(difference, `seed ${seed}, state ${state}`).toBeLessThan(TOLERANCE_M2);
        }
      }
    }
    expect(vouched).toBeGreaterThan(CASES / 10 - 5);
  });
});
