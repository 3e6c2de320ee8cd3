import type { FeatureCollection, Geometry } from 'geojson';
import { describe, expect, test } from 'vitest';
import { blockLabels } from './block-labels.ts';

const block = (geometry: Geometry): FeatureCollection => ({
  type: 'FeatureCollection',
  features: [{ type: 'Feature', properties: { rank: 1 }, geometry }],
});

describe('where a rank stands', () => {
  test('a right triangle has its centroid at a third of its legs (closed form)', () => {
    const [label] = blockLabels(
      block({
        type: 'Polygon',
        coordinates: [
          [
            [10, 20],
            [13, 20],
            [10, 26],
            [10, 20],
          ],
        ],
      }),
    ).features;
    expect(label.geometry.coordinates[0]).toBeCloseTo(11, 12);
    expect(label.geometry.coordinates[1]).toBeCloseTo(22, 12);
    expect(label.properties).toEqual({ rank: 1 });
  });

  test('of several parts the largest is labelled, once', () => {
    const small = [
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
        [0, 0],
      ],
    ];
    const large = [
      [
        [5, 5],
        [9, 5],
        [9, 9],
        [5, 9],
        [5, 5],
      ],
    ];
    const labels = blockLabels(block({ type: 'MultiPolygon', coordinates: [small, large] })).features;
    expect(labels.map((label) => label.geometry.coordinates)).toEqual([[7, 7]]);
  });

  test('a block without outline has no label', () => {
    expect(blockLabels(block({ type: 'MultiPolygon', coordinates: [] })).features).toEqual([]);
  });
});
