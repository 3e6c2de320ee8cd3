/** Where on the map a finding is. */
import type { Finding } from '@crownfall/geometry';
import type { Position } from '../outline/sketch.ts';
import { FEATURE_ID, type LayerName } from '../project/project.ts';
import { chooseTree } from './drawing.ts';
import { middleOf } from './middle-of.ts';
import type { Session } from './session.ts';

/** Layers of records, and the layer of the map that shows what they are about. */
const SHOWN_IN: Readonly<Record<string, LayerName>> = {
  crowns: 'trees',
  ratings: 'trees',
  bloom: 'trees',
  pavement: 'pavement',
  blocks: 'blocks',
};

/** The position it states, else the middle of the feature it names; null when it has neither. */
export function placeOfFinding({ store }: Session, { where }: Finding): Position | null {
  if (where.lon !== undefined && where.lat !== undefined) return [where.lon, where.lat];
  const layer = SHOWN_IN[where.layer ?? ''];
  const { layers } = store.get();
  if (layer === undefined || where.feature === undefined || !layers) return null;
  const feature = layers[layer].features.find(({ properties }) => properties?.[FEATURE_ID[layer]] === where.feature);
  return middleOf(feature);
}

export function showFinding(session: Session, finding: Finding): void {
  const at = placeOfFinding(session, finding);
  if (!at) return;
  const { layer, feature } = finding.where;
  if (SHOWN_IN[layer ?? ''] === 'trees' && feature !== undefined) void chooseTree(session, feature);
  session.map?.flyTo(at, 19);
}
