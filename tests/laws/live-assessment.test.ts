/** An assessment that follows edits says what a full reckoning of the edited project says. */

import { resolve } from 'node:path';
import { type Assessment, assess, isStopped, LiveAssessment } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { type ProjectInput, type RawFeature, readSurvey, type Tree } from '@crownfall/survey';
import { beforeAll, describe, expect, test } from 'vitest';

const SAMPLE = resolve(import.meta.dirname, '../../sample-geo');
/** Live figures against full ones: rounding of sums in another order. */
const SAME = 1e-9;

describe('a live assessment', () => {
  let input: ProjectInput;
  let live: LiveAssessment;
  beforeAll(async () => {
    input = await readProject(SAMPLE);
    live = new LiveAssessment(input);
  });

  test('starts where a full reckoning ends', () => {
    expectSame(live.assessment(), reckoned(input));
  });

  test.each([
    ['an outlined crown shifted over its street', 0, (f: RawFeature) => shifted(f, 4e-5, -3e-5)],
    ['a paced crown with a greater spread', 300, (f: RawFeature) => spread(f, 14)],
    ['a crown moved to another block', 700, (f: RawFeature) => shifted(f, -12e-4, 6e-4)],
  ])('%s: preview, kept state and full reckoning agree', (_, from, change) => {
    const features = input.layers.crowns?.features ?? [];
    const at = features.findIndex((f, i) => i >= from && change(f) !== f);
    const edited = withCrown(input, at, change(features[at]));
    const full = reckoned(edited);
    const tree = treeOf(edited, at);
    const preview = live.preview(tree);
    const own = full.trees.find(({ treeId }) => treeId === tree.treeId);
    expect(preview.crownM2).toBeCloseTo(own?.crownM2 ?? Number.NaN, 9);
    near(preview.driplineM2, own?.driplineM2);
    near(preview.falloutM2, own?.falloutM2);
    expect(preview.blocks.length).toBeGreaterThan(0);
    for (const block of preview.blocks) {
      const fresh = full.blocks.find(({ blockId }) => blockId === block.blockId);
      near(block.stainedM2, fresh?.stainedM2.value);
      near(block.score, fresh?.score);
      expect(block.rank).toBe(fresh?.rank);
    }
    live.endPreview();
    expectSame(live.assessment(), reckoned(input));
    const before = live.tree(tree.treeId) as Tree;
    live.keepTree(tree);
    expectSame(live.assessment(), full);
    live.keepTree(before);
    expectSame(live.assessment(), reckoned(input));
  });

  test('a crown that goes and comes back', () => {
    const tree = live.tree('T0021') as Tree;
    const features = input.layers.crowns?.features ?? [];
    const without = { ...input.layers.crowns, features: features.filter((f) => f.properties.tree_id !== 'T0021') };
    live.dropTree('T0021');
    const full = reckoned({ ...input, layers: { ...input.layers, crowns: without as never } });
    expectSame(live.assessment(), full);
    live.keepTree(tree);
    near(live.assessment().total.stainedM2.value, reckoned(input).total.stainedM2.value);
  });
});

function reckoned(input: ProjectInput): Assessment {
  const outcome = assess(input);
  if (isStopped(outcome)) throw new Error('the sample does not stop');
  return outcome;
}

function expectSame(got: Assessment, want: Assessment): void {
  near(got.total.stainedM2.value, want.total.stainedM2.value);
  expect(got.blocks.map(({ blockId }) => blockId)).toEqual(want.blocks.map(({ blockId }) => blockId));
  got.blocks.forEach((block, i) => {
    near(block.stainedM2.value, want.blocks[i].stainedM2.value);
    near(block.score, want.blocks[i].score);
    expect(block.trees).toBe(want.blocks[i].trees);
  });
  expect(got.trees.length).toBe(want.trees.length);
  got.trees.forEach((tree, i) => {
    expect(tree.treeId).toBe(want.trees[i].treeId);
    near(tree.stainedM2.value, want.trees[i].stainedM2.value);
  });
}

function near(got: number, want: number | undefined): void {
  expect(Math.abs(got - (want ?? Number.NaN))).toBeLessThanOrEqual(SAME * Math.max(1, Math.abs(got)));
}

function shifted(feature: RawFeature, dLon: number, dLat: number): RawFeature {
  const { geometry } = feature;
  if (geometry.kind !== 'area') return feature;
  const move = (flat: Float64Array) => flat.map((value, i) => value + (i % 2 === 0 ? dLon : dLat));
  return { ...feature, geometry: { kind: 'area', polygons: geometry.polygons.map((rings) => rings.map(move)) } };
}

function spread(feature: RawFeature, spread_m: number): RawFeature {
  if (feature.geometry.kind !== 'point') return feature;
  return { ...feature, properties: { ...feature.properties, spread_m } };
}

function withCrown(input: ProjectInput, at: number, feature: RawFeature): ProjectInput {
  const { crowns } = input.layers;
  if (!crowns) throw new Error('the sample has crowns');
  return { ...input, layers: { ...input.layers, crowns: { ...crowns, features: crowns.features.with(at, feature) } } };
}

const treeOf = (input: ProjectInput, at: number): Tree => {
  const id = input.layers.crowns?.features[at].properties.tree_id;
  return readSurvey(input).survey.trees.find(({ treeId }) => treeId === id) as Tree;
};
