/** The record of a run: what was used, what was read, what was left out. */
import type { Finding } from '@crownfall/geometry';
import { LAYER_NAMES, type Settings } from '@crownfall/survey';
import { BLOCK_SOURCES, type Ground } from '../ground/ground.ts';
import type { RunRecord } from '../result.ts';
import type { Stages } from './stages.ts';

/** Everything that makes the run repeatable. `draws` is the number of draws that were made. */
export interface RunFacts {
  readonly settings: Settings;
  readonly asOf: string;
  readonly draws: number;
  readonly seed: number;
  readonly counts: Readonly<Record<string, number>>;
}

export function runRecord(ground: Ground, { settings, asOf, draws, seed, counts }: RunFacts): RunRecord {
  return { settings, asOf, calibrated: settings.calibrated, draws, seed, plane: ground.plane, counts };
}

/**
 * What was read, kept and left out, by layer, and how the rest came about. `…_read` counts features and rows of the files,
 * `…_used` those the totals hold, `…_left_out` the difference.
 */
export function countsOf(
  { input, survey, ground, stain, ranking }: Stages,
  findings: readonly Finding[],
): Record<string, number> {
  const used: Record<(typeof LAYER_NAMES)[number], number> = {
    crowns: ground.crowns.length,
    pavement: ground.pavement.length,
    blocks: ground.blocksFrom === 'given' ? ground.blocks.length : 0,
    ratings: survey.ratings.length,
    quadrats: survey.quadrats.length,
    complaints: survey.complaints.length,
    bloom: survey.bloom.length,
    sites: survey.sites.length,
    water: survey.water.length,
    streets: survey.streets.length,
  };
  const counts: Record<string, number> = {};
  for (const layer of LAYER_NAMES) {
    const read = input.layers[layer]?.features.length ?? 0;
    counts[`${layer}_read`] = read;
    counts[`${layer}_used`] = used[layer];
    counts[`${layer}_left_out`] = read - used[layer] - (layer === 'blocks' ? blockPartsJoined(findings) : 0);
  }
  for (const source of BLOCK_SOURCES) {
    counts[`blocks_from_${source}`] = ground.blocksFrom === source ? ground.blocks.length : 0;
  }
  counts.trees_outside_blocks = ground.crowns.filter(({ block }) => block < 0).length;
  counts.complaints_outside_blocks = ranking.complaintBlock.filter((block) => block < 0).length;
  const severityFrom = { rating: 0, group: 0, none: 0 };
  for (const { from } of stain.severities) severityFrom[from]++;
  for (const [from, count] of Object.entries(severityFrom)) counts[`trees_severity_from_${from}`] = count;
  counts.ledger_cells = ground.cellCount;
  for (const severity of ['error', 'warning', 'note'] as const) {
    counts[`findings_${severity}`] = findings.filter((finding) => finding.severity === severity).length;
  }
  return counts;
}

/** Features that went into a block listed before them, and so are not left out. */
function blockPartsJoined(findings: readonly Finding[]): number {
  const joined = findings.filter(({ code }) => code === 'block-parts-joined');
  return joined.reduce((parts, { facts }) => parts + Number(facts.parts) - 1, 0);
}
