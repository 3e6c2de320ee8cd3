/**
 * Some hundred seeded edits of a small invented town, each step against a full assessment of the edited records: what is kept from
 * before must never show. What the screen was told, change by change, must be what it would be told at once.
 */
import { type Assessment, assess, isStopped } from '@crownfall/assessment';
import type { LonLatGeometry } from '@crownfall/geometry';
import type { ProjectInput, RawFeature, RawLayer } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import type { CrownRecord, RecordEdit } from '../edits/edit.ts';
import { crownsWith, ratingsWith } from '../edits/edited-layers.ts';
import { FEATURE_ID, LAYERS, type Shown } from '../project/project.ts';
import type { Session } from '../session/session.ts';
import { showChange } from '../session/shown-change.ts';
import { type FollowedRecord, ProjectReckoner } from './project-reckoner.ts';

const STEPS = 100;
/** Rounding of sums in another order, relative above 1. */
const SAME = 1e-9;
/** Columns of features carry six decimals; a figure halfway between two may be rounded either way. */
const ROUNDED = 1.5e-6;
const METRES_PER_DEGREE = 111_195;
const HOSTS = ['Terminalia buceras', 'Invented host', undefined];
/** Beside days of ISO form: one that proves the order of its column, one that rests on the proof, one of another season. */
const OTHER_DAYS = ['19/5/2026', '3/6/2026', '3/6/2026', '2025-08-01'];

describe('what is kept between edits', () => {
  test.each([
    { seed: 11, withBlocks: true },
    { seed: 12, withBlocks: false },
  ])('random edits equal a full assessment: %o', ({ seed, withBlocks }) => {
    const town = new EditedTown(seed, withBlocks);
    for (let step = 1; step <= STEPS; step++) {
      town.step();
      if (step % 4 === 0) town.check(`step ${step}`);
    }
  });

  test('live feed: records followed from the store equal a full assessment', () => {
    const town = new EditedTown(13, true);
    for (let step = 1; step <= STEPS / 2; step++) {
      town.follow();
      if (step % 3 === 0) town.check(`record ${step}`);
    }
  });
});

/** A town that is edited by chance: through the reckoner, and by hand in its records. */
class EditedTown {
  readonly #next: () => number;
  readonly #reckoner: ProjectReckoner;
  #input: ProjectInput;
  #edits: RecordEdit[] = [];
  #undone: RecordEdit[] = [];
  #shown: Shown;
  #version = 1;
  #made = 0;

  constructor(seed: number, withBlocks: boolean) {
    this.#next = random(seed);
    this.#input = this.#town(withBlocks);
    this.#reckoner = new ProjectReckoner(this.#input);
    this.#shown = this.#reckoner.shown();
  }

  step(): void {
    const chance = this.#next();
    if (chance < 0.2) this.#do(this.#crownEdit());
    else if (chance < 0.25) this.#do(this.#crownEdit(), this.#ratingEdit());
    else if (chance < 0.45) this.#do(this.#ratingEdit());
    else if (chance < 0.57) this.#undo();
    else if (chance < 0.62) this.#redo();
    else if (chance < 0.87) this.follow();
    else this.#preview();
  }

  /** A record of the store comes, changes or goes; now and then word of an older state of it arrives late. */
  follow(): void {
    if (this.#next() < 0.5) this.#followCrown();
    else this.#followRating();
  }

  check(when: string): void {
    const layers = { ...this.#input.layers };
    if (layers.crowns)
      layers.crowns = crownsWith(layers.crowns, this.#edits, ({ properties }) => `${properties.tree_id}`);
    layers.ratings = ratingsWith(layers.ratings, this.#edits);
    const input = { ...this.#input, layers };
    const full = assess(input);
    if (isStopped(full)) throw new Error('the town does not stop');
    const differs: string[] = [];
    compare(figuresOf(this.#reckoner.assessment), figuresOf(full), SAME, when, differs);
    compare(columnsOf(this.#shown), columnsOf(new ProjectReckoner(input).shown()), ROUNDED, `shown, ${when}`, differs);
    expect(differs.slice(0, 5)).toEqual([]);
  }

  #do(...edits: RecordEdit[]): void {
    this.#undone = [];
    this.#edits = [...this.#edits, ...edits];
    this.#tell();
  }

  #undo(): void {
    const last = this.#edits.at(-1);
    if (!last) return;
    this.#undone = [last, ...this.#undone];
    this.#edits = this.#edits.slice(0, -1);
    this.#tell();
  }

  #redo(): void {
    const [first, ...rest] = this.#undone;
    if (!first) return;
    this.#undone = rest;
    this.#edits = [...this.#edits, first];
    this.#tell();
  }

  #tell(): void {
    this.#show(this.#reckoner.setEdits(this.#edits));
  }

  /** As the page does. */
  #show(change: ReturnType<ProjectReckoner['setEdits']>): void {
    const store = {
      change: (next: (state: Shown) => Partial<Shown>) => {
        this.#shown = { ...this.#shown, ...next(this.#shown) };
      },
    };
    showChange({ store } as unknown as Session, structuredClone(change));
  }

  #preview(): void {
    const treeId = this.#treeId();
    const record = this.#reckoner.tree(treeId)?.crown;
    if (!record) return;
    this.#reckoner.preview(treeId, this.#moved(record));
    if (this.#next() < 0.5) this.#reckoner.endPreview();
  }

  #crownEdit(): RecordEdit {
    const treeId = this.#next() < 0.2 ? `N${++this.#made}` : this.#treeId();
    const before = this.#reckoner.tree(treeId)?.crown ?? null;
    const after = before && this.#next() < 0.25 ? null : before ? this.#moved(before) : this.#crown(treeId);
    return { kind: 'crown', treeId, before, after };
  }

  #ratingEdit(): RecordEdit {
    const rows = this.#input.layers.ratings?.features ?? [];
    if (this.#next() < 0.15 && rows.length > 0) return { kind: 'rating-gone', recordId: this.#oneOf(rows).row };
    const treeId = this.#treeId();
    return { kind: 'rating', treeId, after: this.#rating(treeId) };
  }

  #followCrown(): void {
    const rows = this.#input.layers.crowns?.features ?? [];
    const known = this.#next() < 0.7 ? this.#oneOf(rows) : undefined;
    const treeId = known ? `${known.properties.tree_id}` : `S${++this.#made}`;
    const row = known?.row ?? 1000 + ++this.#made;
    const crown = this.#crown(treeId);
    const feature = { row, geometry: fromRecord(crown), properties: crown.properties };
    this.#follow('crowns', row, known && this.#next() < 0.3 ? null : feature);
  }

  #followRating(): void {
    const rows = this.#input.layers.ratings?.features ?? [];
    const known = this.#next() < 0.6 ? this.#oneOf(rows) : undefined;
    const row = known?.row ?? 1000 + ++this.#made;
    const feature = { row, geometry: { kind: 'none' as const }, properties: this.#rating(this.#treeId()) };
    this.#follow('ratings', row, known && this.#next() < 0.3 ? null : feature);
  }

  #follow(layer: FollowedRecord['layer'], row: number, feature: RawFeature | null): void {
    const { layers } = this.#input;
    const { features, ...rest } = layers[layer] as RawLayer;
    const at = features.findIndex((each) => each.row === row);
    const now = features.toSpliced(at < 0 ? features.length : at, at < 0 ? 0 : 1, ...(feature ? [feature] : []));
    this.#input = { ...this.#input, layers: { ...layers, [layer]: { ...rest, features: now } } };
    const stored = { recordId: row, version: ++this.#version };
    const late = { layer, stored: { ...stored, version: stored.version - 1 }, feature: null };
    const news = this.#next() < 0.2 ? [{ layer, stored, feature }, late] : [{ layer, stored, feature }];
    this.#show(this.#reckoner.follow(news, this.#edits));
  }

  #treeId(): string {
    const known = this.#reckoner.assessment.trees;
    return this.#next() < 0.1 ? 'T3' : this.#oneOf(known).treeId;
  }

  #moved({ geometry, properties, ...rest }: CrownRecord): CrownRecord {
    const [dLon, dLat] = [this.#metres(-4, 4), this.#metres(-4, 4)];
    const shift = ([lon, lat]: GeoJSON.Position) => [lon + dLon, lat + dLat];
    const moved =
      geometry.type === 'Polygon'
        ? { ...geometry, coordinates: geometry.coordinates.map((ring) => ring.map(shift)) }
        : geometry;
    const host = this.#next() < 0.2 ? this.#oneOf(HOSTS) : properties.host;
    return { ...rest, geometry: moved, properties: { ...properties, host } };
  }

  #crown(treeId: string): CrownRecord {
    const [x, y, radius] = [this.#metres(0, 90), this.#metres(0, 60), this.#metres(1, 5)];
    const ring = Array.from({ length: 9 }, (_, i) => {
      const angle = (2 * Math.PI * (i % 9)) / 9;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    const host = this.#oneOf(HOSTS);
    const properties = { tree_id: treeId, ...(host !== undefined && { host }) };
    return { geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] }, properties };
  }

  #rating(tree_id: string): Record<string, string | number> {
    const day = `2026-05-${Math.floor(10 + 20 * this.#next())}`;
    const rated_on = this.#next() < 0.25 ? this.#oneOf(OTHER_DAYS) : day;
    const cause = this.#next() < 0.7 ? 'frass' : 'none';
    const rater = this.#next() < 0.5 ? 'AB' : 'CD';
    return { tree_id, rated_on, rater, browned_pct: Math.floor(100 * this.#next()), cause, gall_load: 'moderate' };
  }

  #oneOf<T>(list: readonly T[]): T {
    return list[Math.floor(this.#next() * list.length)];
  }

  #metres(least: number, most: number): number {
    return (least + (most - least) * this.#next()) / METRES_PER_DEGREE;
  }

  /** 90 m by 60 m: sidewalks and a carriageway, six blocks or none, thirty crowns, half of them rated. */
  #town(withBlocks: boolean): ProjectInput {
    const crowns = Array.from({ length: 30 }, (_, i) => this.#crown(`T${i}`));
    const pavement = Array.from({ length: 6 }, (_, i) => {
      const kind = i % 3 === 2 ? 'carriageway' : 'sidewalk';
      return feature(i + 1, box(0, 10 * i, 90, i % 3 === 2 ? 7 : 2.5), {
        pavement_id: `P${i}`,
        kind,
        foot_traffic: 'high',
      });
    });
    const blocks = Array.from({ length: 6 }, (_, i) =>
      feature(i + 1, box(30 * (i % 3), 30 * Math.floor(i / 3), 30, 30), { block_id: `B${i}` }),
    );
    const ratings = Array.from({ length: 15 }, (_, i) =>
      feature(i + 2, { kind: 'none' }, this.#rating(`T${Math.floor(30 * this.#next())}`)),
    );
    const at = (x: number, y: number): LonLatGeometry => ({
      kind: 'point',
      points: Float64Array.of(x / METRES_PER_DEGREE, y / METRES_PER_DEGREE),
    });
    const layers = {
      crowns: layer(crowns.map((crown, i) => feature(i + 1, fromRecord(crown), crown.properties))),
      pavement: layer(pavement),
      ...(withBlocks && { blocks: layer(blocks) }),
      ratings: { ...layer(ratings), shape: 'table' as const },
      sites: layer([feature(1, at(30, 20), { site_id: 'S1', kind: 'school' })]),
      complaints: layer([
        feature(1, at(50, 30), { complaint_id: 'C1', about: 'staining', state: 'open', received_on: '2026-04-01' }),
      ]),
    };
    const rest = {
      imagery: [],
      settings: { priority: { site_distance_m: 12 } },
      sources: [],
      findings: [],
      visits: [],
    };
    return { title: 'Invented', season: 2026, units: 'metric', layers, ...rest };
  }
}

function layer(features: readonly RawFeature[]): RawLayer {
  return { file: 'invented', shape: 'features', crs: 'OGC:CRS84', features };
}

function feature(row: number, geometry: LonLatGeometry, properties: RawFeature['properties']): RawFeature {
  return { row, geometry, properties };
}

function box(x: number, y: number, width: number, height: number): LonLatGeometry {
  const ring = [x, y, x + width, y, x + width, y + height, x, y + height];
  return { kind: 'area', polygons: [[Float64Array.from(ring, (metres) => metres / METRES_PER_DEGREE)]] };
}

function fromRecord({ geometry }: CrownRecord): LonLatGeometry {
  if (geometry.type !== 'Polygon') throw new Error('crowns of this town are polygons');
  const rings = geometry.coordinates.map((ring) => Float64Array.from(ring.slice(0, -1).flat()));
  return { kind: 'area', polygons: [rings] };
}

/** Everything but findings and what was read; trees and blame by name, for new crowns may come in another order. */
function figuresOf({ blocks, trees, pavement, ledger, blame, total, run }: Assessment) {
  const byTree = Object.fromEntries(trees.map(({ geometry, extra, ...tree }) => [tree.treeId, tree]));
  const byPair = Object.fromEntries(blame.map((row) => [`${row.blockId} ${row.treeId}`, row.stainedM2.value]));
  return {
    blocks: blocks.map(({ geometry, extra, ...block }) => block),
    trees: byTree,
    pavement: pavement.map(({ geometry, extra, ...piece }) => piece),
    ledger,
    blame: byPair,
    total,
    asOf: run.asOf,
    rated: run.counts.trees_severity_from_rating,
  };
}

/** The columns of all features, by id, and what is known of the whole. */
function columnsOf({ layers, project }: Shown) {
  const columns = LAYERS.map((name) => {
    const features = layers[name].features.map(({ properties, geometry }) => [
      properties?.[FEATURE_ID[name]],
      name === 'drift' ? null : { ...properties, shape: geometry },
    ]);
    return [name, Object.fromEntries(features)];
  });
  const { run, findings, ...rest } = project;
  return { ...Object.fromEntries(columns), project: rest };
}

/** Notes where two plain values differ by more than numbers may. */
function compare(got: unknown, want: unknown, tolerance: number, where: string, differs: string[]): void {
  if (typeof got === 'number' && typeof want === 'number') {
    if (!(Math.abs(got - want) <= tolerance * Math.max(1, Math.abs(want))))
      differs.push(`${where}: ${got}, not ${want}`);
    return;
  }
  if (typeof got !== 'object' || typeof want !== 'object' || got === null || want === null) {
    if (got !== want) differs.push(`${where}: ${JSON.stringify(got)}, not ${JSON.stringify(want)}`);
    return;
  }
  for (const key of new Set([...Object.keys(got), ...Object.keys(want)])) {
    const [a, b] = [got, want].map((each) => (each as Record<string, unknown>)[key]);
    compare(a, b, tolerance, `${where} › ${key}`, differs);
  }
}

/** Mulberry32. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
