/** From a project's records to the bodies that the server sends. Runs in a thread of its own: a city takes seconds. */
import { type Assessment, assess, isStopped } from '@crownfall/assessment';
import {
  blockFeature,
  degree,
  geometryToJson,
  type OutFeature,
  pavementFeature,
  treeFeature,
} from '@crownfall/exchange';
import type { Finding } from '@crownfall/geometry';
import { type ProjectInput, readSurvey } from '@crownfall/survey';
import { boundsOf } from './bounds.ts';
import { driftLayer } from './drift-layer.ts';
import { type FeatureSet, featureSet, memoryOf, type SetFeature } from './feature-set.ts';
import type { Figures } from './figures.ts';
import { figuresOf } from './figures-json.ts';
import { resultLayers } from './layers.ts';

/** As `crownfall reckon` does unless told otherwise: the same project gives the same digits. */
export const DRAWS = 1000;
export const SEED = 1;

/** Either figures, or the findings that stopped the job. */
export type Reckoning = { readonly figures: Figures } | { readonly stopped: readonly Finding[] };

/** Reckons a project and packs what is sent. `journal` is the number of the last edit that `input` holds. */
export function makeFigures(input: ProjectInput, journal: number): Reckoning {
  const assessment = assess(input, { draws: DRAWS, seed: SEED });
  if (isStopped(assessment)) return { stopped: assessment.findings };
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  const { blocks, pavement, trees } = resultLayers(assessment);
  const layers = {
    blocks: bytes(blocks),
    pavement: bytes(pavement),
    trees: bytes(trees),
    drift: bytes(driftLayer(assessment)),
  };
  const bounds = boundsOf(assessment);
  const text = JSON.stringify({ journal, ...figuresOf(assessment, bounds) });
  const collections = collectionsOf(assessment, input);
  const { title } = assessment;
  const { imagery } = input;
  return { figures: { journal, title, imagery, assessment: bytes(text), layers, collections, bounds } };
}

/** The memory of figures that may be handed over to another thread without a copy. */
export function figuresMemory({ assessment, layers, collections }: Figures): ArrayBuffer[] {
  const texts = [assessment, ...Object.values(layers)].map(({ buffer }) => buffer as ArrayBuffer);
  return [...texts, ...Object.values(collections).flatMap(memoryOf)];
}

function collectionsOf(assessment: Assessment, input: ProjectInput): Figures['collections'] {
  const { asOf } = assessment.run;
  const ratedOn = newestRatings(input, asOf);
  return {
    crowns: packed(assessment.trees, (tree) => {
      const { geometry, properties } = treeFeature(tree);
      const day = ratedOn.get(tree.treeId) ?? null;
      return toSet(tree.treeId, { geometry, properties: withDay(properties, day) }, day);
    }),
    pavement: packed(assessment.pavement, (piece) => toSet(piece.pavementId, pavementFeature(piece), null)),
    blocks: packed(assessment.blocks, (block) => toSet(block.blockId, blockFeature(block), null)),
  };
}

function packed<Result>(results: readonly Result[], feature: (result: Result) => SetFeature): FeatureSet {
  return featureSet(mapped(results, feature));
}

function* mapped<From, To>(from: Iterable<From>, to: (item: From) => To): Generator<To> {
  for (const item of from) yield to(item);
}

function toSet(id: string, { geometry, properties }: OutFeature, day: string | null): SetFeature {
  return { id, day, geometry: geometryToJson(geometry, degree), properties };
}

/** A field of the inventory's own that bears the name stays, as elsewhere in the results, under `NAME_given`. */
function withDay(properties: OutFeature['properties'], day: string | null): Record<string, unknown> {
  const { rated_on: given, ...rest } = properties;
  return { ...rest, rated_on: day, ...(given === undefined ? {} : { rated_on_given: given }) };
}

/** The day of each tree's newest rating that is not after the day the figures speak of. */
function newestRatings(input: ProjectInput, asOf: string | null): ReadonlyMap<string, string> {
  const newest = new Map<string, string>();
  for (const { treeId, ratedOn } of readSurvey(input).survey.ratings) {
    if (asOf !== null && ratedOn > asOf) continue;
    if (ratedOn > (newest.get(treeId) ?? '')) newest.set(treeId, ratedOn);
  }
  return newest;
}
