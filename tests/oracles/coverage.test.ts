/** Do the ranges hold the truth as often as they say? A seeded part of tests/oracles/coverage-study.ts. */
import { expect, test } from 'vitest';
import { townHeld } from './coverage-town.ts';

const TOWNS = 120;
const DRAWS = 200;
const BLOCKS = 6;
/** Three standard errors of a share over so many towns; blocks of a town share k and raters, so they count no more than it. */
const reach = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / TOWNS);

test('80 % and 95 % ranges of totals and blocks hold the truth of simulated towns about that often', () => {
  const held = Array.from({ length: TOWNS }, (_, town) => townHeld(town, { draws: DRAWS, blocks: BLOCKS }));
  const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;
  const found = {
    total80: share(held.map((one) => one.total80)),
    blocks80: share(held.flatMap((one) => one.blocks80)),
    total95: share(held.map((one) => one.total95)),
    blocks95: share(held.flatMap((one) => one.blocks95)),
  };
  for (const [name, value] of Object.entries(found)) {
    const wanted = name.endsWith('80') ? 0.8 : 0.95;
    expect(Math.abs(value - wanted), `${name}: ${value}`).toBeLessThan(reach(wanted));
  }
});
