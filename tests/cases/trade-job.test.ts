/** The whole job on small invented streets: which block gets what, what is left out, and what a moved weight costs. */
import {
  type Assessment,
  assess,
  compose,
  isStopped,
  rank,
  reckonGeometry,
  reckonStain,
  STAGES,
  type Stage,
} from '@crownfall/assessment';
import { asOfDay, type ProjectInput, type RawFeature, readSurvey } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { boxAt, feature, lineAt, pointAt, type Street, type StreetTree, streetProject } from './trade-street.ts';

const crown = (id: string, x: number, more: Partial<StreetTree> = {}): StreetTree => ({
  id,
  at: [x, 0],
  spreadM: 8,
  browned: 40,
  galls: 'moderate',
  cause: 'frass',
  ...more,
});
/** Two blocks that meet at x = 0; the sidewalk reaches 5 m beyond either. */
const twoBlocks = [
  feature(1, boxAt(-35, -10, 0, 10), { block_id: 'west', name: 'West side' }),
  feature(2, boxAt(0, -10, 35, 10), { block_id: 'east' }),
];
function reckoned(street: Street): Assessment {
  return finished(assess(streetProject(street)));
}
function finished(outcome: ReturnType<typeof assess>): Assessment {
  if (isStopped(outcome)) throw new Error(`stopped: ${JSON.stringify(outcome.findings)}`);
  return outcome;
}
const block = (outcome: Assessment, id: string) => {
  const found = outcome.blocks.find(({ blockId }) => blockId === id);
  if (!found) throw new Error(`no block ${id}; got ${outcome.blocks.map(({ blockId }) => blockId)}`);
  return found;
};
const amount = (outcome: Assessment, id: string, criterion: string) =>
  block(outcome, id).scoreParts.find((part) => part.criterion === criterion)?.amount;
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('blocks of the project', () => {
  const outcome = reckoned({
    trees: [crown('middle', 0.5), crown('end', 37), crown('far', 20, { galls: 'none', cause: 'none' })],
    layers: { blocks: twoBlocks },
  });

  test('a crown over two blocks stains both and stands in one', () => {
    expect(outcome.trees.map(({ blockId }) => blockId)).toEqual(['east', null, 'east']);
    expect(outcome.blame.map(({ blockId, treeId }) => `${blockId} ${treeId}`)).toEqual([
      'east middle',
      'east end',
      'west middle',
      'null end',
    ]);
    expect(block(outcome, 'east')).toMatchObject({ rank: 1, name: null, trees: 2, treesRated: 2 });
    expect(block(outcome, 'west')).toMatchObject({ rank: 2, name: 'West side', trees: 0, worstSeverityPct: null });
    expect(block(outcome, 'east').worstSeverityPct).toBe(40);
  });

  test('ledger rows and blame sum to the total, the outside included', () => {
    for (const rows of [outcome.ledger, outcome.blame]) {
      expect(sum(rows.map(({ stainedM2 }) => stainedM2.value))).toBeCloseTo(outcome.total.stainedM2.value, 9);
    }
    expect(outcome.ledger.map(({ blockId }) => blockId)).toEqual(['east', 'west', null]);
    expect(outcome.ledger[2].pavementM2).toBeCloseTo(20, 2);
    expect(outcome.pavement[0].blockId).not.toBeNull();
  });

  test('ranges are null as long as nothing was drawn', () => {
    expect(outcome.total.stainedM2).toMatchObject({ range80: null, range95: null });
    expect(outcome.run).toMatchObject({ draws: 0, calibrated: false, asOf: '2026-05-10' });
  });
});

describe('criteria on the ground', () => {
  const complaint = (row: number, x: number, y: number, more: Record<string, unknown> = {}) =>
    feature(row, pointAt(x, y), {
      complaint_id: `c${row}`,
      received_on: '2026-05-10',
      about: 'staining',
      state: 'open',
      ...more,
    });
  const layers = {
    blocks: twoBlocks,
    complaints: [
      complaint(1, 10, 5),
      complaint(2, -20, 34),
      complaint(3, 20, 36),
      complaint(4, 20, 5, { state: 'closed' }),
      complaint(5, 20, 5, { about: 'litter' }),
      complaint(6, 20, 5, { received_on: '2026-02-09' }),
    ],
    sites: [
      // 60 m is reckoned to a staining crown's outline: 64 m from the trunk of one with radius 4.
      feature(1, pointAt(20, 63.9), { site_id: 's1', kind: 'school' }),
      feature(2, pointAt(20, -64.1), { site_id: 's2', kind: 'clinic' }),
      feature(3, pointAt(-20, 10), { site_id: 's3', kind: 'clinic' }),
    ],
  };
  const outcome = reckoned({
    trees: [crown('galled', 20), crown('clean', -20, { galls: 'none', cause: 'none', browned: 90 })],
    layers,
  });

  test('complaints: in the block, or within 25 m of the nearest; halved after 90 days', () => {
    expect(amount(outcome, 'east', 'complaints')).toBeCloseTo(1.5, 12);
    expect(amount(outcome, 'west', 'complaints')).toBe(1);
    expect(block(outcome, 'east').complaintsOpen).toBe(2);
    expect(outcome.run.counts.complaints_outside_blocks).toBe(1);
  });

  test('sites: near a crown that stains the block, not near a clean one', () => {
    expect(amount(outcome, 'east', 'sensitive_sites')).toBe(2);
    expect(amount(outcome, 'west', 'sensitive_sites')).toBe(0);
  });

  test('a sensitive site near the outline but beyond the distance does not count', () => {
    const near = reckoned({
      trees: [crown('galled', 20)],
      layers: { blocks: twoBlocks, sites: layers.sites.slice(0, 2) },
    });
    expect(amount(near, 'east', 'sensitive_sites')).toBe(1);
  });

  test('the worst severity is of crowns with a cause', () => {
    expect(amount(outcome, 'east', 'worst_severity')).toBe(40);
    expect(amount(outcome, 'west', 'worst_severity')).toBe(0);
  });

  test('foot traffic is the stained pavement’s', () => {
    expect(amount(outcome, 'east', 'foot_traffic')).toBe(1);
    expect(amount(outcome, 'west', 'foot_traffic')).toBe(0);
  });

  test('bloom: by the tree’s block or the block itself, the newest; larvae in galls close it', () => {
    const seen = (row: number, more: Record<string, unknown>) =>
      feature(row, { kind: 'none' }, { observed_on: '2026-05-09', bbch: 63, ...more });
    const bloom = [
      seen(2, { tree_id: 'galled' }),
      seen(3, { block_id: 'west', observed_on: '2026-05-01' }),
      seen(4, { block_id: 'west', larvae_in_galls: 'yes' }),
    ];
    const blooming = reckoned({ trees: [crown('galled', 20)], layers: { blocks: twoBlocks, bloom } });
    expect(block(blooming, 'east').bloomState).toBe('open');
    expect(block(blooming, 'west').bloomState).toBe('closed');
    expect(amount(blooming, 'east', 'bloom_window')).toBe(1);
    expect(block(outcome, 'east').bloomState).toBe('unknown');
  });
});

describe('blocks that are not given', () => {
  const streets = (row: number, ...points: [number, number][]): RawFeature => feature(row, lineAt(points), {});

  test('faces of the streets, numbered from the south-west', () => {
    const outcome = reckoned({
      trees: [crown('t', 20)],
      layers: {
        streets: [streets(1, [-40, -30], [40, -30], [40, 30], [-40, 30], [-40, -30]), streets(2, [0, -30], [0, 30])],
      },
    });
    expect(outcome.blocks.map(({ blockId, name }) => [blockId, name])).toEqual([
      ['block-002', null],
      ['block-001', null],
    ]);
    expect(outcome.run.counts).toMatchObject({ blocks_from_streets: 2, blocks_from_cells: 0 });
    expect(sum(outcome.ledger.map(({ pavementM2 }) => pavementM2))).toBeCloseTo(outcome.total.pavementM2, 9);
    // Faces lie on a grid of 1 mm, the sidewalk's ends on their border.
    expect(sum(outcome.blocks.map(({ pavementM2 }) => pavementM2))).toBeCloseTo(outcome.total.pavementM2, 2);
  });

  test('streets that enclose nothing say so, and square cells serve', () => {
    const outcome = reckoned({ trees: [crown('t', 20)], layers: { streets: [streets(1, [-40, -30], [40, -30])] } });
    expect(outcome.findings.map(({ code }) => code)).toContain('streets-enclose-nothing');
    expect(outcome.run.counts.blocks_from_cells).toBe(outcome.blocks.length);
    expect(outcome.blocks.every(({ pavementM2 }) => pavementM2 > 0)).toBe(true);
    expect(sum(outcome.blocks.map(({ stainedM2 }) => stainedM2.value))).toBeCloseTo(outcome.total.stainedM2.value, 9);
  });
});

describe('what cannot be used', () => {
  test('a crown of no size and pavement of no area are left out, told and counted; the rest goes on', () => {
    const input = streetProject({ trees: [crown('good', 0), crown('flat', 10)], layers: { blocks: twoBlocks } });
    const { crowns, pavement } = input.layers;
    if (!crowns || !pavement) throw new Error('the street has both');
    const flat = feature(2, boxAt(8, 0, 12, 0), { tree_id: 'flat', host: 'Terminalia buceras' });
    const sliver = feature(2, boxAt(0, 0, 9, 0), { pavement_id: 'sliver', kind: 'sidewalk', surface: 'concrete' });
    const outcome = finished(
      assess({
        ...input,
        layers: {
          ...input.layers,
          crowns: { ...crowns, features: [crowns.features[0], flat] },
          pavement: { ...pavement, features: [...pavement.features, sliver] },
        },
      }),
    );
    expect(outcome.trees.map(({ treeId }) => treeId)).toEqual(['good']);
    expect(outcome.pavement.map(({ pavementId }) => pavementId)).toEqual(['walk']);
    expect(outcome.run.counts).toMatchObject({
      crowns_read: 2,
      crowns_used: 1,
      crowns_left_out: 1,
      pavement_left_out: 1,
    });
    for (const feature of ['flat', 'sliver']) {
      expect(outcome.findings.filter(({ where }) => where.feature === feature).map(({ effect }) => effect)).toContain(
        'left_out',
      );
    }
    expect(outcome.total.stainedM2.value).toBeGreaterThan(4);
  });

  test('no pavement at all stops the job with a finding and reckons nothing', () => {
    const input = streetProject({ trees: [crown('t', 0)] });
    const { pavement: _, ...layers } = input.layers;
    const outcome = assess({ ...input, layers });
    expect(isStopped(outcome)).toBe(true);
    expect(outcome.findings.some(({ effect }) => effect === 'stops')).toBe(true);
  });
});

describe('stages', () => {
  const input: ProjectInput = streetProject({
    trees: [crown('a', 20), crown('b', -20, { browned: 45 })],
    layers: { blocks: twoBlocks, sites: [feature(1, pointAt(70, 10), { site_id: 's', kind: 'school' })] },
  });

  test('a moved weight needs the rank stage alone and gives what the whole job gives', () => {
    const { survey, settings, findings } = readSurvey(input);
    const asOf = asOfDay(survey, settings);
    const ground = reckonGeometry(survey, settings);
    const stain = reckonStain(ground, survey, settings, asOf);
    const weights = { ...settings.priority.weights, sensitive_sites: 0, worst_severity: 0.9 };
    const moved = { ...settings, priority: { ...settings.priority, weights } };
    const ranking = rank(ground, stain, survey, moved, asOf);
    const outcome = compose(
      { input, survey, ground, stain, ranking, findings },
      { settings: moved, asOf, draws: 0, seed: 1 },
    );
    const anew = finished(assess({ ...input, settings: { priority: { weights } } }));
    expect(outcome).toEqual(anew);
    expect(outcome.blocks[0].blockId).toBe('west');
    expect(finished(assess(input)).blocks[0].blockId).toBe('east');
  });

  test('the same input gives the same digits, and the order of the crowns none other', () => {
    const once = finished(assess(input));
    expect(JSON.stringify(finished(assess(input)))).toBe(JSON.stringify(once));
    const { crowns } = input.layers;
    if (!crowns) throw new Error('the street has crowns');
    const turned = { ...crowns, features: crowns.features.toReversed() };
    const other = finished(assess({ ...input, layers: { ...input.layers, crowns: turned } }));
    expect(other.trees.toReversed()).toEqual(once.trees);
    expect(other.blocks).toEqual(once.blocks);
    expect(other.blame).toEqual(once.blame);
  });

  test('progress names every stage in the job’s order and ends each', () => {
    const starts: Stage[] = [];
    const ends: Stage[] = [];
    assess(input, {
      progress: (stage, done, total) => {
        if (done === 0) starts.push(stage);
        if (done === total) ends.push(stage);
      },
    });
    expect(starts).toEqual(STAGES);
    expect(ends).toEqual(STAGES);
  });
});
