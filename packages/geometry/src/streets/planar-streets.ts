/** Street lines as a planar network: cut where they meet, near ends joined, each piece once. */
import type { Finding, GeometryFindingCode } from '../finding.ts';
import { type NodedLines, nodedLines } from '../line/noding.ts';
import type { PlanarLines } from '../line/planar-faces.ts';
import { gapConnectors } from './street-gaps.ts';

/** Cells per metre: crossings are rounded to 1 mm. A power of two, so that the change of unit is exact. */
export const CELLS_PER_METRE = 2 ** 10;
/** (A) Street ends this near to another street count as joined to it, m. */
export const DEFAULT_GAP_M = 0.5;

export interface PlanarStreets {
  /** Coordinates in whole cells; dead ends kept. */
  readonly network: PlanarLines;
  readonly findings: readonly Finding<GeometryFindingCode>[];
  readonly gapsClosed: number;
}

/** @param lines flat lines `[x0, y0, …]`, metres; unusable ones are left out with a finding */
export function planarStreets(lines: readonly Float64Array[], gapM: number = DEFAULT_GAP_M): PlanarStreets {
  const { usable, findings } = usableLines(lines);
  const connectors = gapConnectors(usable, gapM * CELLS_PER_METRE);
  return {
    network: eachOnce(nodedLines(segmentsOf(usable, connectors))),
    findings,
    gapsClosed: connectors.length / 4,
  };
}

/** Lines in whole grid cells, without repeated points. */
function usableLines(lines: readonly Float64Array[]) {
  const usable: Float64Array[] = [];
  const findings: Finding<GeometryFindingCode>[] = [];
  lines.forEach((line, i) => {
    const where = { feature: `#${i + 1}` };
    if (!line.every(Number.isFinite)) {
      findings.push(leftOut('coordinates-not-finite', where, {}));
      return;
    }
    const onGrid = distinctCells(line);
    if (onGrid.length < 4) findings.push(leftOut('line-too-short', where, { got: onGrid.length / 2 }));
    else usable.push(onGrid);
  });
  return { usable, findings };
}

function distinctCells(line: Float64Array): Float64Array {
  const kept: number[] = [];
  for (let i = 0; i + 1 < line.length; i += 2) {
    const x = Math.round(line[i] * CELLS_PER_METRE);
    const y = Math.round(line[i + 1] * CELLS_PER_METRE);
    if (kept.length === 0 || x !== kept[kept.length - 2] || y !== kept[kept.length - 1]) kept.push(x, y);
  }
  return Float64Array.from(kept);
}

function segmentsOf(lines: readonly Float64Array[], connectors: Float64Array): Float64Array {
  const out: number[] = [];
  for (const line of lines) {
    for (let i = 0; i + 3 < line.length; i += 2) out.push(line[i], line[i + 1], line[i + 2], line[i + 3]);
  }
  const all = new Float64Array(out.length + connectors.length);
  all.set(out);
  all.set(connectors, out.length);
  return all;
}

function eachOnce(noded: NodedLines): PlanarLines {
  const keys = new Set<number>();
  const count = noded.x.length;
  noded.from.forEach((a, e) => {
    const b = noded.to[e];
    keys.add(Math.min(a, b) * count + Math.max(a, b));
  });
  const from = Int32Array.from(keys, (key) => Math.floor(key / count));
  const to = Int32Array.from(keys, (key) => key % count);
  return { x: noded.x, y: noded.y, from, to };
}

/** A warning that something of the streets does not count. */
export function leftOut(
  code: GeometryFindingCode,
  where: Finding['where'],
  facts: Finding['facts'],
): Finding<GeometryFindingCode> {
  return { code, severity: 'warning', effect: 'left_out', where, facts };
}
