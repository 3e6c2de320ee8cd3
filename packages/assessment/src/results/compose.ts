/** The last stage: the outcome in the shape that files, server and sheets read. */
import { figuresAt } from '@crownfall/stain';
import type { Assessment } from '../result.ts';
import { blockResults, ledgerRows } from './block-results.ts';
import { keptList } from './kept.ts';
import { pavementResults } from './pavement-results.ts';
import { countsOf, type RunFacts, runRecord } from './run-record.ts';
import type { Stages } from './stages.ts';
import { blameRows, treeResults } from './tree-results.ts';
import { withRanges } from './with-ranges.ts';

/** Puts the stages' outcomes together; reckons nothing. Results that are as they were `before` are the same objects. */
export function compose(stages: Stages, facts: Omit<RunFacts, 'counts'>, before?: Assessment): Assessment {
  const { survey, ground, stain, ranking, drawn } = stages;
  const findings = [...stages.findings, ...ground.findings, ...stain.findings];
  const blockOrder = ranking.ranked.map(({ index }) => index);
  const counts = countsOf(stages, findings);
  return {
    title: survey.title,
    season: survey.season,
    units: survey.units,
    blocks: keptList(before?.blocks, blockResults(stages, facts.settings), ({ blockId }) => blockId),
    trees: keptList(before?.trees, treeResults(stages), ({ treeId }) => treeId),
    pavement: keptList(before?.pavement, pavementResults(ground, stain), ({ pavementId }) => pavementId),
    ledger: ledgerRows(stages, blockOrder),
    blame: blameRows(ground, stain, blockOrder),
    total: withRanges(figuresAt(stain.ledgers.total, 0), drawn?.total),
    findings,
    run: runRecord(ground, { ...facts, counts }),
  };
}
