import { readFile } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { equalAreaPlane, type Finding, type LonLatGeometry, signedArea } from '@crownfall/geometry';
import type { ProjectInput, RawFeature } from '@crownfall/survey';
import { writeGeoJson } from '../geojson/write-geojson.ts';
import { type Adoption, type AdoptOptions, adoptRows } from '../inventory/adopt-rows.ts';
import type { InventoryMapping } from '../inventory/inventory-mapping.ts';
import { readMeasure } from '../inventory/measure-text.ts';
import { type AdoptionSummary, adoptionFindings, adoptionSummary, rowReport } from '../inventory/row-report.ts';
import type { MeasuredPair } from '../inventory/spread-fit.ts';
import { Outage, systemCode } from './outage.ts';
import { readInventory } from './read-inventory.ts';
import { readProject } from './read-project.ts';
import { type TextFile, writeFiles } from './write-files.ts';

export interface AdoptInventoryOptions {
  /** For a project that does not exist yet. */
  readonly season: number;
  readonly units?: 'metric' | 'us';
}

export interface AdoptReport {
  /** Files written into the project's folder; empty when the inventory could not be read. */
  readonly files: readonly string[];
  readonly summary: AdoptionSummary;
  /** Measured pairs of trunk and spread, those of the project and those of the inventory. */
  readonly pairs: number;
  /** Own fits in use: by genus, `''` for all trees. */
  readonly fits: readonly {
    readonly genus: string;
    readonly form: string;
    readonly pairs: number;
    readonly looRmseM: number;
  }[];
  readonly findings: readonly Finding[];
}

/**
 * Takes an inventory into a project folder by a confirmed mapping: a new crowns layer with what the project had and what
 * was taken (older files stay as they are; none when no row was taken), a report row by row, and the mapping as used. Crowns that the project has
 * already are kept; their rows are told. A folder without `project.json` gets one. All files are written or none. Throws
 * a `RangeError` when the project is no folder, an `Outage` when the disk fails.
 */
export async function adoptInventory(
  path: string,
  project: string,
  mapping: InventoryMapping,
  options: AdoptInventoryOptions,
): Promise<AdoptReport> {
  if (/\.\w{1,8}$/.test(basename(project)))
    throw new RangeError(`expected a project folder to take it into, got ${project}`);
  const { layer, findings } = await readInventory(path, mapping);
  const existing = await existingProject(project);
  const stopped = layer === null || existing?.input.findings.some(isStopping) === true;
  const had = existing?.input.layers.crowns?.features ?? [];
  const adoption = adoptRows(
    stopped || layer === null ? [] : layer.features,
    mapping,
    adoptOptions(existing?.input, had),
  );
  const stem = stemOf(path);
  const told = adoptionFindings(adoption, { layer: 'crowns', file: basename(path) });
  const report = {
    summary: adoptionSummary(adoption),
    pairs: adoption.pairs,
    fits: fitsOf(adoption),
    findings: [...findings, ...(existing?.input.findings.filter(isStopping) ?? []), ...told],
  };
  if (stopped) return { ...report, files: [] };
  const crowns = freeName(existing?.text ?? '');
  const taken = adoption.rows.some(({ crown }) => crown !== undefined);
  const files: TextFile[] = [
    { name: `inventory-${stem}-rows.csv`, text: rowReport(adoption) },
    { name: mappingName(path), text: [jsonText(mapping)] },
  ];
  if (taken) {
    files.unshift({ name: crowns, text: writeGeoJson(allCrowns(had, adoption)) });
    files.push({ name: 'project.json', text: [projectText(existing, crowns, stem, options)] });
  }
  await writeFiles(project, files);
  return { ...report, files: files.map(({ name }) => name) };
}

/** The name under which an inventory's mapping lies in a project's folder. */
export function mappingName(path: string): string {
  return `inventory-${stemOf(path)}-mapping.json`;
}

function stemOf(path: string): string {
  return basename(path, extname(path)).replace(/[^\w.-]+/g, '-');
}

interface Existing {
  readonly input: ProjectInput;
  readonly text: string;
}

async function existingProject(project: string): Promise<Existing | null> {
  try {
    const text = await readFile(join(project, 'project.json'), 'utf8');
    return { input: await readProject(project), text };
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return null;
    throw error instanceof Outage ? error : new Outage('cannot read project.json', error);
  }
}

/** What is missing in the rest of a project that is only being made does not matter here; a crowns layer that cannot be read does. */
function isStopping({ severity, where }: Finding): boolean {
  return severity === 'error' && where.layer === 'crowns';
}

function adoptOptions(input: ProjectInput | undefined, had: readonly RawFeature[]): AdoptOptions {
  const spreadMaxM = input?.settings.spread_max_m;
  return {
    existingIds: new Set(
      had.flatMap(({ properties: { tree_id } }) => (tree_id === undefined ? [] : [String(tree_id)])),
    ),
    pairs: had.flatMap(pairIn),
    ...(typeof spreadMaxM === 'number' ? { spreadMaxM } : {}),
  };
}

/** A crown of the project whose trunk is known and whose spread was measured or drawn, not estimated. */
function pairIn({ properties, geometry }: RawFeature): MeasuredPair[] {
  const trunk = readMeasure(properties.trunk_cm);
  if (typeof trunk !== 'object' || properties.spread_from === 'estimated') return [];
  const [one, a, b] = [properties.spread_m, properties.spread_a_m, properties.spread_b_m].map(metresIn);
  const spreadM = geometry.kind === 'area' ? drawnSpread(geometry) : a !== null && b !== null ? (a + b) / 2 : one;
  const host = typeof properties.host === 'string' ? properties.host : null;
  return spreadM === null || !(spreadM > 0) ? [] : [{ trunkCm: trunk.value, spreadM, host }];
}

function metresIn(value: unknown): number | null {
  const read = readMeasure(value);
  return typeof read === 'object' ? read.value : null;
}

/** The diameter of the circle of equal area. */
function drawnSpread({ polygons }: Extract<LonLatGeometry, { kind: 'area' }>): number {
  const plane = equalAreaPlane(polygons.flat());
  const rings = polygons.map((polygon) => polygon.map((ring) => Math.abs(signedArea(plane.forward(ring)))));
  const area = rings.reduce((sum, [shell, ...holes]) => sum + shell - holes.reduce((all, hole) => all + hole, 0), 0);
  return 2 * Math.sqrt(area / Math.PI);
}

function* allCrowns(had: readonly RawFeature[], { rows }: Adoption) {
  yield* had;
  for (const { crown } of rows) if (crown) yield crown;
}

function fitsOf({ estimator }: Adoption): AdoptReport['fits'] {
  return [...estimator.fits].map(([genus, { form, pairs, looRmseM }]) => ({ genus, form, pairs, looRmseM }));
}

/** The first of crowns.geojson, crowns-2.geojson, … that the project does not name. */
function freeName(projectText: string): string {
  for (let n = 1; ; n++) {
    const name = n === 1 ? 'crowns.geojson' : `crowns-${n}.geojson`;
    if (!projectText.includes(`"${name}"`)) return name;
  }
}

function projectText(existing: Existing | null, crowns: string, stem: string, options: AdoptInventoryOptions): string {
  if (!existing) {
    const { season, units } = options;
    return jsonText({ title: stem, season, units: units ?? 'metric', layers: { crowns }, settings: {} });
  }
  const project = JSON.parse(existing.text) as { layers?: object };
  return jsonText({ ...project, layers: { ...project.layers, crowns } });
}

function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
