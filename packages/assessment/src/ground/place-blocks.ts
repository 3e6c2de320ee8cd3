/** Blocks on the ground: the project's own, else faces of its street network, else square cells over its pavement. */
import {
  blocksFromStreets,
  type Finding,
  type LocalPlane,
  type Region,
  reckonOverlay,
  squareCells,
} from '@crownfall/geometry';
import { type Block, finding, type Settings, type Street } from '@crownfall/survey';
import { lonLatArea } from '../lonlat-area.ts';
import { boundsOf } from '../region-lookup.ts';
import { drawnArea } from './drawn-area.ts';
import type { BlockSource, GroundBlock } from './ground.ts';

export interface PlacedBlocks {
  readonly from: BlockSource;
  readonly blocks: readonly GroundBlock[];
  /** By block, in the plane. */
  readonly regions: readonly Region[];
  readonly findings: readonly Finding[];
}

/** The blocks to reckon by. Derived ones are numbered from south-west to north-east: `block-001`. */
export function placeBlocks(
  { blocks, streets }: { readonly blocks: readonly Block[]; readonly streets: readonly Street[] },
  pavement: readonly Region[],
  plane: LocalPlane,
  settings: Pick<Settings, 'block_cell_m' | 'block_min_m2' | 'block_min_share'>,
): PlacedBlocks {
  if (blocks.length > 0) return givenBlocks(blocks, plane);
  const findings: Finding[] = [];
  if (streets.length > 0) {
    const lines = streets.flatMap((street) => street.lines.map((line) => plane.forward(line)));
    const faces = blocksFromStreets(lines, { minAreaM2: settings.block_min_m2 });
    for (const finding of faces.findings) findings.push({ ...finding, where: { ...finding.where, layer: 'streets' } });
    const enclosed = shareInside(faces.blocks, pavement);
    if (enclosed >= settings.block_min_share) return { ...derived('streets', faces.blocks, plane), findings };
    if (faces.blocks.length > 0) findings.push(enclosesLittle(enclosed, settings.block_min_share));
  }
  return { ...derived('cells', cellsOver(pavement, settings.block_cell_m), plane), findings };
}

/** Share of the pavement that lies in any of the blocks; 0 without blocks, 1 without pavement. */
function shareInside(blocks: readonly Region[], pavement: readonly Region[]): number {
  if (blocks.length === 0) return 0;
  const { areaM2, block } = reckonOverlay({ zones: [], pieces: pavement, blocks });
  let inside = 0;
  let all = 0;
  for (let cell = 0; cell < areaM2.length; cell++) {
    all += areaM2[cell];
    if (block[cell] >= 0) inside += areaM2[cell];
  }
  return all > 0 ? inside / all : 1;
}

function enclosesLittle(enclosed: number, least: number): Finding {
  const facts = { enclosed_pct: Math.round(100 * enclosed), least_pct: Math.round(100 * least) };
  return finding('streets-enclose-little', 'note/assumed', { layer: 'streets' }, facts);
}

/** Blocks made of regions, numbered in the order given. */
export function derived(from: BlockSource, regions: readonly Region[], plane: LocalPlane): PlacedBlocks {
  const digits = Math.max(3, String(regions.length).length);
  const blocks = regions.map((region, i) => ({
    blockId: `block-${String(i + 1).padStart(digits, '0')}`,
    name: null,
    geometry: lonLatArea(region, plane.inverse),
    extra: {},
  }));
  return { from, blocks, regions, findings: [] };
}

function givenBlocks(given: readonly Block[], plane: LocalPlane): PlacedBlocks {
  const blocks: GroundBlock[] = [];
  const regions: Region[] = [];
  const findings: Finding[] = [];
  for (const { blockId, name, polygons, extra } of given) {
    const read = drawnArea(polygons, plane, { layer: 'blocks', feature: blockId });
    findings.push(...read.findings);
    if (read.region.length === 0) continue;
    regions.push(read.region);
    blocks.push({ blockId, name: name ?? null, geometry: read.geometry, extra });
  }
  return { from: 'given', blocks, regions, findings };
}

/** The cells of one grid that the boxes of the pavement's rings meet, row by row from the south-west. */
function cellsOver(pavement: readonly Region[], sideM: number): Region[] {
  const cells = new Map<string, { readonly row: number; readonly column: number; readonly cell: Region }>();
  for (const ring of pavement.flat()) {
    const [minX, minY, maxX, maxY] = boundsOf([ring]);
    for (const cell of squareCells({ minX, minY, maxX, maxY }, sideM)) {
      const [column, row] = [Math.round(cell[0][0] / sideM), Math.round(cell[0][1] / sideM)];
      cells.set(`${column} ${row}`, { row, column, cell });
    }
  }
  return [...cells.values()].sort((a, b) => a.row - b.row || a.column - b.column).map(({ cell }) => cell);
}
