/** The server's command line: `PROJECT [options]` serves a project; `people …` keeps the file of those who may use it. */
import { EXIT, say } from './exit.ts';
import { readWish } from './wish.ts';

/** Answers the exit code: 0 done, 1 the data stops the job, 2 wrong use, 3 outage. */
export async function main(argv: string[]): Promise<number> {
  if (argv[0] === 'people') return (await import('./people/keep-people.ts')).keepPeople(argv.slice(1));
  const wish = readWish(argv);
  if (typeof wish === 'string') return say(wish, EXIT.misuse);
  // Not before it is needed: wrong use is answered at once.
  const { serve, whyFailed } = await import('./serve.ts');
  try {
    return await serve(wish);
  } catch (error) {
    return say(`crownfall serve stopped: ${whyFailed(error, wish)}`, EXIT.outage);
  }
}
