/** The reckoning thread: reads the project, reckons it, hands the figures over. */
import { parentPort, workerData } from 'node:worker_threads';
import { figuresMemory, makeFigures } from '../figures/make-figures.ts';
import type { ProjectPlace } from '../project/project-place.ts';
import { readPlace } from '../project/read-place.ts';
import type { ThreadAnswer } from './reckoner.ts';

if (parentPort === null) throw new Error('this file is run as a thread');
const port = parentPort;
const place = workerData as ProjectPlace;

port.on('message', async () => {
  const answer = await reckoned().catch((error: unknown): ThreadAnswer => ({ failed: wordsOf(error) }));
  port.postMessage(answer, 'figures' in answer ? figuresMemory(answer.figures) : []);
});

async function reckoned(): Promise<ThreadAnswer> {
  const { input, journal } = await readPlace(place);
  return makeFigures(input, journal);
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
