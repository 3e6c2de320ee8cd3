import { expect, test } from 'vitest';
import { finding } from './finding-codes.ts';
import { nearestWord } from './nearest-word.ts';
import { summariseFindings } from './summarise-findings.ts';

const unknown = (row: number) =>
  finding('rating-of-unknown-tree', 'warning/left_out', { layer: 'ratings', row }, { got: `X${row}` });

test('findings are grouped by code and layer, gravest first, and counted', () => {
  const widths = finding(
    'width-defaulted',
    'note/assumed',
    { layer: 'pavement' },
    { kind: 'path', count: 40, width_m: 1.5 },
  );
  const missing = finding('layer-missing', 'error/stops', { layer: 'crowns' }, {});
  const groups = summariseFindings([widths, unknown(2), unknown(3), unknown(4), missing, unknown(5)], 2);
  expect(groups.map(({ code, findings, occurrences }) => [code, findings, occurrences])).toEqual([
    ['layer-missing', 1, 1],
    ['rating-of-unknown-tree', 4, 4],
    ['width-defaulted', 1, 40],
  ]);
  expect(groups[1].examples.map((example) => example.where.row)).toEqual([2, 3]);
});

test('the nearest word is offered only when it is near', () => {
  expect(nearestWord('drift_ring', ['wind', 'drift_rings'])).toBe('drift_rings');
  expect(nearestWord('wnid', ['wind', 'scales'])).toBe('wind');
  expect(nearestWord('footway', ['sidewalk', 'path'])).toBeUndefined();
});
