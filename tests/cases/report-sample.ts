/** The sample town's report and what it is made from, reckoned once for the tests of reports. */
import {
  drawPart,
  drawWorkOf,
  finishedAssessment,
  gatherDraws,
  isStopped,
  planWork,
  reckonProject,
  reviewSeason,
} from '@crownfall/assessment';
import { planFiles, resultFiles } from '@crownfall/exchange';
import { readProject } from '@crownfall/exchange/node';
import { highsSolver, weightShiftToChangeTop } from '@crownfall/priority';
import type { ReportInput } from '@crownfall/sheets/report';
import { readSurvey } from '@crownfall/survey';
import loadHighs from 'highs';
import { seasonJson } from '../../apps/cli/src/reports/season-report.ts';
import { SAMPLE } from '../journeys/crownfall-process.ts';

/** Enough for ranges; the laws tested do not depend on how many. */
const DRAWS = 100;

export interface SampleReport {
  readonly input: ReportInput;
  /** Texts of the files that `reckon`, `plan` and `season --json` write for the same run, by name. */
  readonly files: ReadonlyMap<string, string>;
}

export async function sampleReport(): Promise<SampleReport> {
  const project = await readProject(SAMPLE);
  const reckoned = reckonProject(project);
  if (isStopped(reckoned)) throw new Error('the sample town cannot be reckoned');
  const work = drawWorkOf(reckoned, 1);
  const drawn = gatherDraws(work, [drawPart(work, 0, DRAWS)]);
  const assessment = finishedAssessment(reckoned, { seed: 1, drawn });
  const season = reviewSeason(project, { draws: DRAWS });
  if (isStopped(season)) throw new Error('the sample town cannot be followed up');
  const addresses = assessment.trees
    .filter((_, i) => i % 10 === 0)
    .map(({ at }, i) => ({
      address: `${i + 1} Invented Street`,
      geometry: { kind: 'point', points: Float64Array.of(at.lon, at.lat + 1e-4) } as const,
    }));
  const plan = planWork(reckoned, { solve: highsSolver(await loadHighs()), draws: DRAWS, addresses });
  if (!plan.feasible) throw new Error('the sample town cannot be planned');
  const shifts = weightShiftToChangeTop(assessment.blocks, reckoned.settings.priority.top_n);
  const { survey } = readSurvey(project);
  const run = { program: 'crownfall test', inputs: project.sources };
  const facts = { inputs: project.sources, versions: {}, timings: {} };
  const texts = [...resultFiles(assessment, facts), ...planFiles(plan)].map(
    ({ name, text }) => [name, [...(text as Iterable<string>)].join('')] as const,
  );
  return {
    input: { assessment, shifts, season, plan, records: survey, run },
    files: new Map([...texts, ['season --json', JSON.stringify(seasonJson(season))]]),
  };
}
