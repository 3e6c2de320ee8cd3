/**
 * The pavement of the town, cut so that no two pieces share ground: sidewalks from drive to drive, drives, the streets
 * between junctions, the promenade, lots, plazas with their holes, park paths as lines with a width.
 */
import { chains, type TownBlock } from './blocks.ts';
import type { Drive, Grounds } from './grounds.ts';
import { type Point, parallel, type Side, strip } from './loop.ts';
import type { Ring } from './shapes.ts';
import { STREETS } from './streets.ts';

export interface PavementPiece {
  readonly id: string;
  readonly kind: 'sidewalk' | 'carriageway' | 'parking' | 'plaza' | 'driveway' | 'path';
  readonly surface: 'concrete' | 'asphalt' | 'pavers' | 'other';
  readonly footTraffic: 'low' | 'medium' | 'high';
  readonly street: string | null;
  readonly shell?: Ring;
  readonly holes?: readonly Ring[];
  readonly line?: readonly Point[];
  /** Of a line; null when nobody measured it. */
  readonly width?: number | null;
}

export function townPavement(built: readonly (readonly [TownBlock, Grounds])[]): readonly PavementPiece[] {
  const own = built.flatMap(([block, grounds]) => [
    ...block.loop.sides.flatMap((side) => sidePieces(block, side, grounds.drives)),
    ...groundPieces(block, grounds),
  ]);
  return [...own, ...carriageways(built.map(([block]) => block)), ...promenade(built.map(([block]) => block))];
}

/** Sidewalk and drives along one side; the corner belongs half to each side. */
function sidePieces(block: TownBlock, side: Side, drives: readonly Drive[]): readonly PavementPiece[] {
  const { loop, sidewalk, kerb } = block;
  const street = STREETS[side.street];
  const here = drives
    .filter((drive) => drive.from > side.from && drive.to < side.to)
    .toSorted((a, b) => a.from - b.from);
  const common = { footTraffic: street.footTraffic, street: street.name };
  const id = `${block.id}-${side.street}`;
  const stops = [side.from, ...here.flatMap((drive) => [drive.from, drive.to]), side.to];
  const walks = Array.from({ length: stops.length / 2 }, (_, i) => ({
    ...common,
    id: `${id}-W${i + 1}`,
    kind: 'sidewalk' as const,
    surface: street.footTraffic === 'high' ? ('pavers' as const) : ('concrete' as const),
    shell: strip(loop, [stops[2 * i], stops[2 * i + 1]], [0, sidewalk]),
  }));
  const crossings = here.map((drive, i) => ({
    ...common,
    id: `${id}-V${i + 1}`,
    kind: 'driveway' as const,
    surface: 'concrete' as const,
    shell: strip(loop, [drive.from, drive.to], [-drive.depth, kerb]),
  }));
  return [...walks, ...crossings];
}

function groundPieces(block: TownBlock, grounds: Grounds): readonly PavementPiece[] {
  const lots = grounds.lots.map((shell, i) => piece(`${block.id}-P${i + 1}`, 'parking', 'asphalt', { shell }));
  const plazas = grounds.plazas.map(({ shell, holes }, i) =>
    piece(`${block.id}-Z${i + 1}`, 'plaza', 'pavers', { shell, holes, footTraffic: 'high' }),
  );
  const paths = grounds.paths.map(({ line, width }, i) =>
    piece(`${block.id}-F${i + 1}`, 'path', 'other', { line, width }),
  );
  return [...lots, ...plazas, ...paths];
}

function piece(
  id: string,
  kind: PavementPiece['kind'],
  surface: PavementPiece['surface'],
  more: Partial<PavementPiece>,
): PavementPiece {
  return { id, kind, surface, footTraffic: 'medium', street: null, ...more };
}

interface Half {
  readonly id: string;
  readonly street: string;
  readonly kerbLine: readonly Point[];
  readonly middle: readonly Point[];
}

/** Half streets from kerb to middle line, two of them made one where they run from the same junction to the same. */
function carriageways(blocks: readonly TownBlock[]): readonly PavementPiece[] {
  const halves = blocks.flatMap(halvesOf);
  const byEnds = new Map<string, Half[]>();
  for (const half of halves) byEnds.set(endsOf(half.middle), [...(byEnds.get(endsOf(half.middle)) ?? []), half]);
  return [...byEnds.values()].map(([one, other]) =>
    other === undefined
      ? carriageway(one, [...one.kerbLine, ...one.middle.toReversed()])
      : carriageway(one, [...one.kerbLine, lastOf(one.middle), ...other.kerbLine, lastOf(other.middle)]),
  );
}

function lastOf(line: readonly Point[]): Point {
  return line[line.length - 1];
}

function carriageway(half: Half, ring: Ring): PavementPiece {
  const { name, footTraffic } = STREETS[half.street];
  // A street outside its kerb line runs clockwise round the block.
  return { ...piece(half.id, 'carriageway', 'asphalt', { shell: ring.toReversed() }), street: name, footTraffic };
}

function halvesOf(block: TownBlock): readonly Half[] {
  const middles = chains(block.roadFace);
  return block.loop.sides.map((side) => {
    const chain = middles.find((middle) => middle.street === side.street);
    if (chain === undefined) throw new Error(`${block.id} has no middle line along ${side.street}`);
    const kerbLine = parallel(block.loop, [side.from, side.to], block.kerb);
    return { id: `${block.id}-${side.street}-C`, street: side.street, kerbLine, middle: chain.points };
  });
}

function endsOf(middle: readonly Point[]): string {
  const ends = [middle[0], lastOf(middle)].map((p) => p.map((v) => v.toFixed(3)).join(' '));
  return ends.toSorted().join(' ');
}

function promenade(blocks: readonly TownBlock[]): readonly PavementPiece[] {
  return blocks.flatMap((block) => {
    const seawall = chains(block.face).find((chain) => chain.street === 'R0');
    const kerb = chains(block.roadFace).find((chain) => chain.street === 'R0');
    if (seawall === undefined || kerb === undefined) return [];
    const shell = [...seawall.points, ...kerb.points.toReversed()];
    return [
      {
        ...piece(`${block.id}-R0-M`, 'path', 'pavers', { shell }),
        street: STREETS.R0.name,
        footTraffic: 'high' as const,
      },
    ];
  });
}
