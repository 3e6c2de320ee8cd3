/** Two seasons of ratings by three raters, with gaps, second opinions, one rater who reads high, one who uses classes. */
import { type Random, randomFor } from '../random.ts';
import { clamp, RATERS, type Rater, type TreeTruth } from './truth.ts';

export type RatingRow = Readonly<Record<(typeof RATING_COLUMNS)[number], string | number>>;

export const RATING_COLUMNS = [
  'tree_id',
  'rated_on',
  'rater',
  'browned_pct',
  'defoliated_pct',
  'gall_load',
  'cause',
  'evidence',
  'confidence',
  'scale',
  'class',
  'note',
] as const;

const UNRATED_SHARE = 0.2;
/** Upper ends of the classes of the Horsfall–Barratt scale, %. */
const HORSFALL_BARRATT_TO = [0, 3, 6, 12, 25, 50, 75, 88, 94, 97, 99.99, 100];
/** Each rater walked the town from one side; the west is R1's. */
const BEATS: readonly Rater[] = ['R1', 'R2', 'R3'];

export function ratingRows(truth: readonly TreeTruth[]): readonly RatingRow[] {
  const random = randomFor('ratings');
  const rows: RatingRow[] = [];
  for (const season of [2025, 2026]) {
    for (const tree of truth) {
      const unrated = random.chance(season === 2026 ? UNRATED_SHARE : 0.3);
      const main = BEATS[Math.min(2, Math.floor(clamp(tree.tree.at[0] + random.between(-40, 40), 0, 899) / 300))];
      const second = BEATS[(BEATS.indexOf(main) + random.whole(1, 2)) % 3];
      const seen = random.chance(season === 2026 ? 0.16 : 0.08) ? [main, second] : [main];
      if (!unrated) for (const rater of seen) rows.push(rating(tree, rater, season, random));
    }
  }
  return [...rows, ...messes(rows)].toSorted((a, b) =>
    a.rated_on < b.rated_on ? -1 : a.rated_on > b.rated_on ? 1 : 0,
  );
}

function rating(truth: TreeTruth, rater: Rater, season: number, random: Random): RatingRow {
  const { biasPct, sdPct } = RATERS[rater];
  const shown = (season === 2026 ? truth.browned : truth.brownedBefore) * 100;
  // Nobody misjudges a green crown by much.
  const sure = Math.min(1, shown / 15 + 0.15);
  const judged = clamp(shown + (biasPct + random.normal(0, sdPct)) * sure, 0, 100);
  const classes = rater === 'R2' && truth.tree.at[1] > 256;
  const cause = causeGiven(truth, random);
  const day = new Date(Date.UTC(season, 3, 6 + random.whole(0, 34))).toISOString().slice(0, 10);
  return {
    tree_id: truth.tree.id,
    rated_on: day,
    rater,
    browned_pct: classes ? '' : stepped(judged),
    defoliated_pct: random.chance(0.8) ? stepped(clamp(truth.defoliated * 100 + random.normal(0, 4), 0, 100)) : '',
    gall_load: truth.tree.host.fouls === 'frass' ? truth.galls : '',
    cause,
    evidence: EVIDENCE[cause],
    confidence: random.weighted([
      ['high', 5],
      ['medium', 4],
      ['low', 1],
    ]),
    scale: classes ? 'horsfall-barratt-1-12' : '',
    class: classes ? HORSFALL_BARRATT_TO.findIndex((to) => judged <= to) + 1 : '',
    note: '',
  };
}

const EVIDENCE = {
  frass: 'galls opened, frass on the ground below',
  honeydew: 'sticky leaves, sooty film below',
  fruit: 'fruit lying below',
  leaf_litter: 'tannin marks under fallen leaves',
  none: '',
  unknown: 'stain below, nothing seen in the crown',
} as const;

function causeGiven(truth: TreeTruth, random: Random): keyof typeof EVIDENCE {
  return truth.cause !== 'none' && random.chance(0.03) ? 'unknown' : truth.cause;
}

/** Eyes read in steps: single per cent when low, fives above ten. */
function stepped(pct: number): number {
  return pct < 10 ? Math.round(pct) : 5 * Math.round(pct / 5);
}

/** What every real table holds: a felled tree's rating, a row typed twice, a rating without a figure. */
function messes(rows: readonly RatingRow[]): readonly RatingRow[] {
  const felled = { ...rows[rows.length - 400], tree_id: 'T1207', note: 'felled since' };
  const twice = { ...rows[rows.length - 120] };
  const blank = {
    ...rows[rows.length - 60],
    browned_pct: '',
    defoliated_pct: '',
    scale: '',
    class: '',
    note: 'gate locked; seen from afar',
  };
  return [felled, twice, blank];
}
