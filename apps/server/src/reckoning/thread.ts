/** The reckoning thread: reads the project, reckons it, hands over figures or sheets. */
import { parentPort, workerData } from 'node:worker_threads';
import { figuresMemory, makeFigures } from '../figures/make-figures.ts';
import type { ProjectPlace } from '../project/project-place.ts';
import { readPlace } from '../project/read-place.ts';
import { SheetMaker } from '../sheets/sheet-maker.ts';
import type { ThreadAnswer, ThreadAsk } from './reckoner.ts';

if (parentPort === null) throw new Error('this file is run as a thread');
const port = parentPort;
const place = workerData as ProjectPlace;
/** A reckoned project is kept only where sheets are asked for, and until it changes. */
let sheets: SheetMaker | null = null;

port.on('message', async (ask: ThreadAsk) => {
  const answer = await answered(ask).catch((error: unknown): ThreadAnswer => ({ failed: wordsOf(error) }));
  port.postMessage(answer, 'figures' in answer ? figuresMemory(answer.figures) : []);
});

async function answered(ask: ThreadAsk): Promise<ThreadAnswer> {
  if (ask.ask === 'figures') {
    sheets = null;
    const { input, journal } = await readPlace(place);
    return makeFigures(input, journal);
  }
  sheets ??= new SheetMaker((await readPlace(place)).input);
  return sheets.sheet(ask.wish);
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
