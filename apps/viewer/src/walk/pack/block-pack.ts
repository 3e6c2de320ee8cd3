/** What goes along for one block: enough to walk it without a network. */
import { equalAreaPlane, walkInGroups } from '@crownfall/geometry';
import type { Ranged } from '@crownfall/stain';
import { blockWalk } from '../../outline/block-walk.ts';
import type { BlockSummary, Layers, Project } from '../../project/project.ts';
import type { ProjectPlace } from '../../project/project-files.ts';
import { middleOf } from '../../session/middle-of.ts';
import { type Box, boxOf, meet } from './boxes.ts';
import type { PackSheets } from './pack-sheets.ts';

export interface BlockPack {
  readonly project: string;
  readonly blockId: string;
  readonly title: string;
  readonly units: 'metric' | 'us';
  /** When it was packed; an instant. */
  readonly packedAt: string;
  readonly figures: BlockFigures;
  /** In walking order. */
  readonly trees: readonly PackedTree[];
  /** Hosts of the whole project, most frequent first: what a new tree may be. */
  readonly hosts: readonly string[];
  readonly layers: Readonly<Record<'blocks' | 'pavement' | 'crowns' | 'water', GeoJSON.FeatureCollection>>;
  readonly bounds: Box;
}

type BlockFigures = Pick<BlockSummary, 'name' | 'rank' | 'trees' | 'treesRated' | 'bloomState' | 'complaintsOpen'> & {
  readonly stainedM2: Ranged;
  readonly pavementM2: number;
};

export interface PackedTree {
  readonly treeId: string;
  readonly at: readonly [lon: number, lat: number];
  readonly host: string | null;
  readonly spreadM: number | null;
  readonly severityPct: number | null;
  readonly cause: string | null;
  /** What was recorded last; fields as in the ratings layer. Null: never rated. */
  readonly lastRating: Fields | null;
  readonly lastBloom: Fields | null;
}

export type Fields = Readonly<Record<string, unknown>>;

/** Records of the project by layer; what a server of plain files does not give out is empty. */
export interface PackRecords {
  readonly ratings: readonly Fields[];
  readonly bloom: readonly Fields[];
  readonly water: GeoJSON.FeatureCollection;
}

/** A project as packs are made of it. */
export interface PackSource {
  /** Names the project on this device. */
  readonly key: string;
  readonly project: Project;
  readonly layers: Layers;
  readonly records: PackRecords;
  /** GeoTIFFs to lay under the map, the first on top; null without. */
  readonly imagery: { readonly place: ProjectPlace; readonly paths: readonly string[] } | null;
  readonly sheets: PackSheets;
  /** False: visits stay here until they are given out as a file. */
  readonly takesVisits: boolean;
  /** Under which name the server knows this person. */
  readonly asker: string;
}

/** A street's width and a crown beyond the block's own edge, in degrees of latitude. */
const MARGIN_DEG = 0.0003;

/** The pack of a block; null when the project has no such block. */
export function blockPack(
  blockId: string,
  { project, layers, records }: { project: Project; layers: Layers; records: PackRecords },
  about: Pick<BlockPack, 'project' | 'packedAt'>,
): BlockPack | null {
  const summary = project.blocks.find((each) => each.blockId === blockId);
  const outline = layers.blocks.features.find((each) => each.properties?.block_id === blockId);
  if (!summary) return null;
  const own = layers.trees.features.filter((tree) => tree.properties?.block_id === blockId);
  const bounds = widened(boxOf([...(outline ? [outline] : []), ...own]));
  const near = (from: GeoJSON.FeatureCollection): GeoJSON.FeatureCollection => ({
    type: 'FeatureCollection',
    features: from.features.filter((each) => meet(boxOf([each]), bounds)),
  });
  const { name, rank, trees, treesRated, bloomState, complaintsOpen, stainedM2, pavementM2 } = summary;
  return {
    ...about,
    blockId,
    title: project.title,
    units: project.units,
    figures: { name, rank, trees, treesRated, bloomState, complaintsOpen, stainedM2, pavementM2 },
    trees: blockWalk(own, outline).map((tree) => packedTree(tree, records)),
    hosts: hostsOf(layers.trees),
    layers: {
      blocks: near(layers.blocks),
      pavement: near(layers.pavement),
      crowns: near(layers.trees),
      water: near(records.water),
    },
    bounds,
  };
}

/** Bytes that packs take on the device and on the line, before compression. */
export const packBytes = (packs: readonly BlockPack[]): number =>
  new TextEncoder().encode(JSON.stringify(packs)).length;

/** Blocks in the order of a short walk over the day, from the first of the list. */
export function dayOrder(packs: readonly BlockPack[]): readonly BlockPack[] {
  if (packs.length < 3) return packs;
  const middles = packs.map(({ bounds: [west, south, east, north] }) => [(west + east) / 2, (south + north) / 2]);
  const plane = equalAreaPlane(middles.map((at) => Float64Array.from(at)));
  const places = middles.map((at, group) => {
    const [x, y] = plane.forward(Float64Array.from(at));
    return { x, y, group };
  });
  return walkInGroups(places, { from: places[0] }).map((i) => packs[i]);
}

function packedTree(tree: GeoJSON.Feature, { ratings, bloom }: PackRecords): PackedTree {
  const { tree_id, host, spread_m, severity_pct, severity_from, cause } = tree.properties as Fields;
  const treeId = String(tree_id);
  return {
    treeId,
    at: middleOf(tree) as [number, number],
    host: host == null ? null : String(host),
    spreadM: typeof spread_m === 'number' ? spread_m : null,
    severityPct: severity_from === 'rating' && typeof severity_pct === 'number' ? severity_pct : null,
    cause: cause == null ? null : String(cause),
    lastRating: newest(ratings, treeId, 'rated_on'),
    lastBloom: newest(bloom, treeId, 'observed_on'),
  };
}

function newest(rows: readonly Fields[], treeId: string, day: string): Fields | null {
  const own = rows.filter((row) => String(row.tree_id) === treeId);
  return own.reduce<Fields | null>((last, row) => (last && String(last[day]) > String(row[day]) ? last : row), null);
}

function hostsOf(trees: GeoJSON.FeatureCollection): readonly string[] {
  const counts = new Map<string, number>();
  for (const { properties } of trees.features) {
    const host = properties?.host;
    if (typeof host === 'string' && host !== '') counts.set(host, (counts.get(host) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([host]) => host);
}

const widened = ([west, south, east, north]: Box): Box => [
  west - MARGIN_DEG,
  south - MARGIN_DEG,
  east + MARGIN_DEG,
  north + MARGIN_DEG,
];
