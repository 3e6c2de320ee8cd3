/** The words of bloom windows in two languages: for screens, lists and calendar files. */
import type { Language } from './words.ts';

export interface BloomWords {
  /** Groups of the calendar, in the order in which they matter. */
  readonly groups: Readonly<Record<'closing-soon' | 'open' | 'opening' | 'not-known' | 'over', string>>;
  /** How a day is known. */
  readonly from: Readonly<Record<'seen' | 'forecast' | 'assumed', string>>;
  /** Why nothing is forecast. */
  readonly refusals: Readonly<
    Record<'no-temperatures' | 'too-few-seasons' | 'temperatures-missing' | 'heat-not-reached', string>
  >;
  /** `off`: how far each earlier season was from what the others foretold, days. */
  readonly forecast: (opening: string, seasons: number, off: string) => string;
  readonly noForecast: (why: string) => string;
  readonly calendar: (title: string) => string;
  readonly window: (block: string) => string;
  readonly span: (opens: string, closes: string) => string;
  /** Two days with what lies between. */
  readonly range: (from: string, to: string) => string;
  readonly expectation: string;
}

const EN: BloomWords = {
  groups: {
    'closing-soon': 'closing soon',
    open: 'open',
    opening: 'opening',
    'not-known': 'not known',
    over: 'over',
  },
  from: { seen: 'seen', forecast: 'forecast', assumed: 'assumed' },
  refusals: {
    'no-temperatures': 'no file of daily temperatures is given',
    'too-few-seasons':
      'fewer than three earlier seasons have both an opening that two visits enclose and temperatures up to it',
    'temperatures-missing': 'this year’s temperatures are missing',
    'heat-not-reached': 'the heat needed is not reached within the temperatures known',
  },
  forecast: (opening, seasons, off) =>
    `The middle block opens ${opening}: from degree days in ${seasons} earlier seasons, which it would have missed by ${off} days.`,
  noForecast: (why) => `No forecast: ${why}.`,
  calendar: (title) => `Bloom windows – ${title}`,
  window: (block) => `Bloom window: ${block}`,
  span: (opens, closes) => `Opens ${opens}. Ends ${closes}.`,
  range: (from, to) => `${from} to ${to}`,
  expectation: 'An expectation: look at the flowers before anything is done.',
};

const ES: BloomWords = {
  groups: {
    'closing-soon': 'se cierra pronto',
    open: 'abierta',
    opening: 'por abrir',
    'not-known': 'no se sabe',
    over: 'terminada',
  },
  from: { seen: 'visto', forecast: 'pronóstico', assumed: 'supuesto' },
  refusals: {
    'no-temperatures': 'no se dio un archivo de temperaturas diarias',
    'too-few-seasons':
      'menos de tres temporadas anteriores tienen una apertura entre dos visitas y temperaturas hasta ella',
    'temperatures-missing': 'faltan las temperaturas de este año',
    'heat-not-reached': 'con las temperaturas conocidas no se alcanza el calor necesario',
  },
  forecast: (opening, seasons, off) =>
    `La manzana mediana abre ${opening}: por grados día de ${seasons} temporadas anteriores, en las que habría errado ${off} días.`,
  noForecast: (why) => `Sin pronóstico: ${why}.`,
  calendar: (title) => `Ventanas de floración – ${title}`,
  window: (block) => `Ventana de floración: ${block}`,
  span: (opens, closes) => `Abre ${opens}. Termina ${closes}.`,
  range: (from, to) => `${from} a ${to}`,
  expectation: 'Una expectativa: mire las flores antes de hacer nada.',
};

export const BLOOM_WORDS: Readonly<Record<Language, BloomWords>> = { en: EN, es: ES };
