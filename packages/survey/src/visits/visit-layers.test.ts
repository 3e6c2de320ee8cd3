import { describe, expect, test } from 'vitest';
import type { ProjectInput, RawLayer } from '../project-input.ts';
import { readSurvey } from '../reading/read-survey.ts';
import type { Visit } from './visit.ts';

const table = (...rows: Record<string, unknown>[]): RawLayer => ({
  file: 'x',
  shape: 'table',
  crs: 'OGC:CRS84',
  features: rows.map((properties, k) => ({ row: k + 2, geometry: { kind: 'none' }, properties })),
});
const crowns: RawLayer = {
  ...table(),
  shape: 'features',
  features: ['A', 'B'].map((tree_id, k) => ({
    row: k + 1,
    geometry: { kind: 'point', points: Float64Array.of(1 + k / 1000, 2) },
    properties: { tree_id, spread_m: 8 },
  })),
};
const visit = (visitId: string, details: NonNullable<Visit['details']>, more: Partial<Visit> = {}): Visit => ({
  visitId,
  treeId: 'A',
  visitedOn: '2026-05-20T14:03:00.000Z',
  visitor: 'Ana',
  did: 'rated',
  details,
  ...more,
});
const read = (visits: readonly Visit[], layers: ProjectInput['layers'] = {}) =>
  readSurvey({
    title: 'Town',
    season: 2026,
    units: 'metric',
    layers: { crowns, pavement: table(), ...layers },
    imagery: [],
    settings: {},
    sources: [],
    findings: [],
    visits,
  });
const RATED = { ratings: [{ browned_pct: 30, cause: 'frass', evidence: 'frass on the ground' }] };

describe('what a visit found counts as records, with its source', () => {
  test('a rating, a quadrat and a bloom observation take tree, day and person from the visit', () => {
    const { survey, findings } = read([
      visit('v1', {
        ...RATED,
        quadrats: [{ quadrat_id: 'Q1', area_m2: 0.25, stained_pct: 40, lon: 1, lat: 2 }],
        bloom: [{ bbch: 65, bees_at_flowers: 'yes' }],
      }),
    ]);
    expect(survey.ratings).toMatchObject([
      { treeId: 'A', ratedOn: '2026-05-20', rater: 'Ana', browned: { share: 0.3 }, extra: { visit_id: 'v1' } },
    ]);
    expect(survey.quadrats).toMatchObject([
      { quadratId: 'Q1', stainedShare: 0.4, measuredOn: '2026-05-20', by: 'Ana', extra: { visit_id: 'v1' } },
    ]);
    expect(survey.bloom).toMatchObject([{ treeId: 'A', observedOn: '2026-05-20', bbch: 65, beesAtFlowers: 'yes' }]);
    expect(findings.filter(({ where }) => where.file === 'visits')).toEqual([]);
  });

  test('a visit of a block observes the block', () => {
    const { treeId: _, ...ofBlock } = visit('v1', { bloom: [{ bbch: 62 }] }, { blockId: 'X' });
    expect(read([ofBlock]).survey.bloom).toMatchObject([{ blockId: 'X', bbch: 62 }]);
  });

  test('values are checked as those of the layers are', () => {
    const { survey, findings } = read([visit('v1', { ratings: [{ browned_pct: 140 }] })]);
    expect(survey.ratings).toEqual([]);
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'value-out-of-range', where: expect.objectContaining({ file: 'visits' }) }),
    );
  });

  test('a visit that was taken over into the layer by hand counts once', () => {
    const ratings = table({ tree_id: 'A', rated_on: '2026-05-20', rater: 'Ana', browned_pct: 35, visit_id: 'v1' });
    expect(read([visit('v1', RATED)], { ratings }).survey.ratings.map(({ browned }) => browned?.share)).toEqual([0.35]);
    expect(read([visit('v2', RATED)], { ratings }).survey.ratings).toHaveLength(2);
  });

  test('trees not found, new or of another host are told and change nothing', () => {
    const { survey, findings } = read([
      visit('v1', { not_found: true }),
      visit('v2', { wrong_species: { host: 'Quercus virginiana' } }, { treeId: 'B' }),
      visit('v3', { new_tree: { tree_id: 'N1', lon: 1, lat: 2, spread_m: 6 } }, { treeId: 'N1' }),
    ]);
    expect(survey.trees.map(({ treeId }) => treeId)).toEqual(['A', 'B']);
    expect(
      findings.filter(({ code }) => code.startsWith('visit-')).map(({ code, where }) => [code, where.feature]),
    ).toEqual([
      ['visit-tree-not-found', 'A'],
      ['visit-other-host', 'B'],
      ['visit-new-tree', 'N1'],
    ]);
  });

  test('details of another shape are no rows', () => {
    const { survey } = read([visit('v1', { ratings: 'many', quadrats: [7, null], bloom: { bbch: 61 } })]);
    expect([survey.ratings, survey.quadrats, survey.bloom]).toEqual([[], [], []]);
  });
});
