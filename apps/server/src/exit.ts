/** How the program ends. */
export const EXIT = { done: 0, dataStops: 1, misuse: 2, outage: 3 } as const;

/** Says it on standard error and answers the code. */
export function say(words: string, code: number): number {
  process.stderr.write(`${words}\n`);
  return code;
}
