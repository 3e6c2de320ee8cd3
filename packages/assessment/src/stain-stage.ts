/** The stain stage: severities meet the ground. Changed ratings, factors or k need this stage again, not the geometry. */
import type { Finding } from '@crownfall/geometry';
import { layerShares, reckonLedgers, type StainLedgers, treeDoses } from '@crownfall/stain';
import {
  PAVEMENT_KINDS,
  type Settings,
  type SeverityReading,
  type Survey,
  severityOfTrees,
  type TreeSeverity,
} from '@crownfall/survey';
import type { Ground } from './ground/ground.ts';

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
  const severities = ground.crowns.map((crown) => reading.trees[crown.treeIndex]);
  const field = {
    ledger: ground.ledger,
    layerShare: layerShares(settings),
    dose: treeDoses(severities, settings),
  };
  const pieceKind = Uint8Array.from(ground.pavement, ({ pavement }) => PAVEMENT_KINDS.indexOf(pavement.kind));
  return {
    ledgers: reckonLedgers(field, { pieceKind, blockCount: ground.blocks.length }),
    severities,
    reading,
    findings: reading.findings,
  };
}
