/** The ranking as a planner would read it aloud: a heading, a table, the totals, what is wrong with the data. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import type { Ranged } from '@crownfall/stain';
import { type Column, layOut } from '../terminal/table.ts';
import { countFindings } from './findings-report.ts';
import { areaText, grouped, percentText, squareFeet } from './quantities.ts';
import { reasonFor } from './reason.ts';

export interface ReportOptions {
  readonly rows: number;
  readonly out: string;
  /** Characters to a line. */
  readonly width: number;
}

export function rankingReport(assessment: Assessment, { rows, out, width }: ReportOptions): string {
  const shown = assessment.blocks.slice(0, rows);
  const more = assessment.blocks.length - shown.length;
  const table = layOut(
    columns(assessment),
    shown.map((block) => row(block, assessment)),
    width,
  );
  return [
    ...heading(assessment),
    '',
    ...table,
    ...(more > 0 ? [`… and ${more} more blocks, in ${out}/blocks.geojson`] : []),
    '',
    ...totals(assessment),
    ...outsideBlocks(assessment),
    `Findings: ${countFindings(assessment.findings)}`,
    `Written to ${out}.`,
  ].join('\n');
}

function heading({ title, season, run }: Assessment): string[] {
  const asOf = run.asOf === null ? '' : `, as of ${run.asOf}`;
  const first = `${title} – blocks by stained pavement – season ${season}${asOf}`;
  if (run.calibrated) return [first];
  const k = grouped(run.settings.dose_coefficient, 2);
  return [
    first,
    `Uncalibrated: the dose coefficient is assumed (k = ${k}). Compare blocks; do not quote single figures.`,
  ];
}

function columns({ units, run }: Assessment): Column[] {
  return [
    { title: 'rank', align: 'right' },
    { title: 'block', align: 'left' },
    { title: 'stained m²', align: 'right' },
    ...(run.draws > 0 ? [{ title: '80 % range', align: 'right' } as const] : []),
    ...(units === 'us' ? [{ title: 'stained ft²', align: 'right' } as const] : []),
    { title: 'of pavement', align: 'right' },
    { title: 'trees', align: 'right' },
    { title: 'rated', align: 'right' },
    ...(run.draws > 0 ? [{ title: `top ${run.settings.priority.top_n}`, align: 'right' } as const] : []),
    { title: 'why', align: 'left' },
  ];
}

function row(block: BlockResult, { units }: Assessment): string[] {
  const stainedM2 = block.stainedM2.value;
  return [
    String(block.rank),
    block.name === null ? block.blockId : `${block.blockId} ${block.name}`,
    grouped(stainedM2, 1),
    ...(block.stainedM2.range80 === null ? [] : [rangeText(block.stainedM2.range80)]),
    ...(units === 'us' ? [grouped(squareFeet(stainedM2), 0)] : []),
    percentText(stainedM2 / block.pavementM2),
    String(block.trees),
    String(block.treesRated),
    ...(block.topShare === null ? [] : [percentText(block.topShare)]),
    reasonFor(block, units),
  ];
}

function totals({ total, units, blocks, trees, run }: Assessment): string[] {
  const rated = trees.filter((tree) => tree.severityFrom === 'rating').length;
  const share = percentText(total.stainedM2.value / total.pavementM2);
  return [
    `In all ${areaText(total.stainedM2.value, units)} of pavement expected to show stain, ${share} of ${areaText(total.pavementM2, units)};`,
    `${areaText(total.driplineM2, units)} lies under crowns, ${areaText(total.falloutM2, units)} under crowns and their drift.`,
    `${grouped(trees.length, 0)} trees, ${grouped(rated, 0)} rated; ${grouped(blocks.length, 0)} blocks.${run.draws === 0 ? ' No ranges were drawn.' : ''}`,
    ...rangeOfTotal(total.stainedM2, run),
  ];
}

/** How sure the total is, and what makes the ranges. */
function rangeOfTotal({ range80, range95 }: Ranged, { draws, seed, settings }: Assessment['run']): string[] {
  if (range80 === null || range95 === null) return [];
  return [
    `The total lies within ${rangeText(range80)} m² in 80 % and ${rangeText(range95)} m² in 95 % of ${grouped(draws, 0)} draws (seed ${seed}) over what is not`,
    `known: k, severities, drift, outlines. "top ${settings.priority.top_n}" is the share of the draws in which a block is among the first ${settings.priority.top_n}.`,
  ];
}

/** `12.3–45.6`, whole square metres from 100 up. */
function rangeText([lo, hi]: readonly [number, number]): string {
  const decimals = hi < 99.95 ? 1 : 0;
  return `${grouped(lo, decimals)}–${grouped(hi, decimals)}`;
}

/** What the ranking does not show, because it lies in no block; silent when there is nothing. */
function outsideBlocks({ ledger, trees, units, total }: Assessment): string[] {
  const outside = ledger.filter((row) => row.blockId === null);
  const stainedM2 = outside.reduce((sum, row) => sum + row.stainedM2.value, 0);
  const standing = trees.filter((tree) => tree.blockId === null).length;
  if (standing === 0 && stainedM2 === 0) return [];
  const share = percentText(stainedM2 / total.stainedM2.value);
  return [
    `Not ranked: ${areaText(stainedM2, units)} of it (${share}) lies in no block, and ${grouped(standing, 0)} trees stand in none.`,
  ];
}
