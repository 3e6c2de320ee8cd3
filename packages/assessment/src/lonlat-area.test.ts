import { signedArea } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { lonLatArea, orientedArea } from './lonlat-area.ts';

const square = (x: number, y: number, side: number) =>
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side);
const hole = (x: number, y: number, side: number) =>
  Float64Array.of(x, y, x, y + side, x + side, y + side, x + side, y);
const same = (ring: Float64Array) => ring;

describe('areas for RFC 7946 §3.1.6: shells counter-clockwise, holes clockwise', () => {
  test('each hole goes to the smallest shell that holds it', () => {
    const inner = hole(41, 41, 2);
    const region = [square(0, 0, 100), hole(10, 10, 80), square(40, 40, 10), inner, square(200, 0, 5)];
    expect(lonLatArea(region, same)).toEqual({
      kind: 'area',
      polygons: [[region[0], region[1]], [region[2], inner], [region[4]]],
    });
  });

  test('a hole that touches its shell at a corner still belongs to it', () => {
    const region = [square(0, 0, 10), hole(0, 0, 4), square(50, 0, 100)];
    expect(lonLatArea(region, same)).toMatchObject({ polygons: [[region[0], region[1]], [region[2]]] });
  });

  test('nothing gives none', () => {
    expect(lonLatArea([], same)).toEqual({ kind: 'none' });
  });

  test('recorded rings are turned where they need it and kept where not', () => {
    const right = square(0, 0, 10);
    const area = orientedArea([[right, square(2, 2, 1)], [hole(20, 0, 4)]]);
    if (area.kind !== 'area') throw new Error('expected an area');
    expect(area.polygons[0][0]).toBe(right);
    expect(signedArea(area.polygons[0][1])).toBe(-1);
    expect(signedArea(area.polygons[1][0])).toBe(16);
  });
});
