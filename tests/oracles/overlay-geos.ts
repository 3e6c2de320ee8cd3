/**
 * The overlay against GEOS on random pairs and neighbourhoods, 500 km from the origin:
 *
 *   npx tsx tests/oracles/overlay-geos.ts --pairs 1000000 --neighbourhoods 20000
 *
 * GEOS runs from C (needs a C compiler and GEOS: apt-get install gcc libc6-dev libgeos-dev) on the same coordinates about the
 * local origin. Cases go by in batches, so memory does not grow. Every `--exact-every`th case (1000th) also goes to the exact
 * judge. `--from` is the number of the first case. Ends with 1 when we are wrong somewhere.
 */
import { parseArgs } from 'node:util';
import { AreaComparison, exactAreas, shareOfAllowed } from './compare-areas.ts';
import { compiledWithGeos, doublesFrom } from './geos-program.ts';
import { asDoubles, type OverlayCase, overlayAreas, randomNeighbourhood, randomPair } from './overlay-case.ts';

const BATCH = 2000;

const { values } = parseArgs({
  options: {
    pairs: { type: 'string', default: '1000000' },
    neighbourhoods: { type: 'string', default: '20000' },
    from: { type: 'string', default: '0' },
    'exact-every': { type: 'string', default: '1000' },
  },
});

const program = programOrEnd();
const wrong =
  (await compare('pairs', Number(values.pairs), randomPair)) +
  (await compare('neighbourhoods', Number(values.neighbourhoods), randomNeighbourhood));
process.exitCode = wrong > 0 ? 1 : 0;

function programOrEnd(): string {
  try {
    return compiledWithGeos(new URL('geos-areas.c', import.meta.url).pathname);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(2);
  }
}

async function compare(name: string, count: number, make: (number: number) => OverlayCase): Promise<number> {
  const comparison = new AreaComparison();
  const first = Number(values.from);
  let exactShare = 0;
  for (let from = first; from < first + count; from += BATCH) {
    const cases = Array.from({ length: Math.min(BATCH, first + count - from) }, (_, i) => make(from + i));
    const answer = doublesFrom(program, Float64Array.from(cases.flatMap(asDoubles)));
    const ours = cases.map(overlayAreas);
    const theirs = await answer;
    let at = 0;
    cases.forEach((overlayCase, i) => {
      const size = overlayCase.crowns.length + 1;
      comparison.add(from + i, overlayCase, theirs.subarray(at, at + size), ours[i]);
      at += size;
      if ((from + i) % Number(values['exact-every']) === 0) {
        const exact = exactAreas(overlayCase);
        exactShare = Math.max(exactShare, ...exact.map((right, k) => shareOfAllowed(ours[i][k], right)));
      }
    });
    if (process.stderr.isTTY) process.stderr.write(`\r${name} ${from - first + cases.length}`);
  }
  report(name, comparison, exactShare);
  return comparison.ourErrors.length + (exactShare > 1 ? 1 : 0);
}

function report(name: string, comparison: AreaComparison, exactShare: number): void {
  const { cases, invalid, areas, areasAboveZero, worstShare, disagreements, ourErrors } = comparison;
  console.log(
    `\n${name}: ${cases} cases, ${invalid} of them not valid by GEOS; ${areas} areas, ${areasAboveZero} above zero`,
  );
  console.log(`  largest difference among those that agree: ${worstShare.toPrecision(2)} of what is allowed`);
  console.log(
    `  from the exact judge, on every ${values['exact-every']}th: ${exactShare.toPrecision(2)} of what is allowed`,
  );
  console.log(`  disagreements: ${disagreements.length}; in ${ourErrors.length} of them we are wrong`);
  for (const { number, area, ours, theirs, exact } of disagreements.slice(0, 50)) {
    console.log(`  case ${number} area ${area}: ours ${ours}, GEOS ${theirs}, exact ${exact}`);
  }
}
