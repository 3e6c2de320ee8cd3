/**
 * The overlay against the exact judge on neighbourhoods of rectangles with coincident edges:
 *
 *   npx tsx tests/oracles/overlay-exact.ts --neighbourhoods 100000
 *
 * Every placing (8 turns × 3 ways to snap × 2 distances from the origin) gets its share; see grid-neighbourhood.ts. `--from`
 * is the number of the first. Ends with 1 when an area is wrong.
 */
import { parseArgs } from 'node:util';
import { reckonOverlay } from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';
import { cellsOf, exactCells, WRONG_M2, worstCell } from './exact-area.ts';
import { gridNeighbourhood, PLACINGS } from './grid-neighbourhood.ts';

const { values } = parseArgs({
  options: { neighbourhoods: { type: 'string', default: '100000' }, from: { type: 'string', default: '0' } },
});
const first = Number(values.from);
const count = Number(values.neighbourhoods);
let wrong = 0;
let cells = 0;
let largestM2 = 0;
for (let number = first; number < first + count; number++) {
  const placing = PLACINGS[number % PLACINGS.length];
  const input = gridNeighbourhood(new RandomStream(4, number), placing);
  const got = cellsOf(reckonOverlay(input));
  const expected = exactCells(input);
  cells += expected.size;
  const { cell, offM2 } = worstCell(got, expected);
  largestM2 = Math.max(largestM2, offM2);
  if (offM2 > WRONG_M2) {
    wrong++;
    console.log(`neighbourhood ${number}, cell ${cell}: off by ${offM2} m²; ${JSON.stringify(placing)}`);
  }
  if (process.stderr.isTTY && number % 1000 === 0) process.stderr.write(`\r${number - first}`);
}
console.log(
  `\n${count} neighbourhoods, ${cells} cells: ${wrong} wrong; largest difference ${largestM2.toExponential(2)} m²`,
);
process.exitCode = wrong > 0 ? 1 : 0;
