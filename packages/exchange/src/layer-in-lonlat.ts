import { type CoordinateSystem, type Finding, isCrsFinding, type Place, resolveCrs } from '@crownfall/geometry';
import { finding, type RawFeature } from '@crownfall/survey';
import type { FindingSink } from './finding-sink.ts';
import { convertPositions, judgeLonLat } from './positions.ts';

/** The systems a file's coordinates may be in. */
export interface StatedCrs {
  /** What project.json says; it wins. */
  readonly byProject: string | undefined;
  /** What the file says. */
  readonly byFile: string | undefined;
  /** What the format says when nobody else does: GeoJSON is longitude and latitude (RFC 7946, section 4). */
  readonly byFormat: string | undefined;
}

/** Systems whose coordinates are longitude and latitude on WGS 84 already: not a digit of them is touched. */
const LONLAT = new Set(['OGC:CRS84', 'EPSG:4326']);

/** Whether a layer's system is longitude and latitude as they stand in the file. */
export function isLonLat(crs: string): boolean {
  return LONLAT.has(crs);
}

/**
 * Brings a layer's positions to longitude and latitude, in place, and returns the system they were in; `null` when they
 * cannot be placed (a finding tells why, and the layer must be left out).
 */
export function bringToLonLat(
  features: readonly RawFeature[],
  stated: StatedCrs,
  place: Place,
  findings: FindingSink,
): string | null {
  const system = systemOf(stated, place, findings);
  if (isCrsFinding(system)) return refuse(system, findings);
  if (!isLonLat(system.code)) {
    convertPositions(features, system.toLonLat);
    return system.code;
  }
  const judged = judgeLonLat(features, place);
  return judged ? refuse(judged, findings) : system.code;
}

/** The system that holds, with a finding where project and file differ; a finding instead when there is none to compute with. */
export function systemOf(stated: StatedCrs, place: Place, findings: FindingSink): ReturnType<typeof resolveCrs> {
  const { byProject, byFile, byFormat } = stated;
  const system = resolveCrs(byProject ?? byFile ?? byFormat, place);
  if (byProject === undefined || byFile === undefined || isCrsFinding(system)) return system;
  const inFile = resolveCrs(byFile, place);
  if (isCrsFinding(inFile) || !differ(system, inFile)) return system;
  const problem = `the project says ${system.code}, the file says ${inFile.code}; the project's word is taken`;
  const facts = { problem, expected: inFile.code, got: system.code };
  findings.add(finding('project-invalid', 'warning/assumed', place, facts));
  return system;
}

function differ(a: CoordinateSystem, b: CoordinateSystem): boolean {
  return a.code !== b.code && !(isLonLat(a.code) && isLonLat(b.code));
}

function refuse(reason: Finding, findings: FindingSink): null {
  findings.add(reason);
  return null;
}
