/** The stain stage: severities meet the ground. Changed ratings, factors or k need this stage again, not the geometry. */
import type { Finding } from '@crownfall/geometry';
import { type LedgerKeys, layerShares, reckonLedgers, type StainLedgers, treeDoses } from '@crownfall/stain';
import {
  PAVEMENT_KINDS,
  type Settings,
  type SeverityReading,
  type Survey,
  severityOfTrees,
  type TreeSeverity,
} from '@crownfall/survey';
import type { FixedGround, Ground } from './ground/ground.ts';

export interface Stain {
  readonly ledgers: StainLedgers;
  /** By zone. */
  readonly severities: readonly TreeSeverity[];
  /** Of all trees of the survey, with the groups that unrated ones borrow from. */
  readonly reading: SeverityReading;
  readonly findings: readonly Finding[];
}

/** Doses of all crowns on the day `asOf`, and the stained area they make. */
export function reckonStain(ground: Ground, survey: Survey, settings: Settings, asOf: string): Stain {
  const reading = severityOfTrees(survey, settings, asOf);
  const severities = severitiesOf(ground, reading);
  const field = { ledger: ground.ledger, layerShare: layerShares(settings), dose: treeDoses(severities, settings) };
  return { ledgers: reckonLedgers(field, ledgerKeys(ground)), severities, reading, findings: reading.findings };
}

/** Severities by zone. */
export function severitiesOf({ treeIndex }: Pick<Ground, 'treeIndex'>, { trees }: SeverityReading): TreeSeverity[] {
  const severities: TreeSeverity[] = [];
  for (let zone = 0; zone < treeIndex.length; zone++) severities.push(trees[treeIndex[zone]]);
  return severities;
}

export function ledgerKeys({ pavement, blocks }: FixedGround): LedgerKeys {
  return {
    pieceKind: Uint8Array.from(pavement, (piece) => PAVEMENT_KINDS.indexOf(piece.pavement.kind)),
    blockCount: blocks.length,
  };
}
