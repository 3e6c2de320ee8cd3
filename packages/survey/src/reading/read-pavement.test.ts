import { describe, expect, test } from 'vitest';
import { box, features, line, point, told } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { readPavement } from './read-pavement.ts';

const read = (...list: Parameters<typeof features>[1][]) =>
  readPavement(features('pavement.geojson', ...list), DEFAULT_SETTINGS);

describe('pavement', () => {
  test('areas, and lines with a width', () => {
    const { records, findings } = read(
      [box(0, 0, 1), { pavement_id: 'P1', kind: 'Plaza', surface: 'pavers', foot_traffic: 'high' }],
      [line(0, 0, 1, 1), { pavement_id: 'P2', kind: ' sidewalk ', width_m: '2,0' }],
    );
    expect(records[0]).toMatchObject({
      kind: 'plaza',
      surface: 'pavers',
      footTraffic: 'high',
      shape: { from: 'area' },
    });
    expect(records[1]).toMatchObject({ kind: 'sidewalk', surface: 'other', shape: { widthM: 2, widthFrom: 'given' } });
    expect(told(findings)).toEqual(['number-mended note/mended P2 width_m']);
  });

  test('widths left blank take the default of their kind, told once per kind', () => {
    const { records, findings } = read(
      [line(0, 0, 1, 1), { pavement_id: 'A', kind: 'sidewalk' }],
      [line(0, 0, 2, 1), { pavement_id: 'B', kind: 'sidewalk', width_m: null }],
      [line(0, 0, 3, 1), { pavement_id: 'C', kind: 'carriageway', width_m: '' }],
    );
    expect(records.map((piece) => piece.shape)).toMatchObject([{ widthM: 1.5 }, { widthM: 1.5 }, { widthM: 6 }]);
    expect(findings.map((finding) => finding.facts)).toEqual([
      { kind: 'sidewalk', width_m: 1.5, count: 2 },
      { kind: 'carriageway', width_m: 6, count: 1 },
    ]);
    expect(told(findings)).toEqual([
      'width-defaulted note/assumed A width_m',
      'width-defaulted note/assumed C width_m',
    ]);
  });

  test('an unknown kind is other, not guessed; told once per word', () => {
    const { records, findings } = read(
      [box(0, 0, 1), { pavement_id: 'A', kind: 'footway' }],
      [box(1, 0, 1), { pavement_id: 'B', kind: 'footway' }],
      [box(2, 0, 1), { pavement_id: 'C', kind: 'sidewalks' }],
    );
    expect(records.map((piece) => piece.kind)).toEqual(['other', 'other', 'other']);
    expect(told(findings)).toEqual(['unknown-word warning/assumed A kind', 'unknown-word warning/assumed C kind']);
    expect(findings[0].facts).toMatchObject({ got: 'footway', read_as: 'other', count: 2 });
    expect(findings[1].facts).toMatchObject({ nearest: 'sidewalk' });
  });

  test('a missing kind is other, told once', () => {
    const { records, findings } = read([box(0, 0, 1), { pavement_id: 'A' }], [box(1, 0, 1), { pavement_id: 'B' }]);
    expect(records.map((piece) => piece.kind)).toEqual(['other', 'other']);
    expect(findings.map((finding) => finding.facts)).toEqual([{ read_as: 'other', count: 2 }]);
  });

  test('a width that cannot be, a point, a line of one vertex are left out', () => {
    const { records, findings } = read(
      [line(0, 0, 1, 1), { pavement_id: 'A', kind: 'path', width_m: -1 }],
      [point(0, 0), { pavement_id: 'B', kind: 'path' }],
      [line(0, 0), { pavement_id: 'C', kind: 'path', width_m: 2 }],
    );
    expect(records).toEqual([]);
    expect(told(findings)).toEqual([
      'value-out-of-range warning/left_out A width_m',
      'geometry-unexpected warning/left_out B',
      'line-too-short warning/left_out C',
      'layer-empty error/stops',
    ]);
  });

  test('pieces of one id with different shapes are kept apart, the same piece twice is one', () => {
    const { records, findings } = read(
      [line(0, 0, 1, 1), { pavement_id: 'P', kind: 'path', width_m: 2 }],
      [line(0, 0, 1, 1), { pavement_id: 'P', kind: 'path', width_m: 3 }],
      [line(1, 1, 0, 0), { pavement_id: 'P', kind: 'path', width_m: 2 }],
    );
    expect(records.map((piece) => piece.pavementId)).toEqual(['P', 'P~2']);
    expect(told(findings)).toEqual([
      'id-duplicate warning/kept P pavement_id',
      'feature-repeated warning/left_out P pavement_id',
    ]);
  });
});
