/**
 * What well-known text or PROJJSON says about itself: name, registered code, datum. Only that much is read here; proj4
 * reads the projection. Covers WKT 1 (OGC 01-009 and the ESRI dialect of `.prj` files) and WKT 2 (ISO 19162).
 */
export interface StatedCrs {
  readonly name: string;
  /** `EPSG:2236` when the text carries a registered code. */
  readonly code: string | undefined;
  readonly datum: string | undefined;
  /** From TOWGS84 or a bound system, as in a PROJ string. */
  readonly towgs84: string | undefined;
  /** The horizontal part, as text for proj4: a compound system without its heights. */
  readonly definition: string;
  /** A name of what cannot be read here: a grid, an axis to the west or south, an angle other than the degree. */
  readonly unreadable: string | undefined;
}

interface WktNode {
  readonly keyword: string;
  readonly values: readonly string[];
  readonly children: readonly WktNode[];
  readonly text: string;
}

const MAX_DEPTH = 40;
const DEGREE = Math.PI / 180;

/** Reads well-known text; undefined when it is not that. */
export function readWkt(text: string): StatedCrs | undefined {
  const root = parseWkt(text);
  if (!root) return undefined;
  const horizontal = /^COMP/.test(root.keyword) ? root.children[0] : root;
  if (!horizontal || !/^(PROJ|GEOG|GEOD|BASEGEOG|BOUND)/.test(horizontal.keyword)) return undefined;
  const datum = find(horizontal, /^(DATUM|GEODETICDATUM|TRF|ENSEMBLE)$/);
  return {
    name: horizontal.values[0] ?? find(horizontal, /^(PROJ|GEOG|GEOD)/)?.values[0] ?? '',
    code: wktCode(horizontal) ?? (isPseudoMercator(horizontal) ? 'EPSG:3857' : undefined),
    datum: datum?.values[0],
    towgs84: find(horizontal, /^TOWGS84$/)?.values.join(','),
    definition: horizontal.text,
    unreadable: unreadablePart(horizontal) ?? unreadableMethod(find(horizontal, /^(PROJECTION|METHOD)$/)?.values[0]),
  };
}

/** Reads PROJJSON, given as text; undefined when it is not that. */
export function readProjJson(text: string): StatedCrs | undefined {
  const root = parseJson(text);
  const crs = root?.type === 'CompoundCRS' ? asObject(asArray(root.components)[0]) : root;
  if (!crs || !/^(Projected|Geographic|Geodetic)CRS$/.test(String(crs.type))) return undefined;
  const base = asObject(crs.base_crs) ?? crs;
  const datum = asObject(base.datum) ?? asObject(base.datum_ensemble);
  const id = asObject(crs.id);
  const method = asObject(asObject(crs.conversion)?.method)?.name as string | undefined;
  const axes = asArray(asObject(crs.coordinate_system)?.axis).map((axis) => String(asObject(axis)?.direction));
  return {
    name: String(crs.name ?? ''),
    code: id ? `${id.authority}:${id.code}`.toUpperCase() : undefined,
    datum: datum?.name === undefined ? undefined : String(datum.name),
    towgs84: undefined,
    definition: JSON.stringify(crs),
    unreadable: axes.find((direction) => /west|south/i.test(direction)) ?? unreadableMethod(method),
  };
}

function wktCode(node: WktNode): string | undefined {
  const id = node.children.find((child) => child.keyword === 'AUTHORITY' || child.keyword === 'ID');
  return id && id.values.length >= 2 ? `${id.values[0]}:${id.values[1]}`.toUpperCase() : undefined;
}

/** Written as a Mercator projection of the ellipsoid in some dialects; computed so, it is 20 km off. */
function isPseudoMercator(node: WktNode): boolean {
  const method = find(node, /^(PROJECTION|METHOD)$/)?.values[0];
  if (!/pseudo.?mercator|auxiliary.?sphere/i.test(`${node.values[0]} ${method}`)) return false;
  const conversion = find(node, /^CONVERSION$/) ?? node;
  const parameters = conversion.children.filter((child) => child.keyword === 'PARAMETER');
  return parameters.every((one) => Number(one.values[1]) === (/scale/i.test(one.values[0]) ? 1 : 0));
}

function unreadablePart(node: WktNode): string | undefined {
  if (find(node, /^(NADGRIDS|PARAMETERFILE)$/)) return 'grid file';
  if (node.keyword === 'BOUNDCRS') return 'bound system';
  const axis = node.children.find((child) => child.keyword === 'AXIS' && /west|south/i.test(child.values.join(' ')));
  if (axis) return `axis ${axis.values.join(' ')}`;
  const unit = /^(GEOG|GEOD)/.test(node.keyword)
    ? node.children.find((child) => /UNIT$/.test(child.keyword))
    : undefined;
  return unit && Math.abs(Number(unit.values[1]) - DEGREE) > 1e-9 ? `unit ${unit.values[0]}` : undefined;
}

/**
 * Methods that proj4 reads rightly in all three dialects, as compared with PROJ; it takes an oblique Mercator of one variant for
 * another, and is then a hundred kilometres off.
 */
const METHODS =
  /^(mercator(1sp|2sp|varianta|variantb)?|transversemercator|gausskruger|lambert(conformalconic|conicconformal)(1sp|2sp)?|albers(conic|conicequalarea|equalarea)?|lambertazimuthalequalarea|(oblique|double)stereographic|krovak(northorientated|eastnorth)?)$/;

function unreadableMethod(method: string | undefined): string | undefined {
  if (method === undefined) return undefined;
  return METHODS.test(method.toLowerCase().replace(/[^a-z0-9]/g, '')) ? undefined : `method ${method}`;
}

function find(node: WktNode, keyword: RegExp): WktNode | undefined {
  for (const child of node.children) {
    const found = keyword.test(child.keyword) ? child : find(child, keyword);
    if (found) return found;
  }
  return undefined;
}

/** A keyword, then in brackets quoted texts, numbers or words, and further nodes. */
function parseWkt(text: string): WktNode | undefined {
  const tokens = [...text.matchAll(/"((?:[^"]|"")*)"|[[\](),]|[^[\](),"\s]+/g)];
  let at = 0;
  const node = (depth: number): WktNode | undefined => {
    const start = tokens[at];
    const keyword = start[0].toUpperCase();
    const values: string[] = [];
    const children: WktNode[] = [];
    at += 2;
    for (; at < tokens.length; at++) {
      const token = tokens[at];
      if (token[0] === ']' || token[0] === ')') {
        return { keyword, values, children, text: text.slice(start.index, token.index + 1) };
      }
      if (token[0] === ',') continue;
      if (tokens[at + 1]?.[0] !== '[' && tokens[at + 1]?.[0] !== '(') values.push(token[1] ?? token[0]);
      else {
        const child = depth < MAX_DEPTH ? node(depth + 1) : undefined;
        if (!child) return undefined;
        children.push(child);
      }
    }
    return undefined;
  };
  return tokens.length > 2 && /^[[(]$/.test(tokens[1][0]) ? node(0) : undefined;
}

type JsonObject = Readonly<Record<string, unknown>>;

function parseJson(text: string): JsonObject | undefined {
  try {
    return asObject(JSON.parse(text));
  } catch {
    return undefined;
  }
}

function asObject(value: unknown): JsonObject | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as JsonObject) : undefined;
}

function asArray(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
