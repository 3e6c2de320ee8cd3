/** Two raters on the trees that both rated: how far they mean the same. */
import {
  agreementTable,
  type BlandAltmanResult,
  blandAltman,
  type ConcordanceResult,
  type Defined,
  type KappaResult,
  linConcordance,
  undefinedBecause,
  weightedKappa,
} from '@crownfall/statistics';
import type { ClassScale, RatedVisit, RaterReading } from '@crownfall/survey';

/** Figures in % of the crown. `bias` is `second` minus `first`. */
export interface RaterPair {
  readonly first: string;
  readonly second: string;
  readonly scale: string;
  readonly trees: number;
  readonly difference: Defined<BlandAltmanResult>;
  readonly concordance: Defined<ConcordanceResult>;
  /** On a class scale only; undefined on percentages with `null`. */
  readonly kappa: { readonly linear: Defined<KappaResult>; readonly quadratic: Defined<KappaResult> } | null;
  /** One pair of readings for each tree, for a chart. */
  readonly readings: readonly { readonly treeId: string; readonly firstPct: number; readonly secondPct: number }[];
}

/** How two readings were taken: one scale, or one each. */
const BOTH = ' / ';

/** All pairs of raters and scales that have a tree in common, by name. */
export function raterPairs(visits: readonly RatedVisit[], scales: ReadonlyMap<string, ClassScale>): RaterPair[] {
  const groups = new Map<string, { first: RaterReading; second: RaterReading; treeId: string }[]>();
  for (const { treeId, readings } of visits) {
    readings.forEach((first, i) => {
      for (const second of readings.slice(i + 1)) {
        const key = JSON.stringify([first.rater, second.rater, scaleOfBoth(first, second)]);
        groups.set(key, [...(groups.get(key) ?? []), { first, second, treeId }]);
      }
    });
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, pairs]) => {
      const [first, second, scale] = JSON.parse(key) as [string, string, string];
      const x = pairs.map((pair) => 100 * pair.first.figure.share);
      const y = pairs.map((pair) => 100 * pair.second.figure.share);
      return {
        first,
        second,
        scale,
        trees: pairs.length,
        difference: blandAltman(y, x),
        concordance: linConcordance(x, y),
        kappa: kappaOf(pairs, scales.get(scale.toLowerCase())),
        readings: pairs.map(({ treeId }, i) => ({ treeId, firstPct: x[i], secondPct: y[i] })),
      };
    });
}

function scaleOfBoth(first: RaterReading, second: RaterReading): string {
  return first.scale === second.scale ? first.scale : [first.scale, second.scale].join(BOTH);
}

function kappaOf(
  pairs: readonly { readonly first: RaterReading; readonly second: RaterReading }[],
  scale: ClassScale | undefined,
): RaterPair['kappa'] {
  if (scale === undefined) return null;
  const classOf = ({ figure }: RaterReading): number =>
    scale.classes.findIndex(({ loPct, hiPct }) => near(figure.lo, loPct) && near(figure.hi, hiPct));
  const first = pairs.map((pair) => classOf(pair.first));
  const second = pairs.map((pair) => classOf(pair.second));
  // Two rows of one day averaged fall between classes; then no table of classes can be made.
  if ([...first, ...second].includes(-1)) {
    const none = undefinedBecause('no-observations');
    return { linear: none, quadratic: none };
  }
  const table = agreementTable(first, second, scale.classes.length);
  return { linear: weightedKappa(table, 'linear'), quadratic: weightedKappa(table, 'quadratic') };
}

function near(share: number, pct: number): boolean {
  return Math.abs(100 * share - pct) < 1e-9;
}
