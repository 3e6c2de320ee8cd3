/** A project with its edits, kept reckoned. Runs in the worker; knows nothing of one. */
import {
  type Assessment,
  type Begun,
  type CrownPreview,
  LiveAssessment,
  type Progress,
  type Reckoned,
} from '@crownfall/assessment';
import { type FilePieces, layerText } from '@crownfall/exchange';
import type { Finding } from '@crownfall/geometry';
import {
  type PlanSettings,
  type PrioritySettings,
  type ProjectInput,
  type Rating,
  RatingBook,
  type RawFeature,
  type RawLayer,
  readSurvey,
  type Tree,
} from '@crownfall/survey';
import type { CrownRecord, RecordEdit, StoredAs, Weighing } from '../edits/edit.ts';
import { crownsWith, editedCrowns, ratingsWith, rawCrown } from '../edits/edited-layers.ts';
import { toGeoJson } from '../edits/record-geometry.ts';
import type { Bounds, Shown } from '../project/project.ts';
import { boundsOf } from './bounds.ts';
import { type Change, changeBetween } from './change.ts';
import { type EarlierSeason, earlierSeason } from './earlier-season.ts';
import { type Versions, versionKey } from './record-versions.ts';
import { driftFeatures, projectOf, resultFeatures } from './shown-features.ts';

/** Everything known of one tree, for the card beside the map. */
export interface TreeRecord {
  readonly treeId: string;
  readonly crown: CrownRecord;
  readonly ratings: readonly Rating[];
}

/** A record of the server's store as it is now; null: it is gone. */
export interface FollowedRecord {
  readonly layer: 'crowns' | 'ratings';
  readonly stored: StoredAs;
  readonly feature: RawFeature | null;
}

export class ProjectReckoner {
  #base: ProjectInput;
  readonly #live: LiveAssessment;
  readonly #priority: PrioritySettings;
  readonly #baseCrowns: Map<string, RawFeature>;
  readonly #ratings: RatingBook;
  readonly #versions: Map<string, number>;
  #assessment: Assessment;
  #bounds: Bounds | null;
  #edits: readonly RecordEdit[] = [];
  /** With weights and levels for previews; results keep the project's own, which the page ranks anew by itself. */
  #moved: PrioritySettings | null = null;

  constructor(input: ProjectInput, progress?: Progress, versions: Versions = new Map(), begun?: Begun) {
    this.#base = input;
    this.#versions = new Map(versions);
    this.#live = new LiveAssessment(input, progress, begun);
    this.#priority = this.#live.settings.priority;
    this.#ratings = new RatingBook(this.#live.settings);
    const names = crownNames(input);
    this.#baseCrowns = new Map((input.layers.crowns?.features ?? []).map((feature) => [names(feature), feature]));
    // Once for all, so that each later reading meets rows that it knows.
    this.#live.keepRatings(this.#readRatings([]));
    this.#assessment = this.#live.assessment();
    this.#bounds = boundsOf(this.#assessment);
  }

  /** Another object whenever records changed. */
  get assessment(): Assessment {
    return this.#assessment;
  }

  get stopping(): readonly Finding[] {
    return this.#live.stopping;
  }

  shown(): Shown {
    const features = resultFeatures(this.#assessment);
    const collection = (of: readonly GeoJSON.Feature[]): GeoJSON.FeatureCollection => ({
      type: 'FeatureCollection',
      features: [...of],
    });
    return {
      project: projectOf(this.#assessment, this.#bounds),
      layers: {
        blocks: collection(features.blocks),
        pavement: collection(features.pavement),
        trees: collection(features.trees),
        drift: collection(driftFeatures(this.#assessment, this.#assessment.trees)),
      },
    };
  }

  /** Makes these edits, and no others, the ones in force. */
  setEdits(edits: readonly RecordEdit[]): Change {
    const [was, now] = [editedCrowns(this.#edits), editedCrowns(edits)];
    const treeIds = [...new Set([...was.keys(), ...now.keys()])];
    const changed = treeIds.filter((treeId) => JSON.stringify(was.get(treeId)) !== JSON.stringify(now.get(treeId)));
    return this.#redone(edits, changed, ratingRows(edits) !== ratingRows(this.#edits));
  }

  /** Records that were written to the store, here or elsewhere, and the edits that are still to be written. */
  follow(records: readonly FollowedRecord[], edits: readonly RecordEdit[]): Change {
    const changed = new Set([...editedCrowns(this.#edits).keys(), ...editedCrowns(edits).keys()]);
    let ratings = ratingRows(edits) !== ratingRows(this.#edits);
    for (const record of records) {
      const key = versionKey(record.layer, record.stored.recordId);
      // News that is older than what is known here changes nothing.
      if ((this.#versions.get(key) ?? 0) >= record.stored.version) continue;
      this.#versions.set(key, record.stored.version);
      if (record.layer === 'ratings') ratings = true;
      else for (const treeId of this.#renamedCrowns(record)) changed.add(treeId);
      this.#base = { ...this.#base, layers: { ...this.#base.layers, [record.layer]: this.#layerWith(record) } };
    }
    return this.#redone(edits, [...changed], ratings);
  }

  weigh(weighing: Weighing): void {
    this.#moved = { ...this.#priority, ...weighing };
    this.#live.weigh(this.#moved);
  }

  /** Null when no earlier year was rated. */
  earlierSeason(): EarlierSeason | null {
    return earlierSeason(this.#input(this.#edits), this.#live.asOf);
  }

  /** The project as it is seen: with its edits, and ranked by the weights in force. */
  seen(): ProjectInput {
    const input = this.#input(this.#edits);
    const priority = this.#moved ?? this.#priority;
    return { ...input, settings: { ...input.settings, priority, plan: this.#live.settings.plan } };
  }

  /** What a plan is made from, under the plan's settings. */
  reckoned(plan: PlanSettings): Reckoned {
    this.#live.arrange(plan);
    return this.#live.reckoned();
  }

  preview(treeId: string, record: CrownRecord): CrownPreview | null {
    const tree = this.#readTree(treeId, rawCrown(record, 1));
    return tree ? this.#live.preview(tree) : null;
  }

  endPreview(): void {
    this.#live.endPreview();
  }

  tree(treeId: string): TreeRecord | null {
    const crown = this.#record(treeId);
    return crown ? { treeId, crown, ratings: this.#live.ratings(treeId) } : null;
  }

  /** The edited layer as text of a file: crowns as GeoJSON, ratings as delimited text. */
  async layerFile(layer: 'crowns' | 'ratings'): Promise<string> {
    const { crowns } = this.#input(this.#edits).layers;
    const raw = layer === 'crowns' ? crowns : ratingsWith(this.#base.layers.ratings, this.#edits);
    return raw ? textOf(layerText(layer, raw, layer === 'crowns' ? 'geojson' : 'csv').text) : '';
  }

  #redone(edits: readonly RecordEdit[], treeIds: readonly string[], ratings: boolean): Change {
    const before = this.#assessment;
    const crowns = editedCrowns(edits);
    const there = treeIds.map((treeId) => this.#live.tree(treeId) !== undefined);
    for (const treeId of treeIds) {
      const tree = this.#treeWith(treeId, crowns.get(treeId));
      if (tree) this.#live.keepTree(tree);
      else this.#live.dropTree(treeId);
    }
    // Ratings of a tree count while it is there.
    const cameOrWent = treeIds.some((treeId, i) => there[i] !== (this.#live.tree(treeId) !== undefined));
    if (ratings || cameOrWent) this.#live.keepRatings(this.#readRatings(edits));
    this.#edits = edits;
    this.#live.weigh(this.#priority);
    this.#assessment = this.#live.assessment();
    if (this.#moved) this.#live.weigh(this.#moved);
    const change = changeBetween(before, this.#assessment, this.#bounds);
    this.#bounds = change.project.bounds;
    return change;
  }

  /** Notes the crown of a record under its tree's name; answers the names it had and has. */
  #renamedCrowns({ stored, feature }: FollowedRecord): string[] {
    const had = [...this.#baseCrowns].filter(([, { row }]) => row === stored.recordId).map(([treeId]) => treeId);
    for (const treeId of had) this.#baseCrowns.delete(treeId);
    if (!feature) return had;
    const treeId = crownNames(this.#base)(feature);
    this.#baseCrowns.set(treeId, feature);
    return [...had, treeId];
  }

  #layerWith({ layer, stored, feature }: FollowedRecord): RawLayer {
    const shape = layer === 'ratings' ? 'table' : 'features';
    const base = this.#base.layers[layer] ?? { file: layer, shape, crs: 'OGC:CRS84', features: [] };
    const at = base.features.findIndex(({ row }) => row === stored.recordId);
    if (at >= 0) return { ...base, features: base.features.toSpliced(at, 1, ...(feature ? [feature] : [])) };
    return feature ? { ...base, features: [...base.features, feature] } : base;
  }

  #input(edits: readonly RecordEdit[]): ProjectInput {
    const { crowns, ratings } = this.#base.layers;
    const names = crownNames(this.#base);
    return {
      ...this.#base,
      layers: {
        ...this.#base.layers,
        ...(crowns && { crowns: crownsWith(crowns, edits, names) }),
        ratings: ratingsWith(ratings, edits),
      },
    };
  }

  #readRatings(edits: readonly RecordEdit[]): readonly Rating[] {
    const { layers, visits } = this.#base;
    const input = { layers: { ...layers, ratings: ratingsWith(layers.ratings, edits) }, ...(visits && { visits }) };
    return this.#ratings.read(input, { has: (treeId) => this.#live.tree(treeId) !== undefined });
  }

  /** The tree as edited, as it was at first, or null when it is gone. */
  #treeWith(treeId: string, record: CrownRecord | null | undefined): Tree | null {
    if (record) return this.#readTree(treeId, rawCrown(record, 1));
    const base = this.#baseCrowns.get(treeId);
    return record === undefined && base ? this.#readTree(treeId, base) : null;
  }

  #readTree(treeId: string, feature: RawFeature): Tree | null {
    const { crowns } = this.#base.layers;
    const layer = { shape: 'features' as const, crs: 'OGC:CRS84', file: 'crowns', ...crowns, features: [feature] };
    const [tree] = readSurvey({ ...this.#base, findings: [], visits: [], layers: { crowns: layer } }).survey.trees;
    return tree ? { ...tree, treeId } : null;
  }

  #record(treeId: string): CrownRecord | null {
    const edited = editedCrowns(this.#edits).get(treeId);
    if (edited !== undefined) return edited;
    const base = this.#baseCrowns.get(treeId);
    const geometry = base && toGeoJson(base.geometry);
    if (!geometry) return null;
    const version = this.#versions.get(versionKey('crowns', base.row));
    return {
      geometry: geometry as CrownRecord['geometry'],
      properties: { ...base.properties, tree_id: treeId },
      ...(version !== undefined && { stored: { recordId: base.row, version } }),
    };
  }
}

async function textOf(pieces: FilePieces): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const piece of pieces) text += typeof piece === 'string' ? piece : decoder.decode(piece, { stream: true });
  return text;
}

const ratingRows = (edits: readonly RecordEdit[]): string =>
  JSON.stringify(edits.map((edit) => (edit.kind === 'crown' ? null : edit)).filter((edit) => edit !== null));

/** Names crowns as the survey does: by tree_id, else by their geometry. */
function crownNames(input: ProjectInput): (feature: RawFeature) => string {
  const made = new Map<RawFeature, string>();
  return (feature) => {
    const id = feature.properties.tree_id;
    if (id !== undefined && id !== null && String(id).trim() !== '') return String(id).trim();
    const known = made.get(feature);
    if (known !== undefined) return known;
    const { crowns } = input.layers;
    const layers = crowns ? { crowns: { ...crowns, features: [feature] } } : {};
    const name = readSurvey({ ...input, layers }).survey.trees[0]?.treeId ?? '';
    made.set(feature, name);
    return name;
  };
}
