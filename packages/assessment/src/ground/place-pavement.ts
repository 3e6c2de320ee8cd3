/** Pavement on the ground: areas as drawn, lines with their widths. */
import { type Finding, type LocalPlane, type Region, widenLine } from '@crownfall/geometry';
import type { Pavement, Settings } from '@crownfall/survey';
import { lonLatArea, orientedArea } from '../lonlat-area.ts';
import { counted, type Progress } from '../progress.ts';
import { drawnRegion, tidied } from './drawn-region.ts';
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
        ? drawnRegion(shape.polygons, plane, where)
        : widened(shape, plane, settings.chord_tolerance_m);
    findings.push(...read.findings);
    if (read.region.length === 0) continue;
    regions.push(read.region);
    const geometry = shape.from === 'area' ? orientedArea(shape.polygons) : lonLatArea(read.region, plane.inverse);
    pavement.push({ pavement: piece, geometry });
  }
  return { pavement, regions, findings };
}

function widened(
  { lines, widthM }: Extract<Pavement['shape'], { from: 'line' }>,
  plane: LocalPlane,
  chordToleranceM: number,
): { region: Region; findings: readonly Finding[] } {
  const region = lines.flatMap((line) => widenLine(plane.forward(line), widthM, { chordToleranceM }));
  return { region: tidied(region), findings: [] };
}
