/**
 * The outcome of the whole job: what the command line prints, the server serves and the files hold. All areas m²; ids as
 * in the project; geometry in longitude and latitude, rings open and oriented as RFC 7946 wants (shells counter-clockwise).
 */
import type { Finding, LonLat, LonLatGeometry } from '@crownfall/geometry';
import type { BloomState, ScorePart } from '@crownfall/priority';
import type { CrownFigures, PavementFigures, Ranged } from '@crownfall/stain';
import type { Cause, Extra, PavementKind, Settings, Surface } from '@crownfall/survey';

export interface BlockResult extends PavementFigures {
  readonly blockId: string;
  readonly name: string | null;
  /** 1 = first. Equal scores share no rank: the tie goes to the greater stained area, then to the id. */
  readonly rank: number;
  /** 0–1, the sum of the parts' points. */
  readonly score: number;
  readonly scoreParts: readonly ScorePart[];
  /** Share of the draws in which the block is among the first `top_n`; null without draws. */
  readonly topShare: number | null;
  readonly trees: number;
  readonly treesRated: number;
  /** null when no tree of the block has a severity. */
  readonly worstSeverityPct: number | null;
  readonly complaintsOpen: number;
  readonly bloomState: BloomState;
  readonly calibrated: boolean;
  readonly geometry: LonLatGeometry;
  readonly extra: Extra;
}

export interface TreeResult extends CrownFigures {
  readonly treeId: string;
  readonly host: string | null;
  /** The block in which the trunk stands; null outside every block. */
  readonly blockId: string | null;
  readonly at: LonLat;
  readonly crownM2: number;
  /** Diameter of the circle with the crown's area when no spread was measured. */
  readonly spreadM: number;
  readonly severityPct: number | null;
  readonly severityFrom: 'rating' | 'group' | 'none';
  readonly cause: Cause;
  readonly dose: number;
  readonly geometry: LonLatGeometry;
  readonly extra: Extra;
}

export interface PavementResult extends PavementFigures {
  readonly pavementId: string;
  readonly kind: PavementKind;
  readonly surface: Surface;
  /** The block that holds most of the piece; null outside every block. The ledger rows split it exactly. */
  readonly blockId: string | null;
  readonly geometry: LonLatGeometry;
  readonly extra: Extra;
}

/** One row of the block ledger: a block and a kind of pavement. `blockId` null gathers what lies in no block. */
export interface LedgerRow extends PavementFigures {
  readonly blockId: string | null;
  readonly kind: PavementKind;
}

/** Whose stain a block bears: a block and a tree with the stained area attributed to it there. Sums to the block's. */
export interface BlameRow {
  readonly blockId: string | null;
  readonly treeId: string;
  readonly stainedM2: Ranged;
}

export interface RunRecord {
  readonly settings: Settings;
  readonly asOf: string | null;
  readonly calibrated: boolean;
  readonly draws: number;
  readonly seed: number;
  /** proj4 definition of the equal-area plane that was used. */
  readonly plane: string;
  readonly counts: Readonly<Record<string, number>>;
}

export interface Assessment {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  /** In rank order. */
  readonly blocks: readonly BlockResult[];
  /** In the order of the crowns layer. */
  readonly trees: readonly TreeResult[];
  readonly pavement: readonly PavementResult[];
  /** By block in rank order, then by kind; the rows outside every block last. */
  readonly ledger: readonly LedgerRow[];
  /** By block in rank order, the greatest share first; only pairs with a stain. Rows outside every block last. */
  readonly blame: readonly BlameRow[];
  readonly total: PavementFigures;
  readonly findings: readonly Finding[];
  readonly run: RunRecord;
}
