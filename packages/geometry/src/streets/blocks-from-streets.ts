/**
 * Blocks as the faces of a street network.
 */
import type { Finding, GeometryFindingCode } from '../finding.ts';
import { enclosingFaces } from '../line/face-nesting.ts';
import { type Cycles, cyclesOf, type PlanarLines, simpleRings, withoutDeadEnds } from '../line/planar-faces.ts';
import { regionArea, regionCentroid } from '../outline/region-measures.ts';
import type { Region, Ring } from '../ring.ts';
import { CELLS_PER_METRE, DEFAULT_GAP_M, leftOut, planarStreets } from './planar-streets.ts';

export interface BlockOptions {
  /** Smaller faces (medians, traffic islands, slip lanes) are not blocks, m². */
  readonly minAreaM2: number;
  /** Street ends this near to another street count as joined to it, m. (A) 0.5. */
  readonly gapM?: number;
}

export interface BlocksFromStreets {
  /** From south-west to north-east, by centroid. */
  readonly blocks: readonly Region[];
  readonly findings: readonly Finding<GeometryFindingCode>[];
  readonly network: StreetNetwork;
}

/** What the blocks were cut from, dead ends removed. `nodes − edges + faces + 1 = 1 + parts` (Euler). */
export interface StreetNetwork {
  readonly nodes: number;
  readonly edges: number;
  /** Bounded faces, those too small to be blocks included. */
  readonly faces: number;
  readonly parts: number;
  readonly gapsClosed: number;
  readonly facesTooSmall: number;
  /** Area of all bounded faces, m². */
  readonly facesM2: number;
  /** Area inside the network's outer borders, m²: equals `facesM2`. */
  readonly enclosedM2: number;
}

/**
 * The bounded faces of the street network, at least `minAreaM2` large, with holes where other streets lie inside a face
 * without reaching its border.
 *
 * Streets are cut at crossings, T-junctions and overlaps (all crossings are junctions: an overpass cuts too), ends that miss
 * another street by up to `gapM` are joined to it, dead ends and bridges between loops are dropped. Vertices lie on a grid of
 * 1 mm. The blocks do not depend on the order or direction of the lines.
 *
 * Lines with fewer than two distinct points are left out with `line-too-short`, lines with coordinates that are not finite
 * with `coordinates-not-finite`; without any face the finding `streets-enclose-nothing` comes and {@link squareCells} can
 * serve instead.
 *
 * @param lines flat lines `[x0, y0, …]`, metres
 * @throws RangeError for an area or a gap that is negative or NaN
 * @example blocksFromStreets([Float64Array.of(0, 0, 90, 0, 90, 60, 0, 60, 0, 0)], { minAreaM2: 200 }).blocks // one, 5400 m²
 */
export function blocksFromStreets(lines: readonly Float64Array[], options: BlockOptions): BlocksFromStreets {
  const gapM = options.gapM ?? DEFAULT_GAP_M;
  if (!(options.minAreaM2 >= 0)) throw new RangeError(`expected a least area from 0 m², got ${options.minAreaM2}`);
  if (!(gapM >= 0)) throw new RangeError(`expected a gap from 0 m, got ${gapM}`);
  const { network: all, findings, gapsClosed } = planarStreets(lines, gapM);
  const streets = withoutDeadEnds(all);
  const cycles = cyclesOf(streets);
  const faces = facesOf(streets, cycles);
  const blocks = inOrder(faces.filter((face) => regionArea(face) >= options.minAreaM2));
  const nothing: Finding<GeometryFindingCode>[] =
    blocks.length > 0 ? [] : [leftOut('streets-enclose-nothing', {}, { streets: lines.length })];
  const network = measured(streets, cycles, faces);
  const facesTooSmall = faces.length - blocks.length;
  return {
    blocks,
    findings: [...findings, ...nothing],
    network: { ...network, gapsClosed, facesTooSmall },
  };
}

/** Each bounded face with the outsides of the parts that lie in it as holes. */
function facesOf(streets: PlanarLines, cycles: Cycles): Region[] {
  const rings = new Map<number, Ring[]>();
  enclosingFaces(streets, cycles).forEach((face, cycle) => {
    if (face === -1) return;
    const own = simpleRings(streets, cycles.nodes[cycle]).map(inMetres);
    const sofar = rings.get(face) ?? [];
    rings.set(face, face === cycle ? [...own, ...sofar] : [...sofar, ...own]);
  });
  return [...rings.values()].map((face) => [...face].sort(shellsFirst));
}

function shellsFirst(a: Ring, b: Ring): number {
  return regionArea([b]) - regionArea([a]) || a[0] - b[0] || a[1] - b[1];
}

/** In metres, beginning at the westernmost (then southernmost) vertex. */
function inMetres(ring: Ring): Ring {
  let start = 0;
  for (let i = 2; i < ring.length; i += 2) {
    if ((ring[i] - ring[start] || ring[i + 1] - ring[start + 1]) < 0) start = i;
  }
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i++) out[i] = ring[(start + i) % ring.length] / CELLS_PER_METRE;
  return out;
}

function inOrder(faces: readonly Region[]): Region[] {
  return faces
    .map((face) => ({ face, at: regionCentroid(face) }))
    .sort((a, b) => a.at[0] + a.at[1] - (b.at[0] + b.at[1]) || a.at[0] - b.at[0])
    .map(({ face }) => face);
}

function measured(streets: PlanarLines, cycles: Cycles, faces: readonly Region[]) {
  const enclosing = enclosingFaces(streets, cycles);
  const outsides = cycles.area.flatMap((area, c) => (area > 0 ? [] : [c]));
  const outermost = outsides.filter((c) => enclosing[c] === -1);
  return {
    nodes: new Set([...streets.from, ...streets.to]).size,
    edges: streets.from.length,
    faces: faces.length,
    parts: outsides.length,
    facesM2: faces.reduce((sum, face) => sum + regionArea(face), 0),
    enclosedM2: outermost.reduce((sum, c) => sum - cycles.area[c], 0) / CELLS_PER_METRE ** 2,
  };
}
