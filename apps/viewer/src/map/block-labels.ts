/** One point per block for its rank, so that a label is drawn once even where a block crosses map tiles. */

type Ring = GeoJSON.Position[];

/** Points at the centroid of each block's largest outline, carrying the block's properties. Blocks without one are left out. */
export function blockLabels(blocks: GeoJSON.FeatureCollection): GeoJSON.FeatureCollection<GeoJSON.Point> {
  const features = blocks.features.flatMap((block): GeoJSON.Feature<GeoJSON.Point>[] => {
    const shells = shellsOf(block.geometry).sort(
      (a, b) => Math.abs(centroid(b).twiceArea) - Math.abs(centroid(a).twiceArea),
    );
    if (shells.length === 0) return [];
    const { x, y } = centroid(shells[0]);
    return [{ type: 'Feature', properties: block.properties, geometry: { type: 'Point', coordinates: [x, y] } }];
  });
  return { type: 'FeatureCollection', features };
}

export function shellsOf(geometry: GeoJSON.Geometry | null): Ring[] {
  if (geometry?.type === 'Polygon') return geometry.coordinates.slice(0, 1);
  if (geometry?.type === 'MultiPolygon') return geometry.coordinates.map((polygon) => polygon[0]);
  return [];
}

/** Centroid of a closed ring about its first vertex; a ring without area gives that vertex. */
function centroid(ring: Ring): { x: number; y: number; twiceArea: number } {
  const [x0, y0] = ring[0];
  let [twiceArea, sumX, sumY] = [0, 0, 0];
  for (let i = 0; i + 1 < ring.length; i++) {
    const [ax, ay, bx, by] = [ring[i][0] - x0, ring[i][1] - y0, ring[i + 1][0] - x0, ring[i + 1][1] - y0];
    const cross = ax * by - bx * ay;
    twiceArea += cross;
    sumX += (ax + bx) * cross;
    sumY += (ay + by) * cross;
  }
  if (twiceArea === 0) return { x: x0, y: y0, twiceArea };
  return { x: x0 + sumX / (3 * twiceArea), y: y0 + sumY / (3 * twiceArea), twiceArea };
}
