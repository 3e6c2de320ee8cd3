/** The worker that holds the reckoned project, so that the page never waits for a figure. */
import type { Begun, Progress } from '@crownfall/assessment';
import type { ProjectInput } from '@crownfall/survey';
import type { ProjectPlace } from '../project/project-files.ts';
import type { Answer, Ask, Opened, Question, Questions } from './messages.ts';
import { ProjectReckoner } from './project-reckoner.ts';
import { readInput } from './read-input.ts';

let reckoner: ProjectReckoner | null = null;
let place: ProjectPlace | null = null;

const tell = (answer: Answer): void => postMessage(answer);

self.addEventListener('message', (event: MessageEvent<Ask>) => {
  const { id, question, asked } = event.data;
  Promise.resolve()
    .then(() => (ANSWERS[question] as (asked: unknown) => unknown)(asked))
    .then((told) => tell({ id, told }))
    .catch((error: unknown) => tell({ id, failed: error instanceof Error ? error.message : String(error) }));
});

const ANSWERS: {
  [Q in Question]: (asked: Questions[Q]['asked']) => Questions[Q]['told'] | Promise<Questions[Q]['told']>;
} = {
  open: openProject,
  setEdits: (edits) => opened().setEdits(edits),
  follow: ({ records, edits }) => opened().follow(records, edits),
  weigh: (weighing) => {
    opened().weigh(weighing);
    return null;
  },
  season: () => opened().earlierSeason(),
  calibration: () => import('./calibration-shown.ts').then(({ calibrationShown }) => calibrationShown(opened().seen())),
  sheets: (wish) => import('./sheet-maker.ts').then(({ makeSheets }) => makeSheets(opened().seen(), wish)),
  report: (wish) => import('./report-maker.ts').then(({ makeReport }) => makeReport(opened().seen(), wish)),
  plan: (wish) => import('./plan-maker.ts').then(({ makePlan }) => makePlan(opened(), place, wish)),
  water: (blockId) => import('./plan-maker.ts').then(({ waterAbout }) => waterAbout(blockId)),
  preview: ({ treeId, record }) => opened().preview(treeId, record),
  endPreview: () => {
    opened().endPreview();
    return null;
  },
  tree: (treeId) => opened().tree(treeId),
  layerFile: (layer) => opened().layerFile(layer),
};

async function openProject({ place: from, edits }: Questions['open']['asked']): Promise<Opened> {
  const { input, versions } = await readInput(from, () => tell({ progress: 'reading', share: 0 }));
  tell({ loaded: performance.getEntriesByType('resource').map(({ name }) => name) });
  const stops = input.findings.filter(({ effect }) => effect === 'stops');
  if (stops.length > 0) return { stopped: true, findings: stops };
  const progress: Progress = (stage, done, total) => tell({ progress: stage, share: done / total });
  const made = new ProjectReckoner(input, progress, versions, await begunFor(input, progress));
  if (made.stopping.length > 0) return { stopped: true, findings: made.stopping };
  reckoner = made;
  place = from;
  if (edits.length > 0) made.setEdits(edits);
  return { stopped: false, shown: made.shown(), imagery: input.imagery };
}

/** Below this many pieces starting workers takes longer than it saves. */
const PIECES_FOR_THREADS = 2000;

async function begunFor(input: ProjectInput, progress: Progress): Promise<Begun | undefined> {
  if ((input.layers.pavement?.features.length ?? 0) < PIECES_FOR_THREADS) return undefined;
  return (await import('./begun-in-threads.ts')).begunInThreads(input, progress);
}

function opened(): ProjectReckoner {
  if (!reckoner) throw new Error('No project is open.');
  return reckoner;
}
