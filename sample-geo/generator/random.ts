/** Seeded randomness: one independent stream per subject, so that a change to one leaves the others' draws alone. */
export interface Random {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  readonly between: (lo: number, hi: number) => number;
  /** Whole number in [lo, hi]. */
  readonly whole: (lo: number, hi: number) => number;
  readonly chance: (probability: number) => boolean;
  readonly normal: (mean: number, sd: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  /** By relative weights. */
  readonly weighted: <T>(from: readonly (readonly [T, number])[]) => T;
}

const SEED = 20260520;

/** The stream of a subject: splitmix32 (Steele, Lea and Flood 2014, cut to 32 bits) seeded by the subject's name. */
export function randomFor(subject: string): Random {
  let state = SEED;
  for (const letter of subject) state = mixed(state ^ letter.charCodeAt(0));
  const next = () => {
    state = (state + 0x9e3779b9) | 0;
    return mixed(state) / 2 ** 32;
  };
  const between = (lo: number, hi: number) => lo + (hi - lo) * next();
  const weighted = <T>(from: readonly (readonly [T, number])[]): T => {
    let left = next() * from.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [item, weight] of from) {
      left -= weight;
      if (left < 0) return item;
    }
    return from[from.length - 1][0];
  };
  return {
    next,
    between,
    weighted,
    whole: (lo, hi) => Math.floor(between(lo, hi + 1)),
    chance: (probability) => next() < probability,
    // Sum of twelve uniforms: normal to well within what a survey crew could tell, and free of transcendentals.
    normal: (mean, sd) => {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += next();
      return mean + sd * sum;
    },
    pick: (from) => from[Math.floor(next() * from.length)],
  };
}

/** Hash of a cell of a lattice, uniform in [0, 1). */
export function cellHash(x: number, y: number, salt: number): number {
  return mixed((Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(salt, 0x9e3779b1)) | 0) / 2 ** 32;
}

function mixed(value: number): number {
  let h = value | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
