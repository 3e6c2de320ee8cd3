/** Everything the screen shows, as plain data. What follows from it is in `derived-state.ts`. */
import type { BlockWater, CrownPreview } from '@crownfall/assessment';
import type { Finding } from '@crownfall/geometry';
import type { PaperName } from '@crownfall/sheets';
import type { PlanSettings } from '@crownfall/survey';
import type { Weighing } from '../edits/edit.ts';
import { type History, NO_HISTORY } from '../edits/history.ts';
import type { Outbox } from '../edits/outbox.ts';
import type { Units } from '../language/quantities.ts';
import type { SuggestedShare } from '../map/crown-suggester.ts';
import type { OpenedImagery } from '../map/imagery-tiles.ts';
import type { RatingDraft } from '../outline/rating-draft.ts';
import type { Sketch } from '../outline/sketch.ts';
import type { Layers, Project } from '../project/project.ts';
import type { ProjectPlace } from '../project/project-files.ts';
import type { Conflict, StoreHead } from '../project/store-api.ts';
import type { EarlierSeason } from '../reckoning/earlier-season.ts';
import type { GivenFiles } from '../reckoning/plan-files.ts';
import type { PlanOutcome } from '../reckoning/plan-maker.ts';
import type { TreeRecord } from '../reckoning/project-reckoner.ts';

export type Bench = 'weigh' | 'outline' | 'plan';
export type ThemeChoice = 'system' | 'light' | 'dark';
export type Language = 'en' | 'es';

export interface Preferences {
  readonly language: Language;
  /** Null: as the project says. */
  readonly units: Units | null;
  readonly theme: ThemeChoice;
  readonly tourSeen: boolean;
  /** Address of the user's own background tiles with {z}, {x} and {y}; empty: none, and no other machine is asked. */
  readonly background: string;
}

export interface Filters {
  readonly kind: string | null;
  readonly host: string | null;
  readonly bloom: string | null;
}

/** The season's plan: asked for, made, or why there is none. */
type Planning =
  | { readonly state: 'none' }
  /** What was made last is still shown. */
  | { readonly state: 'soon'; readonly last: PlanOutcome | null }
  | { readonly state: 'made'; readonly outcome: PlanOutcome }
  | { readonly state: 'failed'; readonly why: string };

/** Longitude, latitude, zoom. */
export type MapView = readonly [lon: number, lat: number, zoom: number];

export interface ImageryLook {
  readonly shown: boolean;
  readonly opacity: number;
  /** −1 to 1. */
  readonly brightness: number;
}

/** Whether records can be changed here: the project's own files must be at hand and agree with the figures shown. */
type Editing =
  | { readonly can: 'soon'; readonly stage: string; readonly share: number }
  | { readonly can: 'yes' }
  | { readonly can: 'no'; readonly why: 'no-files' | 'other-figures' | 'failed'; readonly detail: string };

/** The browned share that the picture suggests for a tree. */
export type ShareSuggestion =
  | { readonly treeId: string; readonly state: 'looking'; readonly share: number }
  | { readonly treeId: string; readonly state: 'made'; readonly found: SuggestedShare; readonly image: string }
  | { readonly treeId: string; readonly state: 'failed'; readonly why: string };

/** Edits go to the server's store, and those of others come from it. */
export interface Sharing {
  readonly outbox: Outbox;
  /** Whether the server answers. */
  readonly reached: boolean;
  readonly conflicts: readonly Conflict[];
  readonly asker: StoreHead['asker'];
}

export interface AppState {
  readonly status: 'opening' | 'ready' | 'failed' | 'stopped';
  readonly failure: string;
  readonly stopping: readonly Finding[];
  readonly projectKey: string;
  readonly project: Project | null;
  readonly layers: Layers | null;
  readonly imagery: readonly string[];
  readonly imageryPlace: ProjectPlace | null;
  readonly editing: Editing;
  readonly history: History;
  /** Null: edits stay in this browser. */
  readonly sharing: Sharing | null;
  readonly preferences: Preferences;
  readonly bench: Bench;
  readonly blockId: string | null;
  readonly treeId: string | null;
  readonly tree: TreeRecord | null;
  readonly filters: Filters;
  /** While a slider is held: not yet an edit. */
  readonly weighingDraft: Weighing | null;
  readonly sketch: Sketch | null;
  readonly preview: CrownPreview | null;
  readonly ratingDraft: RatingDraft | null;
  readonly suggestion: ShareSuggestion | null;
  /** Null: as the project's settings say. */
  readonly planSettings: PlanSettings | null;
  /** Given on this page instead of those beside the project. */
  readonly planFiles: GivenFiles;
  readonly planning: Planning;
  /** What lies about the chosen block, while a season is planned. */
  readonly blockWater: BlockWater | null;
  /** Blocks of the day's visits, as they were chosen. */
  readonly day: readonly string[];
  /** Null: as the units say. */
  readonly paper: PaperName | null;
  /** Null: not reckoned yet. It holds for the figures in `seasonOf`. */
  readonly earlierSeason: EarlierSeason | 'none' | null;
  readonly seasonOf: Project | null;
  /** Whether its map is shown beside this season's. */
  readonly split: boolean;
  readonly imageryLook: ImageryLook;
  /** Null until its head was read. */
  readonly openedImagery: OpenedImagery | null;
  /** The server's background tiles; null: none. */
  readonly servedBackground: string | null;
  readonly mapView: MapView | null;
  /** A sentence for everyone, screen readers too; emptied by the next. */
  readonly notice: string;
}

export const FIRST_STATE: AppState = {
  status: 'opening',
  failure: '',
  stopping: [],
  projectKey: '',
  project: null,
  layers: null,
  imagery: [],
  imageryPlace: null,
  editing: { can: 'soon', stage: 'reading', share: 0 },
  history: NO_HISTORY,
  sharing: null,
  preferences: { language: 'en', units: null, theme: 'system', tourSeen: false, background: '' },
  bench: 'weigh',
  blockId: null,
  treeId: null,
  tree: null,
  filters: { kind: null, host: null, bloom: null },
  weighingDraft: null,
  sketch: null,
  preview: null,
  ratingDraft: null,
  suggestion: null,
  planSettings: null,
  planFiles: { temperatures: null, addresses: null },
  planning: { state: 'none' },
  blockWater: null,
  day: [],
  paper: null,
  earlierSeason: null,
  seasonOf: null,
  split: false,
  imageryLook: { shown: false, opacity: 1, brightness: 0 },
  openedImagery: null,
  servedBackground: null,
  mapView: null,
  notice: '',
};
