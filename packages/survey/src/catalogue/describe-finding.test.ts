import { describe, expect, test } from 'vitest';
import { type Fact, FINDING_FACTS, type FindingCode, finding } from '../findings/finding-codes.ts';
import { CATALOGUES, describeFinding, fill } from './describe-finding.ts';
import type { Language } from './words.ts';

const CODES = Object.keys(FINDING_FACTS) as FindingCode[];
const LANGUAGES = Object.keys(CATALOGUES) as Language[];
const PLACE = { layer: 'ratings', file: 'ratings.csv', row: 14, field: 'browned_pct' };

/** Facts of a code under test values: only the needed ones, or all. */
function factsOf(code: FindingCode, which: 'needed' | 'all'): Record<string, Fact> {
  const names = FINDING_FACTS[code].filter((name) => which === 'all' || !name.endsWith('?'));
  return Object.fromEntries(names.map((name) => [name.replace('?', ''), `<${name.replace('?', '')}>`]));
}

const namesIn = (template: string) => [...template.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);

describe.each(LANGUAGES)('the catalogue in %s', (language) => {
  test.each(CODES)('%s fills its facts, with and without those that may be absent', (code) => {
    for (const which of ['needed', 'all'] as const) {
      const facts = factsOf(code, which) as never;
      const words = describeFinding(finding(code, 'warning/left_out', PLACE, facts), language);
      for (const text of Object.values(words)) {
        expect(text).not.toMatch(/[{}[\]…]|undefined/);
        expect(text.length).toBeGreaterThan(3);
      }
      expect(words.remedy).toMatch(/\.$/);
      expect(words.what).not.toMatch(/\.$/);
    }
  });

  test.each(CODES)('%s shows every needed fact and asks for none that it cannot have', (code) => {
    const { what, remedy } = CATALOGUES[language].messages[code];
    const asked = namesIn(what + remedy);
    const place = ['layer', 'file', 'feature', 'row', 'field', 'vertex', 'lon', 'lat'];
    const possible = [...FINDING_FACTS[code].map((name) => name.replace('?', '')), ...place];
    for (const name of asked) expect(possible).toContain(name);
    for (const name of FINDING_FACTS[code]) if (!name.endsWith('?')) expect(asked).toContain(name);
  });
});

describe('describing a finding', () => {
  const browned = finding('value-out-of-range', 'warning/left_out', PLACE, { got: 140.5, expected: '0–100 %' });

  test('what, where, what to do, what the totals did', () => {
    expect(describeFinding(browned, 'en')).toEqual({
      what: 'browned_pct is 140.5; possible is 0–100 %',
      where: 'ratings.csv, row 14, field browned_pct',
      remedy: 'Correct the value; check its unit and its decimal point.',
      effect: 'Left out of the totals.',
      severity: 'warning',
    });
    expect(describeFinding(browned, 'es')).toMatchObject({
      what: 'browned_pct vale 140,5; lo posible es 0–100 %',
      where: 'ratings.csv, fila 14, campo browned_pct',
      severity: 'aviso',
    });
  });

  test('where: feature, position, vertex, coordinates, nothing', () => {
    const at = (where: object) => describeFinding({ ...browned, where }, 'en').where;
    expect(at({ file: 'crowns.geojson', feature: 'T-1', vertex: 3, lon: 13.4, lat: 52.5 })).toBe(
      'crowns.geojson, T-1, vertex 3, longitude 13.400000, latitude 52.500000',
    );
    expect(at({ layer: 'crowns', feature: '#12' })).toBe('crowns, feature no. 12');
    expect(at({})).toBe('the whole project');
  });

  test('kinds of geometry and names of layers are said in the language', () => {
    const drawn = finding('geometry-unexpected', 'warning/left_out', {}, { got: 'line', expected: 'point, area' });
    expect(describeFinding(drawn, 'es').what).toContain('una línea; esta capa admite un punto, un área');
    const missing = finding('layer-missing', 'error/stops', { layer: 'crowns' }, {});
    expect(describeFinding(missing, 'es').what).toBe('El proyecto no tiene la capa copas');
  });

  test.each([
    ['strips', 'it is stored in strips, not tiles', 'está guardada en franjas, no en teselas'],
    ['no-overviews', 'it has no smaller versions of itself', 'no lleva versiones reducidas de sí misma'],
  ])('why an image is slow to look at is said in plain words: %s', (reason, english, spanish) => {
    const slow = finding('imagery-slow-to-stream', 'note/kept', { file: 'town.tif' }, { reason });
    expect(describeFinding(slow, 'en').what).toBe(`The image is slow to look at: ${english}`);
    expect(describeFinding(slow, 'es').what).toContain(spanish);
  });

  test('a code that the catalogue does not know still says something, and further ones are counted', () => {
    const strange = { ...browned, code: 'moon-in-the-way' };
    expect(describeFinding(strange, 'en').what).toBe('Something needs attention: moon-in-the-way');
    const many = { ...browned, facts: { ...browned.facts, more: 17 } };
    expect(describeFinding(many, 'en').what).toMatch(/Further findings of this kind: 17\.$/);
  });

  test('a part in brackets is left away when a fact of it is missing', () => {
    expect(fill('a[ {x}][ {x}{y}]', new Map([['x', '1']]))).toBe('a 1');
  });
});
