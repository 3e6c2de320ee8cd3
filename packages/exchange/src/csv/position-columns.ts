/** Which columns of a table hold its positions. */
export interface PositionColumns {
  readonly x: string;
  readonly y: string;
  /** True when the names themselves say longitude and latitude; `x` and `y` say no more than an order. */
  readonly sayLonLat: boolean;
}

const LON = ['lon', 'lng', 'long', 'longitude', 'lon_deg', 'longitude_deg'];
const LAT = ['lat', 'latitude', 'lat_deg', 'latitude_deg'];
const X = ['x', 'easting', 'x_coord', 'point_x'];
const Y = ['y', 'northing', 'y_coord', 'point_y'];

/** The position columns among the header's names, upper and lower case alike; `null` when there is no pair. */
export function positionColumns(names: readonly string[]): PositionColumns | null {
  const find = (words: readonly string[]) => {
    for (const word of words) {
      const found = names.find((name) => name.toLowerCase() === word);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  const lon = find(LON);
  const lat = find(LAT);
  if (lon !== undefined && lat !== undefined) return { x: lon, y: lat, sayLonLat: true };
  const x = find(X);
  const y = find(Y);
  return x !== undefined && y !== undefined ? { x, y, sayLonLat: false } : null;
}

/** The column that holds each row's geometry as GeoJSON text, judged by its first filled cell. */
export function geometryColumn(names: readonly string[], firstCell: (name: string) => string): string | null {
  const found = names.find((name) => /^(?:geometry|geom|geojson)$/i.test(name));
  return found !== undefined && /^\s*\{\s*"/.test(firstCell(found)) ? found : null;
}
