import { describe, expect, test } from 'vitest';
import { box, features, line, point, projectInput, table, told } from '../sample-layers.ts';
import { readSurvey } from './read-survey.ts';

const crowns = features('crowns.geojson', [point(13.4, 52.5), { tree_id: 'T-1', spread_m: 8 }]);
const pavement = features('pavement.geojson', [
  line(13.4, 52.5, 13.401, 52.5),
  { pavement_id: 'P', kind: 'sidewalk', width_m: 2 },
]);
const ratings = table('ratings.csv', {
  tree_id: 'T-1',
  rated_on: '2026-05-03',
  rater: 'A',
  browned_pct: 40,
  cause: 'none',
});

describe('a whole project', () => {
  test('records of every layer, settings laid over the defaults', () => {
    const { survey, settings, findings } = readSurvey(
      projectInput({ crowns, pavement, ratings }, { dose_coefficient: 2 }),
    );
    expect([survey.trees.length, survey.pavement.length, survey.ratings.length]).toEqual([1, 1, 1]);
    expect(settings.dose_coefficient).toBe(2);
    expect(findings).toEqual([]);
  });

  test('without crowns or pavement the job stops; without ratings it goes on with a warning', () => {
    expect(told(readSurvey(projectInput({ crowns })).findings)).toEqual([
      'layer-missing error/stops',
      'layer-missing warning/kept',
    ]);
    expect(readSurvey(projectInput({})).findings.map((finding) => finding.where.layer)).toEqual([
      'crowns',
      'pavement',
      'ratings',
    ]);
  });

  test('an empty layer is told; an empty crown or pavement layer stops', () => {
    const empty = { ...crowns, features: [] };
    const { findings } = readSurvey(projectInput({ crowns: empty, pavement, ratings: { ...ratings, features: [] } }));
    expect(told(findings)).toEqual(['layer-empty error/stops', 'layer-empty warning/kept']);
    expect(findings[0].facts).toEqual({ rows: 0 });
  });

  test('crowns elsewhere than the pavement stop the job, with both extents', () => {
    const far = features('crowns.geojson', [point(-80.2, 25.77), { tree_id: 'T-1', spread_m: 8 }]);
    const { findings } = readSurvey(projectInput({ crowns: far, pavement, ratings }));
    expect(told(findings)).toEqual(['layers-do-not-meet error/stops']);
    expect(findings[0].facts).toEqual({
      extent: '-80.2000 25.7700 … -80.2000 25.7700',
      other: 'pavement',
      other_extent: '13.4000 52.5000 … 13.4010 52.5000',
    });
  });

  test('other layers elsewhere are kept with a warning; next door is not elsewhere', () => {
    const blocks = features('blocks.geojson', [box(0, 0, 0.01), { block_id: 'B' }]);
    const complaints = features('complaints.geojson', [point(13.405, 52.5), { complaint_id: 'C', state: 'open' }]);
    const { findings } = readSurvey(projectInput({ crowns, pavement, ratings, blocks, complaints }));
    expect(findings.map((finding) => [finding.code, finding.where.layer])).toEqual([['layers-do-not-meet', 'blocks']]);
  });

  test('the readers’ own findings come first and none is lost', () => {
    const input = projectInput({ crowns, pavement, ratings }, { dose_coeficient: 2 });
    const own = {
      code: 'encoding-guessed',
      severity: 'note',
      effect: 'assumed',
      where: {},
      facts: { encoding: 'cp1252' },
    } as const;
    const { findings } = readSurvey({ ...input, findings: [own] });
    expect(told(findings)).toEqual([
      'encoding-guessed note/assumed',
      'setting-unknown warning/left_out dose_coeficient',
    ]);
    expect(findings[1].facts).toMatchObject({ nearest: 'dose_coefficient' });
  });

  test('ratings of an id used twice go to the first crown', () => {
    const twice = features(
      'crowns.geojson',
      [point(13.4, 52.5), { tree_id: 'T-1', spread_m: 8 }],
      [point(13.4005, 52.5), { tree_id: 'T-1', spread_m: 8 }],
    );
    const { survey } = readSurvey(projectInput({ crowns: twice, pavement, ratings }));
    expect(survey.trees.map((tree) => tree.treeId)).toEqual(['T-1', 'T-1~2']);
    expect(survey.ratings.map((rating) => rating.treeId)).toEqual(['T-1']);
  });
});
