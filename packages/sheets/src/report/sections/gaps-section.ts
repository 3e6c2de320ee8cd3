/** What the report does not know, and what the totals did about it. */
import { describeFinding, summariseFindings } from '@crownfall/survey';
import { grouped, percentText } from '../../quantities.ts';
import type { Part, Run, Table } from '../content.ts';
import type { Reading } from '../reading.ts';
import { blockName } from './ranking-section.ts';

/** Less than this share of rated trees makes a block a gap. */
const FEW_RATED = 0.5;
const MOST_BLOCKS = 12;
const MOST_FINDINGS = 30;
const LAYERS = ['quadrats', 'complaints', 'bloom', 'water', 'sites', 'streets'] as const;

export function gapsSection(reading: Reading): readonly Part[] {
  const { words, assessment } = reading;
  return [
    { part: 'heading', level: 2, text: words.gaps.title },
    { part: 'list', items: gapLines(reading) },
    ...(assessment.findings.length === 0
      ? [{ part: 'paragraph', text: [words.gaps.noFindings] } as const]
      : [findingsTable(reading)]),
  ];
}

function gapLines({ words, assessment }: Reading): readonly Run[] {
  const { trees, run, blocks } = assessment;
  const { gaps } = words;
  const count = (from: string) => trees.filter(({ severityFrom }) => severityFrom === from).length;
  const unrated = trees.length - count('rating');
  const few = blocks.filter((block) => block.trees > 0 && block.treesRated / block.trees < FEW_RATED);
  const derived = (run.counts.blocks_from_streets ?? 0) + (run.counts.blocks_from_cells ?? 0);
  const lines = [
    unrated > 0 ? gaps.unrated(grouped(unrated), grouped(trees.length)) : gaps.allRated(grouped(trees.length)),
    ...(count('none') > 0 ? [gaps.unknown(grouped(count('none')))] : []),
    ...(few.length > 0 ? [`${gaps.fewRated(percentText(FEW_RATED))}: ${listed(few.map(blockName))}.`] : []),
    ...LAYERS.filter((layer) => (run.counts[`${layer}_used`] ?? 0) === 0).map((layer) => gaps.noLayer[layer]),
    ...(derived > 0 ? [gaps.derived(grouped(derived))] : []),
  ];
  return lines.map((line) => [line]);
}

function listed(names: readonly string[]): string {
  const shown = names.slice(0, MOST_BLOCKS).join(', ');
  return names.length > MOST_BLOCKS ? `${shown}, … (${grouped(names.length)})` : shown;
}

function findingsTable({ words, assessment, language }: Reading): Table {
  const { gaps } = words;
  const groups = summariseFindings(assessment.findings, 1);
  return {
    part: 'table',
    caption: gaps.findings,
    columns: [
      { title: gaps.what, align: 'left', weight: 4 },
      { title: gaps.where, align: 'left', weight: 2.6 },
      { title: gaps.count, align: 'right', weight: 0.8 },
      { title: gaps.effect, align: 'left', weight: 2.4 },
    ],
    rows: groups.slice(0, MOST_FINDINGS).map(({ examples, occurrences }) => {
      const said = describeFinding(examples[0], language);
      return [[said.what], [said.where], [grouped(occurrences)], [said.effect]];
    }),
  };
}
