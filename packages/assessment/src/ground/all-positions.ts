/** Every position of a survey that has to do with pavement and crowns: what the plane is centred on. */
import type { Coordinates, CrownShape } from '@crownfall/geometry';
import type { Survey } from '@crownfall/survey';

/** Crowns, pavement and given blocks as flat longitude–latitude parts; nothing is copied but single points. */
export function* allPositions(survey: Survey): Generator<Coordinates<'lonlat'>> {
  for (const { crown } of survey.trees) yield* crownPositions(crown);
  for (const { shape } of survey.pavement) yield* shape.from === 'line' ? shape.lines : shape.polygons.flat();
  for (const { polygons } of survey.blocks) yield* polygons.flat();
}

function* crownPositions(crown: CrownShape): Generator<Coordinates<'lonlat'>> {
  if (crown.from === 'polygon') yield* crown.polygons.flat();
  else yield Float64Array.of(crown.at.lon, crown.at.lat);
}
