/** The words of visit sheets in a language. */
import type { Language } from '@crownfall/survey';
import type { VisitWords } from './visit-words.ts';
import { EN } from './visit-words-en.ts';
import { ES } from './visit-words-es.ts';

const WORDS: Readonly<Record<Language, VisitWords>> = { en: EN, es: ES };

export function wordsIn(language: Language): VisitWords {
  return WORDS[language];
}
