/**
 * What a reader hands over: the project's layers as raw features, positions already in longitude and latitude, fields
 * already renamed and converted by the project's mapping, values still unchecked. Readers live in the exchange package.
 */
import type { Finding, LonLatGeometry } from '@crownfall/geometry';
import type { Visit } from './visits/visit.ts';

export const LAYER_NAMES = [
  'crowns',
  'pavement',
  'blocks',
  'ratings',
  'quadrats',
  'complaints',
  'bloom',
  'water',
  'sites',
  'streets',
] as const;
export type LayerName = (typeof LAYER_NAMES)[number];

export interface RawFeature {
  /** Position in the file, from 1; for tables the spreadsheet row (header is row 1). */
  readonly row: number;
  readonly geometry: LonLatGeometry;
  readonly properties: Readonly<Record<string, unknown>>;
}

export interface RawLayer {
  readonly file: string;
  /** `features`: row is the position among features. `table`: row is the spreadsheet row. */
  readonly shape: 'features' | 'table';
  /** The coordinate system the file was in, as stated or assumed: `EPSG:2236`, `OGC:CRS84`. */
  readonly crs: string;
  readonly features: readonly RawFeature[];
}

export interface ProjectInput {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  readonly layers: Partial<Readonly<Record<LayerName, RawLayer>>>;
  readonly imagery: readonly string[];
  /** As written in project.json; `readSettings` checks it. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** Files that were read, for provenance. */
  readonly sources: readonly { readonly file: string; readonly sha256: string; readonly bytes: number }[];
  readonly findings: readonly Finding[];
  /** What was done and found in the field; its ratings, quadrats and bloom observations count beside the layers'. */
  readonly visits?: readonly Visit[];
}
