/** Turns a finding into what a person reads: what it is, where it is, what to do, and what the totals did with it. */
import type { Finding, Place } from '@crownfall/geometry';
import type { Fact } from '../findings/finding-codes.ts';
import { EN } from './en.ts';
import { ES } from './es.ts';
import type { Catalogue, Language, Words } from './words.ts';

export interface FindingWords {
  readonly what: string;
  /** `ratings.csv, row 14, field browned_pct`. */
  readonly where: string;
  readonly remedy: string;
  readonly effect: string;
  /** `error`, `warning` or `note`, in the language. */
  readonly severity: string;
}

export const CATALOGUES: Readonly<Record<Language, Catalogue>> = { en: EN, es: ES };

/**
 * The words of a finding in a language. A code that the catalogue does not know is described by its code. The same on
 * every machine: no locale of the machine is asked.
 * @example describeFinding(finding, 'en').what // 'browned_pct is 140; possible is 0–100 %'
 */
export function describeFinding(finding: Finding, language: Language): FindingWords {
  const catalogue = CATALOGUES[language];
  const messages: Readonly<Record<string, Words>> = catalogue.messages;
  const words = Object.hasOwn(messages, finding.code) ? messages[finding.code] : catalogue.unknown;
  const known = spokenFacts(finding, catalogue);
  const more = finding.facts.more === undefined ? '' : ` ${fill(catalogue.more, known)}`;
  return {
    what: `${sentence(fill(words.what, known))}${more}`,
    where: placeText(finding.where, catalogue),
    remedy: fill(words.remedy, known),
    effect: catalogue.effects[finding.effect],
    severity: catalogue.severities[finding.severity],
  };
}

/**
 * Fills `{name}` from the facts; a part in `[…]` is left away when one of its facts is not known. A fact missing outside
 * such a part shows as `…`.
 */
export function fill(template: string, facts: ReadonlyMap<string, string>): string {
  const names = (part: string): string[] => [...part.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
  const whole = template.replace(/\[([^[\]]*)\]/g, (_, part: string) =>
    names(part).every((name) => facts.has(name)) ? part : '',
  );
  return whole.replace(/\{(\w+)\}/g, (_, name: string) => facts.get(name) ?? '…');
}

function spokenFacts(finding: Finding, catalogue: Catalogue): Map<string, string> {
  const spoken = new Map<string, string>([['code', finding.code]]);
  for (const [name, value] of Object.entries(finding.where)) spoken.set(name, spokenFact(value, catalogue));
  const { layer } = finding.where;
  if (layer !== undefined) spoken.set('layer', layerName(layer, catalogue));
  for (const [name, value] of Object.entries(finding.facts)) spoken.set(name, spokenFact(value, catalogue));
  const { other, reason, got, expected } = finding.facts;
  if (other !== undefined) spoken.set('other', layerName(String(other), catalogue));
  if (reason !== undefined) spoken.set('reason', term(reason, catalogue));
  if (finding.code === 'geometry-unexpected') {
    spoken.set('got', term(got, catalogue));
    spoken.set('expected', term(expected, catalogue));
  }
  return spoken;
}

function spokenFact(value: Fact, catalogue: Catalogue): string {
  return typeof value === 'number' ? String(value).replace('.', catalogue.decimal) : String(value);
}

/** A word of the program, or a list of them, in the language. */
function term(value: Fact, catalogue: Catalogue): string {
  const one = (word: string): string => catalogue.terms[word] ?? word;
  return String(value).split(', ').map(one).join(', ');
}

function layerName(layer: string, catalogue: Catalogue): string {
  const names: Readonly<Record<string, string>> = catalogue.layers;
  return names[layer] ?? layer;
}

function placeText(where: Place, catalogue: Catalogue): string {
  const { place } = catalogue;
  const say = (template: string, value: string | number): string => fill(template, new Map([['value', String(value)]]));
  const parts: string[] = [];
  if (where.file !== undefined && where.file !== '') parts.push(where.file);
  else if (where.layer !== undefined) parts.push(layerName(where.layer, catalogue));
  if (where.row !== undefined) parts.push(say(place.row, where.row));
  if (where.feature !== undefined) {
    const position = /^#\d+$/.test(where.feature);
    parts.push(position ? say(place.position, where.feature.slice(1)) : say(place.feature, where.feature));
  }
  if (where.field !== undefined) parts.push(say(place.field, where.field));
  if (where.vertex !== undefined) parts.push(say(place.vertex, where.vertex));
  if (where.lon !== undefined && where.lat !== undefined) {
    const degrees = (value: number): string => value.toFixed(6).replace('.', catalogue.decimal);
    parts.push(
      fill(
        place.lonlat,
        new Map([
          ['lon', degrees(where.lon)],
          ['lat', degrees(where.lat)],
        ]),
      ),
    );
  }
  return parts.length === 0 ? place.nowhere : parts.join(', ');
}

/** The first letter as a capital, unless the sentence opens with a field name or a quotation. */
function sentence(text: string): string {
  return /^[a-záéíóú]+ /.test(text) ? text[0].toUpperCase() + text.slice(1) : text;
}
