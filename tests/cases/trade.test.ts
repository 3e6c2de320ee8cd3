/** The trade's own checks, on the whole job. Common practice, no source, unless a closed form is named. */
import { type Assessment, assess, isStopped } from '@crownfall/assessment';
import { describe, expect, test } from 'vitest';
import { type Street, type StreetTree, streetProject } from './trade-street.ts';

/** Polygons of circles are scaled to the exact area, but cut by a strip they differ from the circle within the chord tolerance. */
const CHORD = 1e-3;
/** Plane lengths near the centre, and degrees per metre taken as constant over 100 m. */
const PLANE = 1e-5;

function reckoned(street: Street): Assessment {
  const outcome = assess(streetProject(street));
  if (isStopped(outcome)) throw new Error(`stopped: ${JSON.stringify(outcome.findings)}`);
  return outcome;
}
const crown = (id: string, x: number, more: Partial<StreetTree> = {}): StreetTree => ({
  id,
  at: [x, 0],
  spreadM: 8,
  browned: 40,
  galls: 'moderate',
  cause: 'frass',
  ...more,
});
const stained = (outcome: Assessment, id: string) => {
  const tree = outcome.trees.find(({ treeId }) => treeId === id);
  if (!tree) throw new Error(`no tree ${id}`);
  return tree.stainedM2.value;
};
/** Area of a circle about the origin inside the strip |y| ≤ h: 2·(h·√(r² − h²) + r²·asin(h/r)). */
const circleInStrip = (r: number, h: number) => 2 * (h * Math.sqrt(r * r - h * h) + r * r * Math.asin(h / r));

describe('no cause, no stain', () => {
  test.each([5, 40, 100])(
    'a crown without galls and without another cause stains nothing at %d %% browned',
    (browned) => {
      const outcome = reckoned({ trees: [crown('clean', 0, { browned, galls: 'none', cause: 'none' })] });
      expect(outcome.trees[0].driplineM2).toBeGreaterThan(10);
      expect(outcome.trees[0].dose).toBe(0);
      expect(outcome.total.stainedM2.value).toBe(0);
      expect(outcome.blame).toEqual([]);
      expect(outcome.blocks[0].scoreParts.find(({ criterion }) => criterion === 'worst_severity')?.amount).toBe(0);
    },
  );

  test('beside it a galled crown of the same host and size does stain', () => {
    const outcome = reckoned({
      trees: [crown('clean', -6, { galls: 'none', cause: 'none' }), crown('galled', 6)],
    });
    expect(stained(outcome, 'clean')).toBe(0);
    expect(stained(outcome, 'galled')).toBeGreaterThan(4);
    expect(outcome.total.stainedM2.value).toBeCloseTo(stained(outcome, 'galled'), 9);
  });
});

describe('two neighbours never take each other’s blame', () => {
  const alone = reckoned({ trees: [crown('galled', 0)] });

  test.each([1, 3, 6])('a clean crown %d m beside takes none and changes none', (x) => {
    const both = reckoned({
      trees: [crown('galled', 0), crown('clean', x, { browned: 90, galls: 'none', cause: 'none' })],
    });
    expect(stained(both, 'clean')).toBe(0);
    expect(stained(both, 'galled')).toBeCloseTo(stained(alone, 'galled'), 9);
    expect(both.total.stainedM2.value).toBeCloseTo(alone.total.stainedM2.value, 9);
    expect(new Set(both.blame.map(({ treeId }) => treeId))).toEqual(new Set(['galled']));
  });

  test('two galled crowns share the ground in proportion to their doses, and neither more than it would alone', () => {
    const both = reckoned({ trees: [crown('a', 0, { browned: 60 }), crown('b', 0, { browned: 20 })] });
    expect(stained(both, 'a')).toBeCloseTo(3 * stained(both, 'b'), 9);
    expect(stained(both, 'b')).toBeLessThan(stained(reckoned({ trees: [crown('b', 0, { browned: 20 })] }), 'b'));
  });
});

describe('closed forms on the whole job', () => {
  const h = 1;
  const [drip, ring1, ring2] = [4, 4.5, 5].map((r) => circleInStrip(r, h));

  // Closed form, docs/methods/stained-area.md: S = Σ ring area · (1 − e^(−share·d)).
  test('one crown over a strip, with its drift rings', () => {
    const outcome = reckoned({ trees: [crown('t', 0)] });
    const expected =
      drip * (1 - Math.exp(-0.4)) + (ring1 - drip) * (1 - Math.exp(-0.2)) + (ring2 - ring1) * (1 - Math.exp(-0.1));
    expect(expected).toBeCloseTo(5.7772, 4);
    expect(outcome.trees[0].dose).toBeCloseTo(0.4, 12);
    expect(outcome.total.pavementM2 / 160).toBeCloseTo(1, 4);
    expect(Math.abs(outcome.total.driplineM2 / drip - 1)).toBeLessThan(CHORD + PLANE);
    expect(Math.abs(outcome.total.falloutM2 / ring2 - 1)).toBeLessThan(CHORD + PLANE);
    expect(Math.abs(outcome.total.stainedM2.value / expected - 1)).toBeLessThan(CHORD + PLANE);
  });

  test('the chord tolerance closes the gap to the closed form', () => {
    const settings = { chord_tolerance_m: 1e-5, drift_rings: [] };
    const outcome = reckoned({ trees: [crown('t', 0)], settings });
    const expected = drip * (1 - Math.exp(-0.4));
    expect(Math.abs(outcome.total.stainedM2.value / expected - 1)).toBeLessThan(PLANE);
  });

  // Closed form: two equal crowns in one place, doses add.
  test('two overlapping crowns: doses add before the coverage law', () => {
    const settings = { chord_tolerance_m: 1e-5, drift_rings: [] };
    const outcome = reckoned({ trees: [crown('a', 0, { browned: 40 }), crown('b', 0, { browned: 20 })], settings });
    expect(Math.abs(outcome.total.stainedM2.value / (drip * (1 - Math.exp(-0.6))) - 1)).toBeLessThan(PLANE);
    expect(outcome.total.driplineM2 / drip).toBeCloseTo(1, 4);
  });
});
