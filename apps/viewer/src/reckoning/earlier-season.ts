/** The project on the day of its newest rating of an earlier year, on today's ground: what this season is compared with. */
import { LiveAssessment } from '@crownfall/assessment';
import { type ProjectInput, readSurvey } from '@crownfall/survey';
import type { Layers } from '../project/project.ts';
import { driftFeatures, resultFeatures } from './shown-features.ts';

export interface EarlierSeason {
  /** ISO day. */
  readonly asOf: string;
  readonly layers: Layers;
  readonly stainedM2: ReadonlyMap<string, number>;
}

/** Null when no earlier year was rated. `asOf`: the day of the figures now. */
export function earlierSeason(input: ProjectInput, asOf: string): EarlierSeason | null {
  const year = asOf.slice(0, 4);
  const { ratings } = readSurvey(input).survey;
  const days = ratings.map(({ ratedOn }) => ratedOn).filter((day) => day.slice(0, 4) < year);
  const newest = days.sort().at(-1);
  if (newest === undefined) return null;
  const settings = { ...input.settings, as_of: newest };
  const then = new LiveAssessment({ ...input, season: Number(newest.slice(0, 4)), settings }).assessment();
  const features = resultFeatures(then);
  const collection = (of: readonly GeoJSON.Feature[]): GeoJSON.FeatureCollection => ({
    type: 'FeatureCollection',
    features: [...of],
  });
  return {
    asOf: newest,
    layers: {
      blocks: collection(features.blocks),
      pavement: collection(features.pavement),
      trees: collection(features.trees),
      drift: collection(driftFeatures(then, then.trees)),
    },
    stainedM2: new Map(then.blocks.map(({ blockId, stainedM2 }) => [blockId, stainedM2.value])),
  };
}
