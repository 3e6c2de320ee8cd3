/** Whether the layers of a project lie in the same place. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { LayerName, ProjectInput } from '../project-input.ts';
import { coordinateLists, type Extent, extentOf, extentsMeet, extentText } from './positions.ts';

/** About 100 m: the reach of a crown and its drift beyond its trunk, generously. */
const CROWN_SLACK_DEG = 0.001;
/** About 1 km: how far beyond the pavement a block, a well or a complaint can still belong to the project. */
const NEIGHBOUR_SLACK_DEG = 0.01;

const NEIGHBOURS: readonly LayerName[] = ['blocks', 'quadrats', 'complaints', 'water', 'sites', 'streets'];

/**
 * Findings for layers whose extents do not meet the pavement's. Crowns that lie elsewhere stop the job: every figure would
 * be zero. Other layers that lie elsewhere are kept, with a warning. Both extents are given, as longitude and latitude.
 */
export function layersThatDoNotMeet(input: ProjectInput): Finding[] {
  const pavement = layerExtent(input, 'pavement');
  if (pavement === undefined) return [];
  const tell = (layer: LayerName, slackDeg: number, grade: 'error/stops' | 'warning/kept'): Finding[] => {
    const extent = layerExtent(input, layer);
    if (extent === undefined || extentsMeet(extent, pavement, slackDeg)) return [];
    const facts = { extent: extentText(extent), other: 'pavement', other_extent: extentText(pavement) };
    const file = input.layers[layer]?.file ?? '';
    return [finding('layers-do-not-meet', grade, { layer, file }, facts)];
  };
  return [
    ...tell('crowns', CROWN_SLACK_DEG, 'error/stops'),
    ...NEIGHBOURS.flatMap((layer) => tell(layer, NEIGHBOUR_SLACK_DEG, 'warning/kept')),
  ];
}

/** Extent of a layer's usable positions. */
function layerExtent(input: ProjectInput, layer: LayerName): Extent | undefined {
  const features = input.layers[layer]?.features ?? [];
  return extentOf(features.flatMap((feature) => coordinateLists(feature.geometry)).filter(onEarth));
}

function onEarth(list: Float64Array): boolean {
  return list.every((value, i) => Math.abs(value) <= (i % 2 === 0 ? 180 : 90));
}
