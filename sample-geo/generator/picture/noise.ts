/** Seeded textures over the plan, in metres: the same at a place whatever part of the town is painted. */
import { cellHash } from '../random.ts';

/** Smooth noise of the given grain, 0 to 1, mostly about 0.5. */
export function smoothNoise(x: number, y: number, grainM: number, salt: number): number {
  const u = x / grainM;
  const v = y / grainM;
  const i = Math.floor(u);
  const j = Math.floor(v);
  const fu = eased(u - i);
  const fv = eased(v - j);
  const low = cellHash(i, j, salt) * (1 - fu) + cellHash(i + 1, j, salt) * fu;
  const high = cellHash(i, j + 1, salt) * (1 - fu) + cellHash(i + 1, j + 1, salt) * fu;
  return low * (1 - fv) + high * fv;
}

/** Three octaves of smooth noise, 0 to 1. */
export function cloudNoise(x: number, y: number, grainM: number, salt: number): number {
  return (
    0.57 * smoothNoise(x, y, grainM, salt) +
    0.29 * smoothNoise(x, y, grainM / 2.1, salt + 1) +
    0.14 * smoothNoise(x, y, grainM / 4.3, salt + 2)
  );
}

export interface Clump {
  /** Distance to the nearest clump's middle, in grains. */
  readonly distance: number;
  /** That clump's own number, uniform in 0 to 1. */
  readonly own: number;
}

/** Clumps: one jittered middle per cell of a lattice (cellular noise; Worley 1996). */
export function clumpAt(x: number, y: number, grainM: number, salt: number): Clump {
  const u = x / grainM;
  const v = y / grainM;
  const i = Math.floor(u);
  const j = Math.floor(v);
  let least = Number.POSITIVE_INFINITY;
  let own = 0;
  for (let a = i - 1; a <= i + 1; a++) {
    for (let b = j - 1; b <= j + 1; b++) {
      const dx = a + 0.15 + 0.7 * cellHash(a, b, salt) - u;
      const dy = b + 0.15 + 0.7 * cellHash(a, b, salt + 1) - v;
      const squared = dx * dx + dy * dy;
      if (squared < least) {
        least = squared;
        own = cellHash(a, b, salt + 2);
      }
    }
  }
  return { distance: Math.sqrt(least), own };
}

function eased(t: number): number {
  return t * t * (3 - 2 * t);
}
