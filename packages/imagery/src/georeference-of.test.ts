import { describe, expect, test } from 'vitest';
import { pixelToGround } from './georeference.ts';
import { type StatedPlace, transformFrom } from './georeference-of.ts';

const SILENT: StatedPlace = { matrix: null, pixelScale: null, tiePoints: null, pixelIsPoint: false };

function ground(place: Partial<StatedPlace>, column: number, row: number): readonly [number, number] {
  const t = transformFrom({ ...SILENT, ...place });
  if (!t) throw new Error('not placed');
  return pixelToGround(t, column, row);
}

describe('where an image lies', () => {
  test('tie point and pixel size, the tie point anywhere', () => {
    const place = { pixelScale: [2, 3, 0], tiePoints: [10, 20, 0, 500, 900, 0] };
    expect(ground(place, 10, 20)).toEqual([500, 900]);
    expect(ground(place, 0, 0)).toEqual([480, 960]);
  });

  test('pixel-is-point gives the middle of the pixel', () => {
    const place = { pixelScale: [2, 2, 0], tiePoints: [0, 0, 0, 500, 900, 0], pixelIsPoint: true };
    expect(ground(place, 0.5, 0.5)).toEqual([500, 900]);
  });

  test('a matrix, rotated', () => {
    const matrix = [0.6, 0.8, 0, 100, 0.8, -0.6, 0, 200, 0, 0, 0, 0, 0, 0, 0, 1];
    expect(ground({ matrix }, 10, 0)).toEqual([106, 208]);
  });

  test('tie points alone, when one affine map meets them', () => {
    const tie = (column: number, row: number, miss = 0) => [
      column,
      row,
      0,
      5 + 2 * column + row + miss,
      7 + column - 2 * row,
      0,
    ];
    const tiePoints = [tie(0, 0), tie(100, 0), tie(0, 80), tie(100, 80)].flat();
    const [x, y] = ground({ tiePoints }, 30, 40);
    expect(Math.hypot(x - 105, y + 43)).toBeLessThan(1e-9);
    const warped = [tie(0, 0), tie(100, 0), tie(0, 80), tie(100, 80, 30)].flat();
    expect(transformFrom({ ...SILENT, tiePoints: warped })).toBeNull();
    const inLine = [tie(0, 0), tie(50, 40), tie(100, 80)].flat();
    expect(transformFrom({ ...SILENT, tiePoints: inLine })).toBeNull();
  });

  test('a world file, where the image is silent', () => {
    const worldFile = '0.5\n0\n0\n-0.5\n1000.25\n1999.75\n';
    expect(ground({ worldFile }, 0, 0)).toEqual([1000, 2000]);
    expect(ground({ worldFile: worldFile.replaceAll('.', ',') }, 2, 2)).toEqual([1001, 1999]);
    expect(transformFrom({ ...SILENT, worldFile: 'not numbers' })).toBeNull();
    const own = { pixelScale: [1, 1, 0], tiePoints: [0, 0, 0, 7, 8, 0], worldFile };
    expect(ground(own, 0, 0)).toEqual([7, 8]);
  });

  test('nothing says so: null', () => {
    expect(transformFrom(SILENT)).toBeNull();
  });
});
