/** Lengths as inventories hold them: `14`, `14"`, `14 in`, `5' 6"`, `35cm`, `10-20`, `>30`, `12/8/6`, `12 1/2`, `~12`. */
import { isMissing, readNumber } from '@crownfall/survey';

/** A length in the unit its column is in; `how` says what was done to the text, when anything was. */
export interface Measure {
  readonly value: number;
  /** In a unit of its own that the text states, as a factor to centimetres. */
  readonly centimetresPerUnit?: number;
  readonly how?: 'unit' | 'range' | 'bound' | 'stems' | 'fraction' | 'about' | 'number';
}

const MARKS: Readonly<Record<string, number>> = {
  '"': 2.54,
  '”': 2.54,
  "''": 2.54,
  in: 2.54,
  inch: 2.54,
  inches: 2.54,
  "'": 30.48,
  '’': 30.48,
  ft: 30.48,
  feet: 30.48,
  foot: 30.48,
  mm: 0.1,
  cm: 1,
  cms: 1,
  m: 100,
  mtr: 100,
  metres: 100,
  meters: 100,
};
const NUMBER = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const WITH_MARK = new RegExp(
  `^(${NUMBER})\\s*(${Object.keys(MARKS)
    .sort((a, b) => b.length - a.length)
    .join('|')})\\.?$`,
  'i',
);
const FEET_INCHES = new RegExp(
  `^(${NUMBER})\\s*(?:'|’|ft|feet|foot)\\s*(${NUMBER})\\s*(?:"|”|''|in|inch|inches)?$`,
  'i',
);
const RANGE = new RegExp(`^(${NUMBER})\\s*(?:-|–|—|to|bis|a)\\s*(${NUMBER})$`, 'i');
const BOUND = new RegExp(`^(?:[<>≤≥]=?|over|under|up to)\\s*(${NUMBER})$|^(${NUMBER})\\s*\\+$`, 'i');
const ABOUT = new RegExp(`^(?:~|≈|c\\.?|ca\\.?|approx\\.?|est\\.?)\\s*(${NUMBER})$`, 'i');
const FRACTION = /^(\d+)?\s*(?:(\d)\/(2|4|8|16)|([¼½¾]))$/;
const STEMS = new RegExp(`^(?:${NUMBER})(?:\\s*[/;+&]\\s*(?:${NUMBER}))+$`);
const VULGAR: Readonly<Record<string, number>> = { '¼': 0.25, '½': 0.5, '¾': 0.75 };

/**
 * Reads a length. A range gives its middle; a bound (`>30`, `30+`) the bound; several stems (`12/8/6`) the diameter of one
 * trunk with the same cross-section, √Σd² (common practice, no source). Zero stands for nothing measured.
 * @example readMeasure('12/9') // { value: 15, how: 'stems' }
 */
export function readMeasure(raw: unknown): Measure | 'missing' | 'zero' | 'unreadable' {
  if (isMissing(raw)) return 'missing';
  const plain = readNumber(raw);
  if (typeof plain === 'object') {
    if (plain.value === 0) return 'zero';
    return plain.value < 0 ? 'unreadable' : { value: plain.value, ...(plain.mended ? { how: 'number' as const } : {}) };
  }
  if (typeof raw !== 'string') return 'unreadable';
  const read = fromText(raw.trim().replace(/\s+/g, ' '));
  if (read === null || !Number.isFinite(read.value) || read.value < 0) return 'unreadable';
  return read.value === 0 ? 'zero' : read;
}

function fromText(text: string): Measure | null {
  const feet = FEET_INCHES.exec(text);
  if (feet) return { value: 12 * numberIn(feet[1]) + numberIn(feet[2]), centimetresPerUnit: 2.54, how: 'unit' };
  const marked = WITH_MARK.exec(text);
  if (marked) {
    return { value: numberIn(marked[1]), centimetresPerUnit: MARKS[marked[2].toLowerCase()], how: 'unit' };
  }
  const range = RANGE.exec(text);
  if (range) return { value: (numberIn(range[1]) + numberIn(range[2])) / 2, how: 'range' };
  const bound = BOUND.exec(text);
  if (bound) return { value: numberIn(bound[1] ?? bound[2]), how: 'bound' };
  const about = ABOUT.exec(text);
  if (about) return { value: numberIn(about[1]), how: 'about' };
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const part = fraction[4] ? VULGAR[fraction[4]] : Number(fraction[2]) / Number(fraction[3]);
    return { value: Number(fraction[1] ?? 0) + part, how: 'fraction' };
  }
  if (!STEMS.test(text)) return null;
  const stems = text.split(/\s*[/;+&]\s*/).map(numberIn);
  return { value: Math.sqrt(stems.reduce((sum, stem) => sum + stem * stem, 0)), how: 'stems' };
}

function numberIn(text: string): number {
  return Number(text.replace(',', '.'));
}
