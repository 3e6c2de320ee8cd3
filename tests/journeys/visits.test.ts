/**
 * Visits at the desk: what was rated, measured and seen in the field counts in reckon, calibrate, season and the server,
 * from a folder and from a store alike, and a day's report says what it changed. Expected figures are the closed form of
 * the invented town (tiny-town.ts).
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { assess, calibrateProject, isStopped, reviewSeason } from '@crownfall/assessment';
import type { ProjectStore } from '@crownfall/exchange';
import { openProjectStore, readProject } from '@crownfall/exchange/node';
import type { Visit } from '@crownfall/survey';
import { beforeAll, describe, expect, test } from 'vitest';
import { crownfall, serve, temporaryFolder } from './crownfall-process.ts';
import { STAINED_M2, writeTinyTown } from './tiny-town.ts';

const DAY = '2026-05-20';
const SPREAD_M = 8;
/** Stained area of one crown at a severity, k = w = 1, no drift: π r² (1 − e^−s). */
const stainedAt = (severity: number): number => Math.PI * (SPREAD_M / 2) ** 2 * (1 - Math.exp(-severity));
/** Plane areas against closed form (crown polygons are scaled to the exact area; the plane is equal-area). */
const RELATIVE = 1e-6;

const visit = (
  n: number,
  treeId: string,
  did: string,
  details: NonNullable<Visit['details']>,
  note?: string,
): Visit => ({
  visitId: `00000000-0000-4000-8000-00000000000${n}`,
  treeId,
  visitedOn: `${DAY}T14:0${n}:00.000Z`,
  visitor: 'invented crew',
  did,
  ...(note === undefined ? {} : { note }),
  details,
});
const VISITS: readonly Visit[] = [
  visit(1, 'T-GALLED', 'rated + measured', {
    ratings: [{ browned_pct: 80, gall_load: 'heavy', cause: 'frass', evidence: 'frass on the ground' }],
    quadrats: [{ quadrat_id: 'Q1', area_m2: 0.25, stained_pct: 55, lon: -79.5, lat: 27.25, method: 'photo' }],
    bloom: [{ bbch: 65, larvae_in_galls: 'no', bees_at_flowers: 'yes' }],
    photos: [{ name: 'a.jpg' }, { name: 'b.jpg' }],
  }),
  visit(2, 'T-CLEAN', 'inspected', { not_found: true, wrong_species: { host: 'Quercus virginiana' } }, '=stump, only'),
  visit(3, 'T-NEW', 'inspected', {
    new_tree: { tree_id: 'T-NEW', lon: -79.5, lat: 27.25, host: 'Terminalia buceras' },
  }),
];

let folder: string;
let file: string;

beforeAll(async () => {
  folder = writeTinyTown(join(temporaryFolder(), 'town'));
  const project = JSON.parse(readFileSync(join(folder, 'project.json'), 'utf8')) as object;
  writeFileSync(join(folder, 'project.json'), JSON.stringify({ ...project, visits: 'visits.json' }));
  writeFileSync(join(folder, 'visits.json'), JSON.stringify({ visits: VISITS }));
  file = join(temporaryFolder(), 'town.gpkg');
  const converted = crownfall(['convert', folder, '--to', file]);
  expect(converted.stderr.includes('Error'), converted.stderr).toBe(false);
}, 60_000);

const readBoth = () => Promise.all([folder, file].map((path) => readProject(path)));

describe('visits count as records, from a folder and from a store', () => {
  test('a GeoPackage file holds the visits of the folder, and a folder made of it has them again', async () => {
    const [, stored] = await readBoth();
    expect(stored.visits).toEqual(VISITS);
    const again = join(temporaryFolder(), 'again');
    crownfall(['convert', file, '--to', again]);
    expect((await readProject(again)).visits).toEqual(VISITS);
  }, 60_000);

  test('reckon: the visit is the newest rating; both give the same digits', async () => {
    const outcomes = (await readBoth()).map((input) => assess(input, { draws: 100, seed: 1 }));
    const [one, two] = outcomes.map((outcome) => {
      if (isStopped(outcome)) throw new Error(JSON.stringify(outcome.findings));
      return outcome;
    });
    expect(one.total.stainedM2.value / stainedAt(0.8)).toBeCloseTo(1, -Math.log10(RELATIVE));
    expect(two.total.stainedM2).toEqual(one.total.stainedM2);
    expect(two.blocks.map((block) => [block.blockId, block.stainedM2, block.bloomState])).toEqual(
      one.blocks.map((block) => [block.blockId, block.stainedM2, block.bloomState]),
    );
    const told = one.findings.filter(({ code }) => code.startsWith('visit-')).map(({ code }) => code);
    expect(told).toEqual(['visit-tree-not-found', 'visit-other-host', 'visit-new-tree']);
  });

  test('calibrate sees the quadrat, season compares the visit with the rating before it', async () => {
    for (const input of await readBoth()) {
      const calibration = calibrateProject(input);
      expect(isStopped(calibration) ? [] : calibration.findings.map(({ code }) => code)).not.toContain('layer-missing');
      const review = reviewSeason(input, { before: '2026-05-10', after: DAY, draws: 0 });
      if (isStopped(review)) throw new Error(JSON.stringify(review.findings));
      const galled = review.blocks.find(({ blockId }) => blockId === 'GALLED');
      expect(galled?.stainedBeforeM2).toBeCloseTo(STAINED_M2, 4);
      expect(galled?.stainedAfterM2).toBeCloseTo(stainedAt(0.8), 4);
    }
  });

  test('a visit sent to the server counts in its figures', async () => {
    const { store } = await openProjectStore(file);
    const before = (await (store as ProjectStore).visits()).length;
    await (store as ProjectStore).close();
    const { url, stop } = await serve(file);
    const { visitId: _, ...rest } = visit(4, 'T-GALLED', 'rated', {
      ratings: [{ browned_pct: 60, gall_load: 'heavy', cause: 'frass', evidence: 'frass on the ground' }],
    });
    const sent = { visitId: crypto.randomUUID(), ...rest, visitedOn: '2026-05-22' };
    const answer = await fetch(`${url.replace(/\/$/, '')}/api/visits`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: url.replace(/\/$/, '') },
      body: JSON.stringify({ visits: [sent] }),
    });
    expect([answer.status, await answer.json()]).toEqual([
      200,
      { outcomes: [{ visitId: sent.visitId, outcome: 'added' }] },
    ]);
    await stop();
    const input = await readProject(file);
    expect(input.visits).toHaveLength(before + 1);
    const outcome = assess(input);
    if (isStopped(outcome)) throw new Error('stopped');
    expect(outcome.total.stainedM2.value).toBeCloseTo(stainedAt(0.6), 4);
  }, 60_000);
});

describe('the report of a day', () => {
  test('who, where, what, and what it changed; in both languages; a table no spreadsheet runs', () => {
    const out = temporaryFolder();
    const english = crownfall(['visits', folder, '--out', out, '--draws', '0', '--quiet']);
    expect([english.code, english.stderr]).toEqual([0, '']);
    expect(english.stdout).toContain(`visits of ${DAY}`);
    expect(english.stdout).toContain('Visits: 3, ratings: 1, quadrats: 1, trees not found: 1, new trees: 1');
    expect(english.stdout).toContain('Bees at the flowers: GALLED / T-GALLED.');
    expect(english.stdout).toContain(
      `${STAINED_M2.toFixed(1)} m² before the day's visits, ${stainedAt(0.8).toFixed(1)} m² with them`,
    );
    const page = readFileSync(join(out, 'visits.html'), 'utf8');
    expect(page).toContain('T-CLEAN');
    const csv = readFileSync(join(out, 'visits.csv'), 'utf8');
    expect(csv.trim().split('\r\n')).toHaveLength(4);
    expect(csv).toContain(`"'=stump, only"`);
    const spanish = crownfall(['visits', folder, '--language', 'es', '--draws', '0', '--quiet']);
    expect(spanish.stdout).toContain(`visitas del ${DAY}`);
    expect(spanish.stdout).toContain('árboles no encontrados: 1');
  }, 60_000);

  test('a project without visits says so; a day that is none is wrong use', () => {
    const bare = writeTinyTown(join(temporaryFolder(), 'bare'));
    expect(crownfall(['visits', bare, '--draws', '0', '--quiet']).stdout).toContain('no visits');
    expect(crownfall(['visits', folder, '--day', '20.5.2026', '--quiet']).code).toBe(2);
  }, 60_000);
});
