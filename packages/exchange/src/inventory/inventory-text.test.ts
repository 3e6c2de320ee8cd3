import { describe, expect, test } from 'vitest';
import { readMeasure } from './measure-text.ts';
import { speciesReader } from './species-name.ts';

describe('lengths as they are written', () => {
  // Feet and inches: 0.3048 m and 0.0254 m exactly (international yard and pound agreement, 1959).
  test.each([
    [14, { value: 14 }],
    ['14', { value: 14 }],
    [' 14.5 ', { value: 14.5 }],
    ['14,5', { value: 14.5, how: 'number' }],
    ['14"', { value: 14, centimetresPerUnit: 2.54, how: 'unit' }],
    ['14 in.', { value: 14, centimetresPerUnit: 2.54, how: 'unit' }],
    ['35cm', { value: 35, centimetresPerUnit: 1, how: 'unit' }],
    ["30'", { value: 30, centimetresPerUnit: 30.48, how: 'unit' }],
    ['30 ft', { value: 30, centimetresPerUnit: 30.48, how: 'unit' }],
    [`5' 6"`, { value: 66, centimetresPerUnit: 2.54, how: 'unit' }],
    ['5 ft 6 in', { value: 66, centimetresPerUnit: 2.54, how: 'unit' }],
    ['10-20', { value: 15, how: 'range' }],
    ['6 to 12', { value: 9, how: 'range' }],
    ['>30', { value: 30, how: 'bound' }],
    ['30+', { value: 30, how: 'bound' }],
    ['12/9', { value: 15, how: 'stems' }],
    ['3 + 4 + 12', { value: 13, how: 'stems' }],
    ['12 1/2', { value: 12.5, how: 'fraction' }],
    ['12½', { value: 12.5, how: 'fraction' }],
    ['~12', { value: 12, how: 'about' }],
    ['0', 'zero'],
    [0, 'zero'],
    ['0.0 m', 'zero'],
    ['', 'missing'],
    ['None', 'missing'],
    [null, 'missing'],
    ['-3', 'unreadable'],
    ['large', 'unreadable'],
    ['12 oak', 'unreadable'],
    [Number.POSITIVE_INFINITY, 'unreadable'],
  ])('%j', (raw, read) => {
    expect(readMeasure(raw)).toEqual(read);
  });
});

describe('names as they are written', () => {
  const reader = speciesReader([], {});

  test.each([
    ['Acer platanoides', { host: 'Acer platanoides' }],
    ['  acer   PLATANOIDES ', { host: 'Acer platanoides', mend: 'form' }],
    ["Acer platanoides 'Crimson King'", { host: 'Acer platanoides', cultivar: 'Crimson King' }],
    ['Allianthus altissima', { host: 'Ailanthus altissima', mend: 'spelling' }],
    ['Abies balsamaea', { host: 'Abies balsamea', mend: 'spelling' }],
    ['Melalueca uncinata', { host: 'Melaleuca uncinata', mend: 'spelling' }],
    ['Platanus × acerifolia', { host: 'Platanus x acerifolia', mend: 'form' }],
    ['Platanus X acerifolia', { host: 'Platanus x acerifolia', mend: 'form' }],
    ['Magnolia x soulngeana (M. denudata x liliiflora)', { host: 'Magnolia x soulangeana', mend: 'spelling' }],
    ['Prunus spp.', { host: 'Prunus', mend: 'form' }],
    ['Banksia species', { host: 'Banksia', mend: 'form' }],
    ['Gleditsia triacanthos f. inermis', { host: 'Gleditsia triacanthos f. inermis' }],
    ['Fraxinus angustifolia ssp. Angustifolia', { host: 'Fraxinus angustifolia subsp. angustifolia', mend: 'form' }],
    ['Bucida buceras', { host: 'Bucida buceras' }],
    ['Unknown species', { host: null, without: 'unknown' }],
    ['Eucalyptus rudis & Eucalyptus sideroxylon', { host: null, without: 'several' }],
    ['Vacant site', { host: null, without: 'no tree' }],
    ['STUMP', { host: null, without: 'no tree' }],
    ['None', { host: null, without: 'no name' }],
    ['12', { host: null, without: 'unknown' }],
  ])('%s', (raw, read) => {
    expect(reader.read(raw)).toEqual(read);
  });

  test('a name near to nothing known is left as it is; so is one between two known ones', () => {
    expect(reader.read('Xylosma congestum')).toEqual({ host: 'Xylosma congestum' });
    // One letter from both Thuja and Tsuga; the epithet decides, where there is one.
    expect(reader.read('Thuga')).toEqual({ host: 'Thuga' });
    expect(reader.read('Thuga occidentalis').host).toBe('Thuja occidentalis');
    expect(reader.read('Thuga canadensis').host).toBe('Tsuga canadensis');
  });

  test('what an inventory says ten times is its own usage, and its slips are mended towards it', () => {
    const own = speciesReader(Array(12).fill('Xylosma congestum'), {});
    expect(own.read('Xylosma congestrum')).toEqual({ host: 'Xylosma congestum', mend: 'spelling' });
  });

  test('what a person chose wins', () => {
    const chosen = speciesReader([], {
      'Allianthus altissima': 'Allianthus altissima',
      'Ash, white': 'Fraxinus americana',
      Misc: '',
    });
    expect(chosen.read('Allianthus altissima')).toEqual({ host: 'Allianthus altissima' });
    expect(chosen.read('Ash, white')).toEqual({ host: 'Fraxinus americana', mend: 'spelling' });
    expect(chosen.read('Misc')).toEqual({ host: null, without: 'unknown' });
  });
});
