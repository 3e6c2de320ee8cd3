/** Reckons a project in a thread of its own, so that requests are answered meanwhile. */
import { Worker } from 'node:worker_threads';
import type { Reckoning } from '../figures/make-figures.ts';
import type { ProjectPlace } from '../project/project-place.ts';
import type { MadeSheet, SheetWish } from '../sheets/sheet-maker.ts';

const THREAD = new URL('../../bin/reckoning-thread.js', import.meta.url);

/** What the thread is asked: figures of the project as it is now, or a visit sheet. */
export type ThreadAsk = { readonly ask: 'figures' } | { readonly ask: 'sheet'; readonly wish: SheetWish };

/** What it answers. */
export type ThreadAnswer = Reckoning | MadeSheet | { readonly failed: string };

export class Reckoner {
  readonly #place: ProjectPlace;
  #thread: Worker | null = null;
  /** The thread does one thing at a time. */
  #turn: Promise<unknown> = Promise.resolve();

  constructor(place: ProjectPlace) {
    this.#place = place;
  }

  /** Figures of the project as it is now. Throws when the project cannot be read. */
  async reckon(): Promise<Reckoning> {
    return (await this.#asked({ ask: 'figures' })) as Reckoning;
  }

  /** A visit sheet of the project as it is now: null when there is no such block. Throws when the project cannot be read. */
  async sheet(wish: SheetWish): Promise<Uint8Array | null> {
    return ((await this.#asked({ ask: 'sheet', wish })) as MadeSheet).pdf;
  }

  async close(): Promise<void> {
    await this.#thread?.terminate();
    this.#thread = null;
  }

  #asked(ask: ThreadAsk): Promise<Exclude<ThreadAnswer, { readonly failed: string }>> {
    const answer = this.#turn.then(() => this.#answer(ask));
    this.#turn = answer.catch(() => undefined);
    return answer;
  }

  async #answer(ask: ThreadAsk) {
    const thread = this.#thread ?? new Worker(THREAD, { workerData: this.#place });
    this.#thread = thread;
    const answer = await answerOf(thread, ask).catch((error) => {
      this.#thread = null;
      throw error;
    });
    if ('failed' in answer) throw new Error(answer.failed);
    return answer;
  }
}

function answerOf(thread: Worker, ask: ThreadAsk): Promise<ThreadAnswer> {
  return new Promise((done, fail) => {
    const ended = (code: number): void => fail(new Error(`the reckoning thread ended with ${code}`));
    thread.once('error', fail);
    thread.once('exit', ended);
    thread.once('message', (answer: ThreadAnswer) => {
      thread.off('error', fail);
      thread.off('exit', ended);
      done(answer);
    });
    thread.postMessage(ask);
  });
}
