/** Crowns: outlines of any of the recorded kinds, each under an id of its own. */
import type { RawLayer } from '../project-input.ts';
import type { Tree } from '../records.ts';
import type { Settings } from '../settings.ts';
import { claimId, idRegister } from './claim-id.ts';
import { crownShapeOf } from './crown-shape-of.ts';
import { estimatedSpreads } from './estimated-spreads.ts';
import { crownHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { middleOf } from './positions.ts';
import { present } from './present-fields.ts';
import type { RowReader } from './row-reader.ts';

/**
 * Reads the crowns. A crown without a size or a usable geometry is left out. A tree_id that comes twice with the same
 * outline is one tree; with another outline it is a second tree under `ID~2`, and ratings of `ID` go to the first. Spreads
 * that were estimated are told with their count.
 * @example readCrowns(layer, DEFAULT_SETTINGS).records[0].crown // { from: 'spread', at: …, spreadM: 8 }
 */
export function readCrowns(layer: RawLayer | undefined, settings: Settings): LayerReading<Tree> {
  const register = idRegister('crown', layer, 'tree_id');
  const { records, findings } = readLayer('crowns', layer, (row) => {
    const crown = crownShapeOf(row, settings);
    if (crown === undefined) return undefined;
    const treeId = claimId(row, register, 'tree_id', () => crownHash(crown));
    if (treeId === undefined) return undefined;
    const at = crown.from === 'polygon' ? middleOf(row.feature.geometry) : crown.at;
    return { treeId, at, crown, ...details(row), extra: row.extra() };
  });
  return { records, findings: [...findings, ...(layer ? estimatedSpreads(records, layer, settings) : [])] };
}

function details(row: RowReader<'crowns'>): Partial<Tree> {
  return present({
    host: row.text('host'),
    cultivar: row.text('cultivar'),
    heightM: row.number('height_m'),
    outlinedBy: row.text('outlined_by'),
    outlinedOn: row.date('outlined_on'),
    outlineSdM: row.number('outline_sd_m'),
  });
}
