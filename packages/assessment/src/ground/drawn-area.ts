/** Polygons as they were drawn, carried into the plane and back out for the results. */
import {
  type Coordinates,
  type Finding,
  type LocalPlane,
  type LonLatGeometry,
  offsetRegion,
  type Place,
  type Region,
  readRegion,
} from '@crownfall/geometry';
import { lonLatArea, orientedArea } from '../lonlat-area.ts';

export interface DrawnArea {
  /** In the plane; empty when nothing usable was drawn. */
  readonly region: Region;
  /** As drawn where nothing was wrong with it, else the region that was reckoned with. */
  readonly geometry: LonLatGeometry;
  readonly findings: readonly Finding[];
}

/** Reads drawn polygons (longitude, latitude) into the plane; what is wrong with them comes as findings at `where`. */
export function drawnArea(
  polygons: readonly (readonly Coordinates<'lonlat'>[])[],
  plane: LocalPlane,
  where: Place,
): DrawnArea {
  const inPlane = polygons.map((rings) => rings.map((ring) => plane.forward(ring)));
  const { region, findings } = readRegion(inPlane, { where, plane });
  const geometry = findings.length > 0 ? lonLatArea(tidied(region), plane.inverse) : orientedArea(polygons);
  return { region, geometry, findings };
}

/** The same set of points with rings that do not cross: shells counter-clockwise, holes clockwise. */
export function tidied(region: Region): Region {
  return offsetRegion(region, 0, 1);
}
