/** The last stage: the outcome in the shape that files, server and sheets read. */
import { figuresAt } from '@crownfall/stain';
import type { Assessment } from '../result.ts';
import { blockResults, ledgerRows } from './block-results.ts';
import { pavementResults } from './pavement-results.ts';
import { countsOf, type RunFacts, runRecord } from './run-record.ts';
import type { Stages } from './stages.ts';
import { blameRows, treeResults } from './tree-results.ts';

/** Puts the stages' outcomes together; reckons nothing. */
export function compose(stages: Stages, facts: Omit<RunFacts, 'counts'>): Assessment {
  const { survey, ground, stain, ranking } = stages;
  const findings = [...stages.findings, ...ground.findings, ...stain.findings];
  const blockOrder = ranking.ranked.map(({ index }) => index);
  const counts = countsOf(stages, findings);
  return {
    title: survey.title,
    season: survey.season,
    units: survey.units,
    blocks: blockResults(ground, stain, ranking, facts.settings),
    trees: treeResults(ground, stain),
    pavement: pavementResults(ground, stain),
    ledger: ledgerRows(ground, stain, blockOrder),
    blame: blameRows(ground, stain, blockOrder),
    total: figuresAt(stain.ledgers.total, 0),
    findings,
    run: runRecord(ground, { ...facts, counts }),
  };
}
