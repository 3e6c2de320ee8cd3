/** The ranking for machines; names as in blocks.geojson, areas in m². */
import type { Assessment } from '@crownfall/assessment';

export function rankingJson(assessment: Assessment, out: string): unknown {
  const { title, season, run, total, blocks, findings } = assessment;
  return {
    title,
    season,
    as_of: run.asOf,
    calibrated: run.calibrated,
    draws: run.draws,
    seed: run.seed,
    out,
    total: {
      pavement_m2: total.pavementM2,
      dripline_m2: total.driplineM2,
      fallout_m2: total.falloutM2,
      stained_m2: total.stainedM2.value,
      ...rangesJson(total.stainedM2),
    },
    blocks: blocks.map((block) => ({
      rank: block.rank,
      block_id: block.blockId,
      name: block.name,
      score: block.score,
      score_parts: Object.fromEntries(block.scoreParts.map((part) => [part.criterion, part.points])),
      pavement_m2: block.pavementM2,
      dripline_m2: block.driplineM2,
      fallout_m2: block.falloutM2,
      stained_m2: block.stainedM2.value,
      ...rangesJson(block.stainedM2),
      top_share: block.topShare,
      trees: block.trees,
      trees_rated: block.treesRated,
      complaints_open: block.complaintsOpen,
      bloom_state: block.bloomState,
    })),
    findings,
  };
}

/** Ranges under the names of blocks.geojson; null without draws. */
function rangesJson({ range80, range95 }: Assessment['total']['stainedM2']): object {
  return {
    stained_lo80_m2: range80?.[0] ?? null,
    stained_hi80_m2: range80?.[1] ?? null,
    stained_lo95_m2: range95?.[0] ?? null,
    stained_hi95_m2: range95?.[1] ?? null,
  };
}
