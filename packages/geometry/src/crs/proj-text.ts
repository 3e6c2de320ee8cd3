/** PROJ strings as people and files write them, `+proj=utm +zone=17 +datum=NAD83 +units=m`. */

export interface ProjText {
  readonly parameters: ReadonlyMap<string, string>;
  /** The string for proj4: no datum, shift, grid or axis, and no origin left to chance. */
  readonly definition: string;
  readonly datum: string | undefined;
  /** undefined also when it is all zeros. */
  readonly towgs84: string | undefined;
  /** A parameter that cannot be read here. */
  readonly unreadable: string | undefined;
}

/** Units that proj4 knows; it takes any other for the metre, without a word. */
const UNITS = 'm mm cm dm km in ft yd mi fath ch link kmi us-in us-ft us-yd us-ch us-mi ind-ft ind-yd ind-ch'.split(
  ' ',
);
const DATUM_PARAMETERS = ['datum', 'towgs84', 'nadgrids', 'axis', 'init', 'type', 'no_defs', 'wktext', 'geoidgrids'];
/** Their own rules for a missing origin differ from 0. */
const OWN_ORIGIN = ['lcc', 'omerc', 'longlat', 'utm'];

export function readProjText(text: string): ProjText {
  const parameters = new Map(
    [...text.matchAll(/(?:^|\s)\+?([A-Za-z_][\w]*)(?:\s*=\s*([^\s+][^\s]*))?/g)].map((word) => [
      word[1].toLowerCase(),
      word[2] ?? '',
    ]),
  );
  const towgs84 = parameters.get('towgs84');
  return {
    parameters,
    definition: definitionOf(parameters),
    datum: parameters.get('datum'),
    towgs84: towgs84?.split(',').some((value) => Number(value) !== 0) ? towgs84 : undefined,
    unreadable: unreadablePart(parameters),
  };
}

function definitionOf(parameters: ReadonlyMap<string, string>): string {
  const kept = [...parameters].filter(([name]) => !DATUM_PARAMETERS.includes(name));
  const projection = parameters.get('proj') ?? '';
  const has = (...names: string[]) => names.some((name) => parameters.has(name));
  if (!has('ellps', 'a', 'r')) kept.push(['ellps', ellipsoidOf(parameters.get('datum'))]);
  if (!has('lon_0', 'lonc') && projection !== 'utm') kept.push(['lon_0', '0']);
  if (!has('lat_0') && !OWN_ORIGIN.includes(projection)) kept.push(['lat_0', '0']);
  return kept.map(([name, value]) => (value ? `+${name}=${value}` : `+${name}`)).join(' ');
}

/** The ellipsoids of PROJ's named datums; the rest stand on WGS 84. */
function ellipsoidOf(datum: string | undefined): string {
  const ellipsoids: Readonly<Record<string, string>> = {
    nad83: 'GRS80',
    ggrs87: 'GRS80',
    potsdam: 'bessel',
    hermannskogel: 'bessel',
    ire65: 'mod_airy',
    osgb36: 'airy',
  };
  return ellipsoids[(datum ?? '').toLowerCase()] ?? 'WGS84';
}

function unreadablePart(parameters: ReadonlyMap<string, string>): string | undefined {
  const unit = parameters.get('units');
  if (unit !== undefined && !UNITS.includes(unit)) return `+units=${unit}`;
  const grids = parameters.get('nadgrids');
  if (grids !== undefined && grids !== '@null') return `+nadgrids=${grids}`;
  const axis = parameters.get('axis');
  if (axis !== undefined && /[wsd]/.test(axis)) return `+axis=${axis}`;
  return undefined;
}
