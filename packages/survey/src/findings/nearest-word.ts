/**
 * Nearest valid word to one that is not known, for "did you mean …?".
 */

/**
 * The word of `words` at the smallest edit distance from `got`, when that is at most a third of its length (and at least
 * one edit is allowed); the first listed wins a tie; `undefined` when none is near.
 * Distance: optimal string alignment (insert, delete, replace, swap neighbours), case ignored.
 * @example nearestWord('drift_ring', ['drift_rings', 'wind']) // 'drift_rings'
 */
export function nearestWord(got: string, words: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(got.length / 3)) + 1;
  for (const word of words) {
    const distance = editDistance(got.toLowerCase(), word.toLowerCase());
    if (distance < bestDistance) {
      best = word;
      bestDistance = distance;
    }
  }
  return best;
}

/**
 * Insertions, deletions, replacements and swaps of neighbours that turn one word into the other (optimal string alignment).
 * @example editDistance('melalueca', 'melaleuca') // 1
 */
export function editDistance(a: string, b: string): number {
  let twoBack: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let distance = Math.min(previous[j] + 1, current[j - 1] + 1, previous[j - 1] + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        distance = Math.min(distance, twoBack[j - 2] + 1);
      current.push(distance);
    }
    twoBack = previous;
    previous = current;
  }
  return previous[b.length];
}
