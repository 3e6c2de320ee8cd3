/** The page's end of the reckoning worker. */
import type { Answer, Question, Questions } from './messages.ts';

export interface Reckoner {
  ask<Q extends Question>(question: Q, asked: Questions[Q]['asked']): Promise<Questions[Q]['told']>;
}

export type ReckoningProgress = (stage: string, share: number) => void;

/** `loaded` hears of the addresses that the worker has read from. */
export function startReckoner(
  progress: ReckoningProgress,
  loaded: (addresses: readonly string[]) => void = () => {},
): Reckoner {
  const worker = new Worker(new URL('./reckoner.worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { tell: (told: never) => void; fail: (error: Error) => void }>();
  let next = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    if ('progress' in data) return progress(data.progress, data.share);
    if ('loaded' in data) return loaded(data.loaded);
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ('failed' in data) asker?.fail(new Error(data.failed));
    else asker?.tell(data.told as never);
  });
  worker.addEventListener('error', (event) => {
    for (const { fail } of waiting.values()) fail(new Error(event.message || 'The reckoning stopped unexpectedly.'));
    waiting.clear();
  });
  return {
    ask: (question, asked) =>
      new Promise((tell, fail) => {
        const id = next++;
        waiting.set(id, { tell, fail });
        worker.postMessage({ id, question, asked });
      }),
  };
}
