/** Quadrats under their crowns: the dose that each plot's ground receives, by exact overlay. */
import { type OverlayLedger, type Region, reckonOverlay, type ZoneSource } from '@crownfall/geometry';
import type { QuadratDose } from '@crownfall/stain';
import type { Quadrat, TreeSeverity } from '@crownfall/survey';
import Flatbush from 'flatbush';
import { boundsOf } from '../region-lookup.ts';

/** A quadrat in the plane. */
export interface PlacedQuadrat {
  readonly quadrat: Quadrat;
  readonly region: Region;
  readonly block: string | null;
}

/** What is needed to tell the dose on some ground. */
export interface DoseSource {
  readonly zones: ZoneSource;
  /** By zone. */
  readonly severities: readonly TreeSeverity[];
  /** `[1, ring 1, …]`. */
  readonly layerShare: ArrayLike<number>;
}

/** A quadrat's dose, or the crown above it whose dose nobody knows. */
export type QuadratReading = { readonly dose: QuadratDose } | { readonly unratedAbove: string };

/**
 * The dose of one quadrat at k = 1: its ground laid under the fallout zones of the crowns near it. A crown above it that was not
 * rated and may have a dose makes the quadrat's dose unknown. Exact to the overlay's rounding.
 */
export function quadratReader(source: DoseSource): (placed: PlacedQuadrat) => QuadratReading {
  const { zones } = source;
  const index = zones.count > 0 ? new Flatbush(zones.count) : null;
  for (let zone = 0; zone < zones.count; zone++) {
    const { minX, minY, maxX, maxY } = zones.box(zone);
    index?.add(minX, minY, maxX, maxY);
  }
  index?.finish();
  return (placed) => {
    const near = index?.search(...boundsOf(placed.region)).sort((a, b) => a - b) ?? [];
    const layers = near.map((zone) => ({ layers: zones.layers(zone) }));
    // Each quadrat alone: two plots on one spot, measured twice, must each keep their ground.
    const ledger = reckonOverlay({ zones: layers, pieces: [placed.region], blocks: [] });
    const severities = near.map((zone) => source.severities[zone]);
    const unknown = [...new Set(ledger.zone)].find((zone) => isUnknown(severities[zone]));
    if (unknown !== undefined) return { unratedAbove: severities[unknown].treeId };
    return { dose: doseOf(placed, ledger, { severities, layerShare: source.layerShare }) };
  };
}

function isUnknown({ from, weightedHi }: TreeSeverity): boolean {
  return from === 'none' || (from === 'group' && weightedHi > 0);
}

function doseOf(
  { quadrat, block }: PlacedQuadrat,
  ledger: OverlayLedger,
  { severities, layerShare }: Pick<DoseSource, 'severities' | 'layerShare'>,
): QuadratDose {
  const groundM2 = ledger.areaM2.reduce((sum, areaM2) => sum + areaM2, 0);
  const parts = Array.from(ledger.areaM2, (areaM2, cell) => {
    let dose = 0;
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      dose += layerShare[ledger.layer[entry]] * severities[ledger.zone[entry]].weightedSeverity;
    }
    return { share: areaM2 / groundM2, dose };
  });
  const { quadratId, areaM2, stainedShare } = quadrat;
  return { quadratId, block, areaM2, stainedShare, parts };
}
