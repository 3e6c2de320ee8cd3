import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { quadratNotes } from '../life/field-notes.ts';
import { truthOf } from '../life/truth.ts';
import { layerFiles } from '../write-layers.ts';
import { areaOf } from './shapes.ts';
import { builtTown } from './town.ts';

const town = builtTown();
const truth = truthOf(town.trees);

test('the files beside the generator are what it makes', () => {
  for (const [name, text] of layerFiles(town, truth, quadratNotes(town, truth))) {
    const file = readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
    expect(file === text, `${name} differs: run npx tsx sample-geo/generator/index.ts`).toBe(true);
  }
});

test('kerb to kerb and kerb to middle, the streets fill what the blocks leave', () => {
  const ground = town.blocks.reduce((sum, block) => sum + areaOf(block.face.map((corner) => corner.at)), 0);
  const withinKerbs = town.blocks.reduce((sum, { loop, kerb }) => {
    return sum + areaOf(loop.points.map(([x, y], i) => [x + loop.normals[i][0] * kerb, y + loop.normals[i][1] * kerb]));
  }, 0);
  const streets = town.pavement
    .filter((piece) => piece.kind === 'carriageway' || piece.id.endsWith('-M'))
    .reduce((sum, piece) => sum + areaOf(piece.shell ?? []), 0);
  // Rounding of coordinates in doubles over some 400,000 m².
  expect(Math.abs(ground - withinKerbs - streets)).toBeLessThan(1e-3);
});

test('every piece of pavement is drawn counter-clockwise and has an area', () => {
  expect(town.pavement.filter((piece) => piece.shell !== undefined && areaOf(piece.shell) < 0.5)).toEqual([]);
});

test('ids are unique', () => {
  const ids = [...town.trees, ...town.pavement, ...town.blocks].map((each) => each.id);
  expect(new Set(ids).size).toBe(ids.length);
});
