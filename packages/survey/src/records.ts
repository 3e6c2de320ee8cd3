/**
 * The records of a project as the rest of the program knows them: checked, in metres, with positions in longitude and
 * latitude. Dates are ISO `YYYY-MM-DD` text. Fields that a file carries beyond these stay in `extra` and pass through.
 */
import type { Coordinates, CrownShape, LonLat, LonLatGeometry } from '@crownfall/geometry';

export type Extra = Readonly<Record<string, unknown>>;

export interface Tree {
  readonly treeId: string;
  /** Where the trunk stands, as far as known: the point given, else the middle of the outline. */
  readonly at: LonLat;
  readonly crown: CrownShape;
  readonly host?: string;
  readonly cultivar?: string;
  readonly heightM?: number;
  readonly outlinedBy?: string;
  readonly outlinedOn?: string;
  readonly outlineSdM?: number;
  readonly extra: Extra;
}

export const PAVEMENT_KINDS = ['sidewalk', 'carriageway', 'parking', 'plaza', 'driveway', 'path', 'other'] as const;
export type PavementKind = (typeof PAVEMENT_KINDS)[number];
export const SURFACES = ['concrete', 'asphalt', 'pavers', 'other'] as const;
export type Surface = (typeof SURFACES)[number];
export const FOOT_TRAFFIC = ['low', 'medium', 'high'] as const;
export type FootTraffic = (typeof FOOT_TRAFFIC)[number];

export interface Pavement {
  readonly pavementId: string;
  readonly kind: PavementKind;
  readonly surface: Surface;
  readonly footTraffic?: FootTraffic;
  readonly shape: PavementShape;
  readonly extra: Extra;
}

export type PavementShape =
  | { readonly from: 'area'; readonly polygons: readonly (readonly Coordinates<'lonlat'>[])[] }
  /** A line with a width; `widthFrom` says whether it was measured or is the default of its kind. */
  | {
      readonly from: 'line';
      readonly lines: readonly Coordinates<'lonlat'>[];
      readonly widthM: number;
      readonly widthFrom: 'given' | 'default';
    };

export interface Block {
  readonly blockId: string;
  readonly name?: string;
  readonly polygons: readonly (readonly Coordinates<'lonlat'>[])[];
  readonly extra: Extra;
}

export const CAUSES = ['frass', 'honeydew', 'fruit', 'leaf_litter', 'none', 'unknown'] as const;
export type Cause = (typeof CAUSES)[number];
export const GALL_LOADS = ['none', 'light', 'moderate', 'heavy'] as const;
export type GallLoad = (typeof GALL_LOADS)[number];
export const CONFIDENCES = ['low', 'medium', 'high'] as const;
export type Confidence = (typeof CONFIDENCES)[number];

/** A share of the crown affected, as a point estimate inside an interval; shares 0–1. */
export interface SeverityInterval {
  readonly share: number;
  readonly lo: number;
  readonly hi: number;
  /** How it was recorded: a percentage, or the name of a class scale. */
  readonly scale: string;
}

export interface Rating {
  readonly treeId: string;
  readonly ratedOn: string;
  readonly rater: string;
  readonly browned?: SeverityInterval;
  readonly defoliated?: SeverityInterval;
  readonly gallLoad?: GallLoad;
  readonly cause: Cause;
  readonly evidence?: string;
  readonly confidence?: Confidence;
  readonly note?: string;
  /** The person who stands by a suggestion from imagery. */
  readonly confirmedBy?: string;
  readonly extra: Extra;
}

export interface Quadrat {
  readonly quadratId: string;
  readonly at: LonLat;
  /** The plot's own outline when it was drawn; else it is a point. */
  readonly polygons?: readonly (readonly Coordinates<'lonlat'>[])[];
  readonly areaM2: number;
  readonly stainedShare: number;
  readonly measuredOn: string;
  readonly by?: string;
  readonly extra: Extra;
}

export interface Complaint {
  readonly complaintId: string;
  readonly at: LonLat;
  readonly receivedOn?: string;
  readonly about: 'staining' | 'larvae' | 'litter' | 'other';
  readonly state: 'open' | 'closed';
  readonly extra: Extra;
}

export type YesNoUnknown = 'yes' | 'no' | 'unknown';

export interface BloomObservation {
  /** Exactly one of the two is present. */
  readonly treeId?: string;
  readonly blockId?: string;
  readonly observedOn: string;
  /** BBCH growth stage, 0–99; 60–69 is flowering. */
  readonly bbch: number;
  readonly larvaeInGalls: YesNoUnknown;
  readonly beesAtFlowers: YesNoUnknown;
  readonly extra: Extra;
}

export interface Site {
  readonly siteId: string;
  readonly kind: 'school' | 'clinic' | 'transit' | 'outdoor_dining' | 'other';
  readonly at: LonLat;
  readonly extra: Extra;
}

export interface WaterFeature {
  readonly kind: 'water' | 'drain' | 'well';
  readonly geometry: LonLatGeometry;
  readonly extra: Extra;
}

export interface Street {
  readonly name?: string;
  readonly lines: readonly Coordinates<'lonlat'>[];
  readonly extra: Extra;
}

/** All records of a project, checked. */
export interface Survey {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  readonly trees: readonly Tree[];
  readonly pavement: readonly Pavement[];
  /** Empty when the project has no block layer: blocks are then derived. */
  readonly blocks: readonly Block[];
  readonly ratings: readonly Rating[];
  readonly quadrats: readonly Quadrat[];
  readonly complaints: readonly Complaint[];
  readonly bloom: readonly BloomObservation[];
  readonly sites: readonly Site[];
  readonly water: readonly WaterFeature[];
  readonly streets: readonly Street[];
}
