/**
 * The coverage of the ranges over many invented towns: `npx tsx tests/oracles/coverage-study.ts [towns] [draws]` (default
 * 2000 and 400). Prints the shares of ranges that held the truth; docs/accuracy.md records them. A part runs in the tests.
 */
import { type Held, townHeld } from './coverage-town.ts';

const BLOCKS = 6;
const [towns = 2000, draws = 400] = process.argv.slice(2).map(Number);
const held: Held[] = [];
for (let town = 0; town < towns; town++) held.push(townHeld(town, { draws, blocks: BLOCKS }));

const share = (flags: readonly boolean[]): string => {
  const p = flags.filter(Boolean).length / flags.length;
  return `${(100 * p).toFixed(1)} %`;
};
const error = (p: number): string => `±${(196 * Math.sqrt((p * (1 - p)) / towns)).toFixed(1)}`;
console.log(
  `${towns} towns of ${BLOCKS} blocks, ${draws} draws each; the total's shares are good to ${error(0.8)} and ${error(0.95)} points.`,
);
console.log('| figure | 80 % range held the truth | 95 % range held the truth |');
console.log('| --- | ---: | ---: |');
console.log(`| total | ${share(held.map((one) => one.total80))} | ${share(held.map((one) => one.total95))} |`);
console.log(
  `| blocks | ${share(held.flatMap((one) => one.blocks80))} | ${share(held.flatMap((one) => one.blocks95))} |`,
);
