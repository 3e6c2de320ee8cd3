/** The last stage: the outcome in the shape that files, server and sheets read. */
import { figuresAt } from '@crownfall/stain';
import { once } from '../once.ts';
import type { Assessment } from '../result.ts';
import { blockResults, ledgerRows } from './block-results.ts';
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
  // Long, and read by files and reports alone.
  const ledger = once(() => ledgerRows(stages, blockOrder));
  const blame = once(() => blameRows(ground, stain, blockOrder));
  return {
    title: survey.title,
    season: survey.season,
    units: survey.units,
    blocks: blockResults(stages, facts.settings, before?.blocks),
    trees: treeResults(stages, before?.trees),
    pavement: pavementResults(ground, stain, before?.pavement),
    get ledger() {
      return ledger();
    },
    get blame() {
      return blame();
    },
    total: withRanges(figuresAt(stain.ledgers.total, 0), drawn?.total),
    findings,
    run: runRecord(ground, { ...facts, counts }),
  };
}
