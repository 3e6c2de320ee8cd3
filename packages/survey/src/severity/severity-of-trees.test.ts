import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CAUSES, GALL_LOADS, type Rating } from '../records.ts';
import { rating, survey, told, tree } from '../sample-layers.ts';
import { severityOfClass, severityOfPercent } from '../scales/class-scale.ts';
import { HORSFALL_BARRATT_0_11 } from '../scales/horsfall-barratt.ts';
import { DEFAULT_SETTINGS, type Settings } from '../settings.ts';
import { asOfDay } from './as-of-day.ts';
import { severityOfTrees } from './severity-of-trees.ts';

const DAY = '2026-12-31';
const HOST = 'Terminalia buceras';
const of = (ratings: readonly Rating[], settings: Settings = DEFAULT_SETTINGS, day = DAY) =>
  severityOfTrees(survey([tree('T', HOST)], ratings), settings, day).trees[0];

describe('which ratings count', () => {
  test('the newest of the season; earlier ones and other seasons do not', () => {
    const found = of([
      rating('T', 10, { ratedOn: '2026-03-01' }),
      rating('T', 60, { ratedOn: '2026-06-10' }),
      rating('T', 90, { ratedOn: '2025-06-10' }),
    ]);
    expect(found).toMatchObject({ share: 0.6, from: 'rating', ratedOn: '2026-06-10', raters: ['A'] });
  });

  test('nothing after the day asked for', () => {
    const ratings = [rating('T', 10, { ratedOn: '2026-03-01' }), rating('T', 60, { ratedOn: '2026-06-10' })];
    expect(of(ratings, DEFAULT_SETTINGS, '2026-06-09').share).toBe(0.1);
    expect(of(ratings, DEFAULT_SETTINGS, '2026-06-10').share).toBe(0.6);
    expect(() => of(ratings, DEFAULT_SETTINGS, '10.6.2026')).toThrow(RangeError);
  });

  test('several raters of one visit are averaged, intervals too; a rater of an earlier visit is not', () => {
    const browned = severityOfClass(HORSFALL_BARRATT_0_11, '5');
    const byClass = browned === undefined ? {} : { browned };
    const found = of([
      rating('T', 0, { rater: 'A', ratedOn: '2026-06-01', ...byClass }),
      rating('T', 50, { rater: 'B', ratedOn: '2026-06-10' }),
      rating('T', 90, { rater: 'C', ratedOn: '2026-05-20' }),
    ]);
    expect(found.share).toBeCloseTo((0.375 + 0.5) / 2, 12);
    expect([found.lo, found.hi]).toEqual([(0.25 + 0.5) / 2, 0.5]);
    expect(found.raters).toEqual(['A', 'B']);
    expect(found.ratedOn).toBe('2026-06-10');
  });

  test('the window is a setting, its last day included', () => {
    const ratings = [
      rating('T', 20, { rater: 'A', ratedOn: '2026-06-01' }),
      rating('T', 40, { rater: 'B', ratedOn: '2026-06-11' }),
    ];
    expect(of(ratings, { ...DEFAULT_SETTINGS, visit_window_days: 10 }).share).toBeCloseTo(0.3, 12);
    expect(of(ratings, { ...DEFAULT_SETTINGS, visit_window_days: 9 }).share).toBe(0.4);
  });

  test('a rater who rated twice on one day still has one voice', () => {
    const ratings = [rating('T', 20), rating('T', 40), rating('T', 60, { rater: 'B' })];
    expect(of(ratings).share).toBeCloseTo((0.3 + 0.6) / 2, 12);
  });

  test('browned, defoliated or the greater of both', () => {
    const both = rating('T', 20, { defoliated: severityOfPercent(70) });
    const from = (severity_from: Settings['severity_from']) => of([both], { ...DEFAULT_SETTINGS, severity_from });
    expect([from('browned').share, from('defoliated').share, from('greater').share]).toEqual([0.2, 0.7, 0.7]);
    const onlyBrowned = of([rating('T', 20)], { ...DEFAULT_SETTINGS, severity_from: 'defoliated' });
    expect(onlyBrowned.from).toBe('none');
  });
});

describe('the gate, on evidence', () => {
  // Common practice, no source: a host without galls drops no frass and stains nothing, however brown it is.
  test.each([
    [{ cause: 'frass', gallLoad: 'light' }, 1, 0.8],
    [{ cause: 'frass', gallLoad: 'heavy' }, 1, 0.8],
    [{ cause: 'frass', gallLoad: 'none' }, 0, 0],
    [{ cause: 'frass', gallLoad: undefined, evidence: 'frass on the kerb below' }, 1, 0.8],
    [{ cause: 'frass', gallLoad: undefined }, 0, 0],
    [{ cause: 'honeydew', gallLoad: 'none' }, 1, 0.64],
    [{ cause: 'fruit', gallLoad: undefined }, 1, 0.48],
    [{ cause: 'leaf_litter', gallLoad: undefined }, 1, 0.32],
    [{ cause: 'none', gallLoad: 'heavy' }, 0, 0],
    [{ cause: 'unknown', gallLoad: 'heavy' }, 0, 0],
  ] as const)('%j: gate %d', (change, gate, weighted) => {
    const { gallLoad, ...rest } = change;
    const { gallLoad: _, ...base } = rating('T', 80);
    const found = of([{ ...base, ...rest, ...(gallLoad === undefined ? {} : { gallLoad }) }]);
    expect(found.gateShare).toBe(gate);
    expect(found.share).toBe(0.8);
    expect(found.weightedSeverity).toBeCloseTo(weighted, 12);
  });

  test('beside a galled crown its ungalled neighbour of the same host and browning stains nothing', () => {
    const trees = [tree('galled', HOST), tree('clean', HOST)];
    const ratings = [rating('galled', 70), rating('clean', 70, { cause: 'none', gallLoad: 'none' })];
    const [galled, clean] = severityOfTrees(survey(trees, ratings), DEFAULT_SETTINGS, DAY).trees;
    expect([galled.share, clean.share]).toEqual([0.7, 0.7]);
    expect([galled.weightedSeverity, clean.weightedSeverity]).toEqual([0.7, 0]);
  });

  test('most raters decide; a tie goes to the newer, on one day to the one who found something', () => {
    const votes = (...list: [string, Rating['cause'], string][]) =>
      of(list.map(([rater, cause, ratedOn]) => rating('T', 50, { rater, cause, ratedOn })));
    const day = '2026-06-10';
    expect(votes(['A', 'frass', day], ['B', 'none', day], ['C', 'none', day]).gateShare).toBe(0);
    expect(votes(['A', 'frass', day], ['B', 'frass', day], ['C', 'none', day]).gateShare).toBe(1);
    expect(votes(['A', 'frass', day], ['B', 'none', day]).gateShare).toBe(1);
    expect(votes(['A', 'frass', '2026-06-09'], ['B', 'none', day]).gateShare).toBe(0);
    expect(votes(['A', 'frass', day], ['B', 'honeydew', day], ['C', 'honeydew', day]).cause).toBe('honeydew');
    expect(votes(['A', 'unknown', day], ['B', 'unknown', day], ['C', 'frass', day]).cause).toBe('frass');
  });

  test('a dispute is told', () => {
    const ratings = [rating('T', 50), rating('T', 50, { rater: 'B', cause: 'none' })];
    const { findings } = severityOfTrees(survey([tree('T', HOST)], ratings), DEFAULT_SETTINGS, DAY);
    expect(told(findings)).toEqual(['raters-disagree note/assumed T']);
    expect(findings[0].facts).toEqual({ raters: 'A: frass ✓, B: none ✗', taken: 'frass ✓' });
  });

  test('a later rating that states no cause leaves the diagnosis standing', () => {
    const found = of([rating('T', 30, { ratedOn: '2026-05-01' }), rating('T', 60, { cause: 'unknown' })]);
    expect(found).toMatchObject({ share: 0.6, cause: 'frass', gateShare: 1, weightedSeverity: 0.6 });
  });
});

describe('unrated trees', () => {
  const trees = [
    tree('a', HOST),
    tree('b', HOST),
    tree('c', ' terminalia  Buceras'),
    tree('d', 'Quercus virginiana'),
    tree('e'),
  ];
  const clean = { cause: 'none', gallLoad: 'none' } as const;
  const reading = severityOfTrees(survey(trees, [rating('a', 60), rating('b', 20, clean)]), DEFAULT_SETTINGS, DAY);
  const [, , unrated, otherHost, noHost] = reading.trees;

  test('take the mean of their host, counted as unrated', () => {
    expect(unrated).toMatchObject({ from: 'group', cause: 'frass', gateShare: 0.5, raters: [], ratedOn: null });
    expect(unrated.share).toBeCloseTo(0.4, 12);
    expect(unrated.weightedSeverity).toBeCloseTo(0.3, 12);
  });

  test('with the limits of the even distribution of the same mean and deviation', () => {
    // Two values 0.6 and 0.2: deviation √0.08; limits 0.4 ∓ √(3 · 0.08), cut at 0.
    expect([unrated.lo, unrated.hi]).toEqual([0, 0.4 + Math.sqrt(0.24)]);
  });

  test('never borrow from another host; no rating is not zero, and is told', () => {
    expect(otherHost).toMatchObject({ from: 'none', share: 0, lo: 0, hi: 1, gateShare: 0, weightedSeverity: 0 });
    expect(noHost.from).toBe('none');
    expect(told(reading.findings)).toEqual([
      'host-without-ratings warning/left_out',
      'host-without-ratings warning/left_out',
    ]);
    expect(reading.findings.map((finding) => finding.facts)).toEqual([
      { count: 1 },
      { host: 'Quercus virginiana', count: 1 },
    ]);
  });

  test('groups list their members for random draws', () => {
    const group = reading.groups.find((one) => one.group === 'terminalia buceras');
    expect(group).toMatchObject({ trees: 3, rated: 2 });
    expect(group?.members.map((member) => member.treeId)).toEqual(['a', 'b']);
  });

  test('one rated tree tells nothing of the spread', () => {
    const [, alone] = severityOfTrees(
      survey([tree('a', HOST), tree('b', HOST)], [rating('a', 60)]),
      DEFAULT_SETTINGS,
      DAY,
    ).trees;
    expect(alone).toMatchObject({ share: 0.6, lo: 0, hi: 1 });
  });

  test('a diagnosis without a figure keeps its own gate and borrows only the share', () => {
    const { browned: _, ...noFigure } = rating('c', 0, clean);
    const { browned: __, ...galled } = rating('b', 0);
    const all = survey([tree('a', HOST), tree('b', HOST), tree('c', HOST)], [rating('a', 60), noFigure, galled]);
    const [, open, closed] = severityOfTrees(all, DEFAULT_SETTINGS, DAY).trees;
    expect(closed).toMatchObject({ from: 'group', share: 0.6, gateShare: 0, weightedSeverity: 0, weightedHi: 0 });
    expect(open).toMatchObject({ from: 'group', share: 0.6, gateShare: 1, weightedSeverity: 0.6 });
  });
});

describe('laws', () => {
  const anyRating = fc.record({
    treeId: fc.constantFrom('a', 'b', 'c'),
    ratedOn: fc.constantFrom('2026-06-01', '2026-06-08', '2026-06-10', '2025-06-10'),
    rater: fc.constantFrom('A', 'B', 'C'),
    browned: fc.integer({ min: 0, max: 100 }).map(severityOfPercent),
    cause: fc.constantFrom(...CAUSES),
    gallLoad: fc.constantFrom(...GALL_LOADS),
    extra: fc.constant({}),
  });
  const trees = ['a', 'b', 'c', 'd', 'e'].map((id) => tree(id, id === 'e' ? 'Quercus' : HOST));
  const reckon = (ratings: readonly Rating[], order = trees) =>
    severityOfTrees(survey(order, ratings), DEFAULT_SETTINGS, DAY);

  test('the order of ratings and trees changes no digit', () => {
    const shuffled = fc
      .array(anyRating, { maxLength: 30 })
      .chain((ratings) =>
        fc.tuple(
          fc.constant(ratings),
          fc.shuffledSubarray(ratings, { minLength: ratings.length }),
          fc.shuffledSubarray(trees, { minLength: trees.length }),
        ),
      );
    fc.assert(
      fc.property(shuffled, ([ratings, otherRatings, otherTrees]) => {
        const byId = ({ trees: list }: ReturnType<typeof reckon>) =>
          Object.fromEntries(list.map((one) => [one.treeId, one]));
        expect(byId(reckon(otherRatings, otherTrees))).toEqual(byId(reckon(ratings)));
      }),
      { seed: 20260503, numRuns: 300 },
    );
  });

  test('figures stay in their intervals, closed gates stain nothing, unrated trees stand at their members’ mean', () => {
    fc.assert(
      fc.property(fc.array(anyRating, { maxLength: 30 }), (ratings) => {
        const { trees: found, groups } = reckon(ratings);
        for (const one of found) {
          expect(one.lo).toBeLessThanOrEqual(one.share);
          expect(one.share).toBeLessThanOrEqual(one.hi);
          expect(one.weightedSeverity).toBeLessThanOrEqual(one.weightedHi + 1e-12);
          if (one.gateShare === 0) expect(one.weightedSeverity).toBe(0);
        }
        const members = groups.find((group) => group.group === HOST.toLowerCase())?.members ?? [];
        const unrated = found[3];
        if (members.length > 0) {
          const mean = members.reduce((sum, member) => sum + member.weightedSeverity, 0) / members.length;
          expect(unrated.weightedSeverity).toBeCloseTo(mean, 12);
        } else expect(unrated.from).toBe('none');
      }),
      { seed: 20260504, numRuns: 300 },
    );
  });
});

describe('the day figures speak of', () => {
  test('the one set, else the newest date of the data, else the end of the season', () => {
    const rated = survey(
      [tree('T')],
      [rating('T', 1, { ratedOn: '2026-06-10' }), rating('T', 1, { ratedOn: '2026-07-01' })],
    );
    expect(asOfDay(rated, { ...DEFAULT_SETTINGS, as_of: '2026-06-15' })).toBe('2026-06-15');
    expect(asOfDay(rated, DEFAULT_SETTINGS)).toBe('2026-07-01');
    expect(asOfDay(survey([], []), DEFAULT_SETTINGS)).toBe('2026-12-31');
  });
});
