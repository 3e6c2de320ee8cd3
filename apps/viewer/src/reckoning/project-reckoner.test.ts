import { resolve } from 'node:path';
import { assess, isStopped } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { beforeAll, describe, expect, test } from 'vitest';
import type { RecordEdit } from '../edits/edit.ts';
import { crownsWith, ratingsWith } from '../edits/edited-layers.ts';
import { ProjectReckoner } from './project-reckoner.ts';

const SAMPLE = resolve(import.meta.dirname, '../../../../sample-geo');

describe('a project with edits', () => {
  let input: Awaited<ReturnType<typeof readProject>>;
  let reckoner: ProjectReckoner;
  beforeAll(async () => {
    input = await readProject(SAMPLE);
    reckoner = new ProjectReckoner(input);
  });

  const rating = (tree_id: string): RecordEdit => ({
    kind: 'rating',
    treeId: tree_id,
    after: { tree_id, rated_on: '2026-05-19', rater: 'AB', browned_pct: 80, cause: 'frass', gall_load: 'heavy' },
  });
  const crown = (treeId: string): RecordEdit => {
    const before = reckoner.tree(treeId)?.crown;
    if (before?.geometry.type !== 'Polygon') throw new Error(`${treeId} is not outlined`);
    const coordinates = before.geometry.coordinates.map((ring) => ring.map(([lon, lat]) => [lon + 2e-5, lat]));
    return { kind: 'crown', treeId, before, after: { ...before, geometry: { type: 'Polygon', coordinates } } };
  };

  test('says what a full run on the edited layers says, and forgets what is undone', () => {
    const first = reckoner.shown().project;
    const edits = [crown('T0097'), rating('T0097')];
    const { project, features } = reckoner.setEdits(edits);
    const { crowns, ratings } = input.layers;
    if (!crowns || !ratings) throw new Error('the sample has crowns and ratings');
    const layers = {
      ...input.layers,
      crowns: crownsWith(crowns, edits, (each) => String(each.properties.tree_id)),
      ratings: ratingsWith(ratings, edits),
    };
    const full = assess({ ...input, layers });
    if (isStopped(full)) throw new Error('the edited sample does not stop');
    expect(project.total.stainedM2.value).toBeCloseTo(full.total.stainedM2.value, 8);
    expect(project.blocks.map(({ blockId }) => blockId)).toEqual(full.blocks.map(({ blockId }) => blockId));
    expect(project.treesRated).toBe(first.treesRated + 1);
    expect(features.trees.map((each) => each.properties?.tree_id)).toContain('T0097');
    const back = reckoner.setEdits([]).project;
    expect(back.total.stainedM2.value).toBeCloseTo(first.total.stainedM2.value, 8);
    expect(back.treesRated).toBe(first.treesRated);
  });

  test('moved weights rank previews; results stay under the project’s own', () => {
    const own = reckoner.shown().project;
    const { weights, levels } = own.run.settings.priority;
    reckoner.weigh({ levels, weights: { ...weights, stained: 0, complaints: 1 } });
    const { project } = reckoner.setEdits([rating('T0097')]);
    expect(project.run.settings.priority.weights).toEqual(weights);
    const record = reckoner.tree('T0097')?.crown;
    const preview = record && reckoner.preview('T0097', record);
    const scoreOf = (id: string | undefined) => project.blocks.find(({ blockId }) => blockId === id)?.score;
    expect(preview?.blocks[0].score).not.toBeCloseTo(scoreOf(preview?.blocks[0].blockId) ?? Number.NaN, 6);
    reckoner.endPreview();
    reckoner.setEdits([]);
  });

  test('hands the edited layers out as files', async () => {
    reckoner.setEdits([rating('T0097')]);
    const rows = (await reckoner.layerFile('ratings')).trim().split('\r\n');
    expect(rows.at(-1)).toContain('T0097,2026-05-19,AB,80');
    expect(JSON.parse(await reckoner.layerFile('crowns')).features).toHaveLength(1200);
    reckoner.setEdits([]);
  });
});
