/** A project read and reckoned in one go, for jobs that go on from its stages. */
import { isStopped, type Reckoned, reckonProject, type Stopped } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { progressOn } from '../terminal/progress.ts';

export interface ReckonedHere {
  readonly title: string;
  readonly outcome: Reckoned | Stopped;
}

/** Reads and reckons, telling the progress on stderr. */
export async function reckonedHere(project: string, quiet: boolean): Promise<ReckonedHere> {
  const progress = progressOn(process.stderr, quiet);
  try {
    progress.stage(`Reading ${project}`, 0);
    const input = await readProject(project);
    progress.stage('Reckoning stained pavement', 0.3);
    const outcome = reckonProject(input);
    if (!isStopped(outcome)) progress.stage('Reckoned', 1);
    return { title: input.title || project, outcome };
  } finally {
    progress.end();
  }
}
