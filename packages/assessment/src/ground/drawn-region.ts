import {
  type Coordinates,
  type Finding,
  type LocalPlane,
  offsetRegion,
  type Place,
  type Region,
  reversed,
  signedArea,
} from '@crownfall/geometry';

export function drawnRegion(
  polygons: readonly (readonly Coordinates<'lonlat'>[])[],
  plane: LocalPlane,
  _where: Place,
): { region: Region; findings: readonly Finding[] } {
  const region = polygons.flatMap((rings) =>
    rings.map((r, i) => {
      const ring = plane.forward(r);
      return signedArea(ring) > 0 === (i === 0) ? ring : reversed(ring);
    }),
  );
  return { region: tidied(region), findings: [] };
}

/** The same set of points with rings that do not cross: shells counter-clockwise, holes clockwise. */
export function tidied(region: Region): Region {
  return offsetRegion(region, 0, 1);
}
