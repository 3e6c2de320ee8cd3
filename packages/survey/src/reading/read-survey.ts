/** From raw layers to the checked records of a project. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { LayerName, ProjectInput } from '../project-input.ts';
import type { Survey } from '../records.ts';
import { readSettings } from '../settings/read-settings.ts';
import type { Settings } from '../settings.ts';
import { visitFindings, visitLayers } from '../visits/visit-layers.ts';
import { KnownIds } from './known-ids.ts';
import { layersThatDoNotMeet } from './layers-meet.ts';
import { readBlocks } from './read-blocks.ts';
import { readBloom } from './read-bloom.ts';
import { readComplaints } from './read-complaints.ts';
import { readCrowns } from './read-crowns.ts';
import { readPavement } from './read-pavement.ts';
import { readQuadrats } from './read-quadrats.ts';
import { readRatings } from './read-ratings.ts';
import { readSites } from './read-sites.ts';
import { readStreets } from './read-streets.ts';
import { readWater } from './read-water.ts';

export interface SurveyReading {
  readonly survey: Survey;
  readonly settings: Settings;
  /** The readers' own findings first, then settings, then layer by layer. */
  readonly findings: readonly Finding[];
}

/**
 * Checks every layer of a project and turns what is usable into records. Never throws for bad data: what is wrong is left
 * out, mended or assumed, and each time a finding says which. Whether the job can go on: no finding with effect `stops`.
 * @example readSurvey(input).survey.trees.length
 */
export function readSurvey(input: ProjectInput): SurveyReading {
  const { settings, findings: ofSettings } = readSettings(input.settings);
  const { layers } = input;
  const crowns = readCrowns(layers.crowns, settings);
  const pavement = readPavement(layers.pavement, settings);
  const blocks = readBlocks(layers.blocks);
  const trees = new KnownIds(crowns.records.map((tree) => tree.treeId));
  const blockIds = layers.blocks && new KnownIds(blocks.records.map((block) => block.blockId));
  const ratings = readRatings(layers.ratings, settings, trees);
  const quadrats = readQuadrats(layers.quadrats);
  const complaints = readComplaints(layers.complaints);
  const bloom = readBloom(layers.bloom, trees, blockIds);
  const sites = readSites(layers.sites);
  const water = readWater(layers.water);
  const streets = readStreets(layers.streets);
  const { visits = [] } = input;
  const visited = visitLayers(visits, layers);
  const ofVisits = {
    ratings: readRatings(visited.ratings, settings, trees),
    quadrats: readQuadrats(visited.quadrats),
    bloom: readBloom(visited.bloom, trees, blockIds),
  };
  const readings = [
    crowns,
    pavement,
    blocks,
    ratings,
    quadrats,
    complaints,
    bloom,
    sites,
    water,
    streets,
    ...Object.values(ofVisits),
  ];
  return {
    survey: {
      title: input.title,
      season: input.season,
      units: input.units,
      trees: crowns.records,
      pavement: pavement.records,
      blocks: blocks.records,
      ratings: [...ratings.records, ...ofVisits.ratings.records],
      quadrats: [...quadrats.records, ...ofVisits.quadrats.records],
      complaints: complaints.records,
      bloom: [...bloom.records, ...ofVisits.bloom.records],
      sites: sites.records,
      water: water.records,
      streets: streets.records,
    },
    settings,
    findings: [
      ...input.findings,
      ...ofSettings,
      ...missingLayers(input),
      ...layersThatDoNotMeet(input),
      ...readings.flatMap((reading) => reading.findings),
      ...visitFindings(visits, trees),
    ],
  };
}

/** Crowns and pavement are needed; without ratings no tree has a figure, which a reader of the totals must know. */
function missingLayers(input: ProjectInput): Finding[] {
  const grades = { crowns: 'error/stops', pavement: 'error/stops', ratings: 'warning/kept' } as const;
  const names = Object.keys(grades) as (keyof typeof grades & LayerName)[];
  return names
    .filter(
      (layer) =>
        input.layers[layer] === undefined && !(layer === 'ratings' && visitLayers(input.visits ?? [], {}).ratings),
    )
    .map((layer) => finding('layer-missing', grades[layer], { layer }, {}));
}
