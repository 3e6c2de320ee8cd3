/** The worker that holds the reckoned project, so that the page never waits for a figure. */
import type { Answer, Ask, Opened, Question, Questions } from './messages.ts';
import { ProjectReckoner } from './project-reckoner.ts';
import { readInput } from './read-input.ts';

let reckoner: ProjectReckoner | null = null;

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
  plan: (settings) => import('./plan-maker.ts').then(({ makePlan }) => makePlan(opened(), settings)),
  preview: ({ treeId, record }) => opened().preview(treeId, record),
  endPreview: () => {
    opened().endPreview();
    return null;
  },
  tree: (treeId) => opened().tree(treeId),
  layerFile: (layer) => opened().layerFile(layer),
};

async function openProject({ place, edits }: Questions['open']['asked']): Promise<Opened> {
  const { input, versions } = await readInput(place, () => tell({ progress: 'reading', share: 0 }));
  const stops = input.findings.filter(({ effect }) => effect === 'stops');
  if (stops.length > 0) return { stopped: true, findings: stops };
  const made = new ProjectReckoner(
    input,
    (stage, done, total) => tell({ progress: stage, share: done / total }),
    versions,
  );
  if (made.stopping.length > 0) return { stopped: true, findings: made.stopping };
  reckoner = made;
  if (edits.length > 0) made.setEdits(edits);
  return { stopped: false, shown: made.shown(), imagery: input.imagery };
}

function opened(): ProjectReckoner {
  if (!reckoner) throw new Error('No project is open.');
  return reckoner;
}
