/** Everything the walk shows, as plain data. */
import type { Visit } from '@crownfall/exchange';
import type { Preferences } from '../../state/app-state.ts';
import { loadPreferences } from '../../state/preferences.ts';
import type { Light } from '../look/walk-colours.ts';
import type { BlockPack, PackedTree, PackSource } from '../pack/block-pack.ts';
import type { Stop } from '../stop/stop.ts';
import type { QueuedPhoto, QueuedVisit } from '../sync/queue.ts';

export type Screen =
  | 'blocks'
  | 'cautions'
  | 'tree'
  | 'rate'
  | 'bloom'
  | 'quadrat'
  | 'problem'
  | 'new-tree'
  | 'queue'
  | 'settings';

export interface WalkState {
  readonly screen: Screen;
  readonly preferences: Preferences;
  readonly light: Light;
  readonly rater: string;
  readonly keepPosition: boolean;
  /** Where packs come from; null while it is looked for, `none` without a network. */
  readonly source: PackSource | 'none' | null;
  /** The project whose packs are on the device. */
  readonly project: string;
  readonly packs: readonly BlockPack[];
  readonly chosen: ReadonlySet<string>;
  /** Packing: how many pieces are done of how many. */
  readonly packing: readonly [done: number, all: number] | null;
  readonly blockId: string | null;
  readonly treeId: string | null;
  readonly stop: Stop | null;
  /** Begun and not saved. */
  readonly begun: readonly Stop[];
  readonly visits: readonly QueuedVisit[];
  readonly photos: readonly QueuedPhoto[];
  readonly sending: boolean;
  /** Why the last sending left something; empty when all went well. */
  readonly notSent: string;
  /** Visits of others to trees that were visited here too, since these blocks were packed. */
  readonly others: readonly Visit[];
  readonly seenOthers: ReadonlySet<string>;
  readonly position: Position | null;
  readonly positionRefused: boolean;
  readonly imageryShown: boolean;
  readonly largeMap: boolean;
  readonly notice: string;
  /** The stop that was saved last, for as long as it can be taken back. */
  readonly saved: Stop | null;
}

export interface Position {
  readonly at: readonly [lon: number, lat: number];
  readonly accuracyM: number;
}

export const firstState = (): WalkState => ({
  screen: 'blocks',
  preferences: loadPreferences(),
  light: 'sun',
  rater: '',
  keepPosition: false,
  source: null,
  project: '',
  packs: [],
  chosen: new Set(),
  packing: null,
  blockId: null,
  treeId: null,
  stop: null,
  begun: [],
  visits: [],
  photos: [],
  sending: false,
  notSent: '',
  others: [],
  seenOthers: new Set(),
  position: null,
  positionRefused: false,
  imageryShown: false,
  largeMap: false,
  notice: '',
  saved: null,
});

export const packOf = ({ packs, blockId }: WalkState): BlockPack | undefined =>
  packs.find((pack) => pack.blockId === blockId);

/** Trees of a block in walking order; those found new come last. */
export function treesOf(
  { begun, visits }: Pick<WalkState, 'begun' | 'visits'>,
  pack: BlockPack,
): readonly PackedTree[] {
  const made = new Map<string, PackedTree>();
  for (const { visit } of visits) {
    const tree = visit.details?.new_tree as Readonly<Record<string, unknown>> | undefined;
    if (!tree || visit.blockId !== pack.blockId) continue;
    const { lon, lat, host, spread_m } = tree;
    made.set(String(visit.treeId), newTree(String(visit.treeId), [Number(lon), Number(lat)], host, Number(spread_m)));
  }
  for (const { treeId, blockId, newTree: tree } of begun)
    if (tree && blockId === pack.blockId) made.set(treeId, newTree(treeId, tree.at, tree.host, tree.spreadM));
  return [...pack.trees, ...made.values()];
}

function newTree(treeId: string, at: PackedTree['at'], host: unknown, spreadM: number): PackedTree {
  const known = typeof host === 'string' && host !== '' ? host : null;
  return { treeId, at, host: known, spreadM, severityPct: null, cause: null, lastRating: null, lastBloom: null };
}

/** Trees that were visited in this walk. */
export const seenTrees = ({ visits }: Pick<WalkState, 'visits'>): ReadonlySet<string> =>
  new Set(visits.map(({ visit }) => String(visit.treeId)));

export const visitsWaiting = ({ visits }: Pick<WalkState, 'visits'>): number =>
  visits.filter(({ state }) => state === 'waiting').length;

export const photosWaiting = ({ photos }: Pick<WalkState, 'photos'>): number =>
  photos.filter(({ state }) => state === 'waiting').length;

/** Two versions that nobody has looked at yet. */
export function conflictsOpen({ visits, others, seenOthers }: WalkState): number {
  const differing = visits.filter(({ state }) => state === 'differs').length;
  return differing + others.filter(({ visitId }) => !seenOthers.has(visitId)).length;
}
