/**
 * A crown while it is drawn: as vertices of its outline, or as what was paced in the field. Every way of drawing (mouse, touch,
 * keyboard, typed numbers) changes the sketch through these functions, so each can be undone the same way.
 */
import type { Confidence } from '@crownfall/survey';
import type { CrownRecord } from '../edits/edit.ts';
import type { ProposalRefusal } from './proposal-refusal.ts';

export type Position = readonly [lon: number, lat: number];
export type Tool = 'polygon' | 'spread' | 'diameters' | 'radii';
export const TOOLS: readonly Tool[] = ['polygon', 'spread', 'diameters', 'radii'];

/** The part of a sketch that undo goes back over. */
export interface Shape {
  readonly tool: Tool;
  /** Open ring of the outline. */
  readonly vertices: readonly Position[];
  /** Holes and further parts of an edited outline; they stay as they are. */
  readonly others: GeoJSON.Position[][][];
  readonly closed: boolean;
  readonly trunk: Position | null;
  readonly spreadM: number;
  readonly diametersM: readonly [number, number];
  readonly bearingDeg: number;
  readonly radiiM: readonly number[];
  /** What the picture proposed and this outline comes from; `ring` is `vertices` as long as nobody has changed it. */
  readonly proposed?: { readonly confidence: Confidence; readonly ring: readonly Position[] } | null;
}

/** What the picture is asked about a sketch. */
type PictureAsked =
  | { readonly state: 'wanted' | 'asked' }
  | { readonly state: 'refused'; readonly because: ProposalRefusal };

export interface Sketch extends Shape {
  readonly treeId: string;
  /** The record that is changed; null for a new tree. */
  readonly before: CrownRecord | null;
  readonly host: string;
  /** Index of the vertex that keys move. */
  readonly vertex: number | null;
  /** Index of the vertex at which a cut begins. */
  readonly cutFrom?: number | null;
  /** Absent: nobody asked the picture. */
  readonly picture?: PictureAsked;
  readonly past: readonly Shape[];
  readonly future: readonly Shape[];
}

const FRESH: Shape = {
  tool: 'polygon',
  vertices: [],
  others: [],
  closed: false,
  trunk: null,
  spreadM: 6,
  diametersM: [7, 5],
  bearingDeg: 0,
  radiiM: [3, 3, 3, 3, 3, 3, 3, 3],
};

/** A new tree's crown. `like`: sizes taken over from the crown drawn last. */
export function newSketch(treeId: string, tool: Tool, like: Partial<Shape & { host: string }> = {}): Sketch {
  const { host = '', ...shape } = like;
  const start = { ...FRESH, ...shape, tool };
  return { ...start, treeId, before: null, host, vertex: null, past: [], future: [] };
}

/** The sketch of a recorded crown, in the form in which it was recorded. */
export function sketchOf(treeId: string, record: CrownRecord): Sketch {
  const { geometry, properties } = record;
  const size = (name: string): number => Number(properties[name]);
  const host = typeof properties.host === 'string' ? properties.host : '';
  const base = { ...newSketch(treeId, 'polygon'), before: record, host };
  if (geometry.type !== 'Point') {
    const [first, ...further] = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
    const [shell, ...holes] = first;
    const others = [holes, ...further] as GeoJSON.Position[][][];
    return { ...base, vertices: openRing(shell), others, closed: true };
  }
  const trunk: Position = [geometry.coordinates[0], geometry.coordinates[1]];
  const radiiM = radiiOf(properties.radii_m);
  if (radiiM) return { ...base, tool: 'radii', trunk, radiiM };
  if (size('spread_a_m') > 0 && size('spread_b_m') > 0) {
    const diametersM = [size('spread_a_m'), size('spread_b_m')] as const;
    return { ...base, tool: 'diameters', trunk, diametersM, bearingDeg: size('bearing_deg') || 0 };
  }
  return { ...base, tool: 'spread', trunk, spreadM: size('spread_m') || FRESH.spreadM };
}

/** Changes the shape; the one before can be come back to. */
export function reshaped(sketch: Sketch, part: Partial<Shape>, vertex = sketch.vertex): Sketch {
  return { ...sketch, ...part, vertex, cutFrom: null, past: [...sketch.past, shapeOf(sketch)], future: [] };
}

/** As `reshaped`, but one gesture (a drag, a run of keys) stays one step: `start` is the shape before it. */
export function reshapedSince(sketch: Sketch, start: Shape, part: Partial<Shape>): Sketch {
  const past = sketch.past.at(-1) === start ? sketch.past : [...sketch.past, start];
  return { ...sketch, ...part, past, future: [] };
}

export function sketchUndone(sketch: Sketch): Sketch {
  const before = sketch.past.at(-1);
  if (!before) return sketch;
  return {
    ...sketch,
    ...before,
    vertex: null,
    past: sketch.past.slice(0, -1),
    future: [shapeOf(sketch), ...sketch.future],
  };
}

export function sketchRedone(sketch: Sketch): Sketch {
  const [next, ...future] = sketch.future;
  if (!next) return sketch;
  return { ...sketch, ...next, vertex: null, past: [...sketch.past, shapeOf(sketch)], future };
}

export function shapeOf(sketch: Sketch): Shape {
  const { tool, vertices, others, closed, trunk, spreadM, diametersM, bearingDeg, radiiM, proposed = null } = sketch;
  return { tool, vertices, others, closed, trunk, spreadM, diametersM, bearingDeg, radiiM, proposed };
}

/** Whether pointing at the picture asks for an outline: as long as there is none, or only an untouched proposal. */
export const asksPicture = ({ picture, vertices, proposed }: Sketch): boolean =>
  picture !== undefined && (vertices.length === 0 || vertices === proposed?.ring);

/** The sketch with the outline that the picture proposes. */
export function withProposal(sketch: Sketch, ring: readonly Position[], confidence: Confidence): Sketch {
  const shape = { tool: 'polygon', vertices: ring, others: [], closed: true, proposed: { confidence, ring } } as const;
  return { ...reshaped(sketch, { ...shape, others: [] }, null), picture: { state: 'wanted' } };
}

/** A vertex at the end of an open outline; a trunk for the other tools. */
export function placed(sketch: Sketch, at: Position): Sketch {
  if (sketch.tool !== 'polygon') return reshaped(sketch, { trunk: at });
  if (sketch.closed) return sketch;
  return reshaped(sketch, { vertices: [...sketch.vertices, at] }, sketch.vertices.length);
}

export const closable = (sketch: Sketch): boolean => sketch.tool === 'polygon' && sketch.vertices.length >= 3;

export const closedUp = (sketch: Sketch): Sketch =>
  closable(sketch) && !sketch.closed ? reshaped(sketch, { closed: true }, null) : sketch;

export function vertexMoved(sketch: Sketch, index: number, to: Position): Pick<Shape, 'vertices'> {
  return { vertices: sketch.vertices.with(index, to) };
}

/** A new vertex between `index` and the next. */
export function vertexInserted(sketch: Sketch, index: number, at: Position): Sketch {
  const vertices = sketch.vertices.toSpliced(index + 1, 0, at);
  return reshaped(sketch, { vertices }, index + 1);
}

/** A closed outline keeps three vertices. */
export function vertexRemoved(sketch: Sketch, index: number): Sketch {
  if (sketch.closed && sketch.vertices.length <= 3) return sketch;
  return reshaped(sketch, { vertices: sketch.vertices.toSpliced(index, 1) }, null);
}

/**
 * The two sides of a cut from `cutFrom` to the chosen vertex, the larger first by vertices' area; null when there is no cut yet,
 * when the two are neighbours, or when the crown has holes or further parts.
 */
export function cutPieces({ vertices, vertex, cutFrom, closed, others }: Sketch): readonly Position[][] | null {
  if (!closed || vertex === null || cutFrom === undefined || cutFrom === null || others.flat().length > 0) return null;
  const [from, to] = [Math.min(vertex, cutFrom), Math.max(vertex, cutFrom)];
  const inner = vertices.slice(from, to + 1);
  const outer = [...vertices.slice(to), ...vertices.slice(0, from + 1)];
  if (inner.length < 3 || outer.length < 3) return null;
  const sizes = [inner, outer].map((ring) => Math.abs(twiceArea([...ring, ring[0]])));
  return sizes[0] >= sizes[1] ? [inner, outer] : [outer, inner];
}

/** Fields of a crown that is outlined: none that give its size by spreads or radii. */
export function withoutSizes(properties: CrownRecord['properties']): CrownRecord['properties'] {
  const { spread_m, spread_a_m, spread_b_m, bearing_deg, radii_m, ...kept } = properties;
  return kept;
}

/** The record the sketch stands for; null while it is not a crown yet. Fields of the other tools' sizes are taken off. */
export function recordOf(sketch: Sketch): CrownRecord | null {
  const named = {
    ...withoutSizes(sketch.before?.properties ?? {}),
    tree_id: sketch.treeId,
    ...(sketch.host === '' ? {} : { host: sketch.host }),
    ...(sketch.tool === 'polygon' && sketch.proposed ? { outlined_by: 'imagery' } : {}),
  };
  if (sketch.tool === 'polygon') {
    if (sketch.vertices.length < 3) return null;
    return { geometry: outlineGeometry(sketch), properties: named };
  }
  if (!sketch.trunk) return null;
  const geometry = { type: 'Point' as const, coordinates: [...sketch.trunk] };
  return { geometry, properties: { ...named, ...sizesOf(sketch) } };
}

function sizesOf({ tool, spreadM, diametersM, bearingDeg, radiiM }: Sketch): Record<string, unknown> {
  if (tool === 'spread') return { spread_m: spreadM };
  if (tool === 'radii') return { radii_m: [...radiiM] };
  return { spread_a_m: diametersM[0], spread_b_m: diametersM[1], bearing_deg: bearingDeg };
}

function outlineGeometry({ vertices, others }: Sketch): GeoJSON.Polygon | GeoJSON.MultiPolygon {
  const shell = [...vertices, vertices[0]].map(([lon, lat]) => [lon, lat]);
  const [holes = [], ...further] = others;
  const first = [counterClockwise(shell), ...holes];
  return further.length === 0
    ? { type: 'Polygon', coordinates: first }
    : { type: 'MultiPolygon', coordinates: [first, ...further] };
}

/** RFC 7946, 3.1.6: shells run counter-clockwise. */
function counterClockwise(ring: GeoJSON.Position[]): GeoJSON.Position[] {
  return twiceArea(ring) < 0 ? ring.reverse() : ring;
}

/** Of a closed ring, in the square of its units; positive when it runs counter-clockwise. */
function twiceArea(ring: readonly (readonly number[])[]): number {
  let twice = 0;
  for (let i = 0; i + 1 < ring.length; i++) {
    twice += (ring[i][0] - ring[0][0]) * (ring[i + 1][1] - ring[0][1]);
    twice -= (ring[i + 1][0] - ring[0][0]) * (ring[i][1] - ring[0][1]);
  }
  return twice;
}

function openRing(ring: readonly GeoJSON.Position[]): Position[] {
  return ring.slice(0, -1).map(([lon, lat]): Position => [lon, lat]);
}

function radiiOf(value: unknown): readonly number[] | null {
  const list = typeof value === 'string' ? value.split(/[\s,;]+/).map(Number) : value;
  return Array.isArray(list) && list.length >= 3 && list.every((each) => Number(each) >= 0) ? list.map(Number) : null;
}
