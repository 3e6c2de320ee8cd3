/** Gives the next item to whoever reads, and waits until it was taken. */
export type Give<T> = (item: T) => Promise<void>;

/**
 * Turns work that gives items into an iterator that takes them, one at a time: the work goes on only while the reader
 * waits for more. What the work throws is thrown to the reader; a reader that stops early ends the work at its next item.
 */
export async function* handedOver<T>(work: (give: Give<T>) => Promise<void>): AsyncGenerator<T> {
  const waiting: { item: T; taken: () => void; refused: (reason: Error) => void }[] = [];
  let wake = (): void => {};
  let done = false;
  let failure: { readonly error: unknown } | null = null;
  let left = false;

  const give: Give<T> = (item) =>
    new Promise((taken, refused) => {
      if (left) refused(new ReaderLeft());
      else waiting.push({ item, taken, refused });
      wake();
    });
  const running = work(give)
    .catch((error: unknown) => {
      failure = { error };
    })
    .finally(() => {
      done = true;
      wake();
    });

  try {
    while (true) {
      const next = waiting.shift();
      if (next) {
        yield next.item;
        next.taken();
      } else if (done) break;
      else {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    }
  } finally {
    left = true;
    for (const { refused } of waiting) refused(new ReaderLeft());
    if (!done) await running;
  }
  const failed = failure as { readonly error: unknown } | null;
  if (failed) throw failed.error;
}

/** The reader wants no more: not a failure, and never seen by it. */
class ReaderLeft extends Error {}
