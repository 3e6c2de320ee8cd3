/** Reckons a project in a thread of its own, so that requests are answered meanwhile. */
import { Worker } from 'node:worker_threads';
import type { Reckoning } from '../figures/make-figures.ts';
import type { ProjectPlace } from '../project/project-place.ts';

const THREAD = new URL('../../bin/reckoning-thread.js', import.meta.url);

/** What the thread answers to each request. */
export type ThreadAnswer = Reckoning | { readonly failed: string };

export class Reckoner {
  readonly #place: ProjectPlace;
  #thread: Worker | null = null;

  constructor(place: ProjectPlace) {
    this.#place = place;
  }

  /** Figures of the project as it is now. One call at a time. Throws when the project cannot be read. */
  async reckon(): Promise<Reckoning> {
    const thread = this.#thread ?? new Worker(THREAD, { workerData: this.#place });
    this.#thread = thread;
    const answer = await answerOf(thread).catch((error) => {
      this.#thread = null;
      throw error;
    });
    if ('failed' in answer) throw new Error(answer.failed);
    return answer;
  }

  async close(): Promise<void> {
    await this.#thread?.terminate();
    this.#thread = null;
  }
}

function answerOf(thread: Worker): Promise<ThreadAnswer> {
  return new Promise((done, fail) => {
    const ended = (code: number): void => fail(new Error(`the reckoning thread ended with ${code}`));
    thread.once('error', fail);
    thread.once('exit', ended);
    thread.once('message', (answer: ThreadAnswer) => {
      thread.off('error', fail);
      thread.off('exit', ended);
      done(answer);
    });
    thread.postMessage('reckon');
  });
}
