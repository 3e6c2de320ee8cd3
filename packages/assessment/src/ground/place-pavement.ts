/** Pavement on the ground: areas as drawn, lines with their widths. */
import { type Finding, type LocalPlane, type Region, widenLine } from '@crownfall/geometry';
import type { Pavement, Settings } from '@crownfall/survey';
import { lonLatArea } from '../lonlat-area.ts';
import { counted, type Progress } from '../progress.ts';
import { type DrawnArea, drawnArea, tidied } from './drawn-area.ts';
import type { GroundPavement } from './ground.ts';

export interface PlacedPavement {
  readonly pavement: readonly GroundPavement[];
  /** By piece, in the plane. */
  readonly regions: readonly Region[];
  readonly findings: readonly Finding[];
}

/** Regions of all pieces. One without a usable area is left out, with a finding. Lines end in half circles. */
export function placePavement(
  pieces: readonly Pavement[],
  plane: LocalPlane,
  settings: Pick<Settings, 'chord_tolerance_m'>,
  progress: Progress,
): PlacedPavement {
  const pavement: GroundPavement[] = [];
  const regions: Region[] = [];
  const findings: Finding[] = [];
  for (const [, piece] of counted('pavement', pieces, progress)) {
    const { shape } = piece;
    const where = { layer: 'pavement', feature: piece.pavementId };
    const read =
      shape.from === 'area'
        ? drawnArea(shape.polygons, plane, where)
        : widened(shape, plane, settings.chord_tolerance_m);
    findings.push(...read.findings);
    if (read.region.length === 0) continue;
    regions.push(read.region);
    pavement.push({ pavement: piece, geometry: read.geometry });
  }
  return { pavement, regions, findings };
}

function widened(
  { lines, widthM }: Extract<Pavement['shape'], { from: 'line' }>,
  plane: LocalPlane,
  chordToleranceM: number,
): DrawnArea {
  const region = tidied(lines.flatMap((line) => widenLine(plane.forward(line), widthM, { chordToleranceM })));
  return { region, geometry: lonLatArea(region, plane.inverse), findings: [] };
}
