/** Every word on the screen, one catalogue for each language; the types make them complete. */
import type { Language } from '../state/app-state.ts';
import { EN, type Words } from './en.ts';
import { ES } from './es.ts';

export type { Words };

export const WORDS: Readonly<Record<Language, Words>> = { en: EN, es: ES };
