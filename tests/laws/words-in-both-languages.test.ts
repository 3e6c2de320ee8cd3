/** Law: a sentence says the same in both languages: whatever figure or name the one shows, the other shows too. */
import { BLOOM_WORDS } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { RATER_WORDS } from '../../apps/cli/src/reports/rater-words.ts';
import { SEASON_WORDS } from '../../apps/cli/src/reports/season-words.ts';
import { CHARTS_EN } from '../../apps/viewer/src/language/en-charts.ts';
import { PLAN_EN } from '../../apps/viewer/src/language/en-plan.ts';
import { PLANNING_EN } from '../../apps/viewer/src/language/en-planning.ts';
import { CHARTS_ES } from '../../apps/viewer/src/language/es-charts.ts';
import { PLAN_ES } from '../../apps/viewer/src/language/es-plan.ts';
import { PLANNING_ES } from '../../apps/viewer/src/language/es-planning.ts';

const CATALOGUES = {
  bloom: BLOOM_WORDS,
  raters: RATER_WORDS,
  season: SEASON_WORDS,
  charts: { en: CHARTS_EN, es: CHARTS_ES },
  plan: { en: PLAN_EN, es: PLAN_ES },
  planning: { en: PLANNING_EN, es: PLANNING_ES },
};

/** Every sentence by its path, its places filled with marks that can be found again. */
function sentences(words: unknown, path: string): [string, string][] {
  if (typeof words === 'string') return [[path, words]];
  if (typeof words === 'function') {
    const marks = Array.from({ length: words.length }, (_, i) => `«${i}»`);
    return [[path, String(words(...marks))]];
  }
  return Object.entries(words as object).flatMap(([name, part]) => sentences(part, `${path}.${name}`));
}

const marksOf = (text: string): string[] => [...new Set(text.match(/«\d+»/g))].sort();

describe.each(Object.entries(CATALOGUES))('%s', (name, { en, es }) => {
  const [english, spanish] = [new Map(sentences(en, name)), new Map(sentences(es, name))];

  test('both have every sentence, with the same figures and names in it', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort());
    for (const [path, text] of english) expect(marksOf(spanish.get(path) ?? ''), path).toEqual(marksOf(text));
  });

  test('no sentence of several words was left in English', () => {
    for (const [path, text] of english)
      if (text.replace(/«\d+»/g, '').split(/\s+/).length > 3) expect(spanish.get(path), path).not.toBe(text);
  });
});
