import { describe, expect, test } from 'vitest';
import {
  asksPicture,
  closedUp,
  cutPieces,
  newSketch,
  placed,
  recordOf,
  reshapedSince,
  shapeOf,
  sketchOf,
  sketchRedone,
  sketchUndone,
  vertexInserted,
  vertexMoved,
  vertexRemoved,
  withProposal,
} from './sketch.ts';

const drawn = () =>
  closedUp(
    (
      [
        [0, 0],
        [0, 2],
        [2, 2],
        [2, 0],
      ] as const
    ).reduce((now, at) => placed(now, at), newSketch('N1', 'polygon')),
  );

describe('a cut through an outline', () => {
  const hexagon = {
    ...drawn(),
    vertices: [
      [0, 0],
      [2, 0],
      [3, 1],
      [2, 4],
      [0, 4],
      [-1, 1],
    ] as const,
  };

  test('gives two outlines that share the cut and have the whole area between them, the larger first', () => {
    const pieces = cutPieces({ ...hexagon, cutFrom: 0, vertex: 2 });
    expect(pieces).toEqual([
      [
        [3, 1],
        [2, 4],
        [0, 4],
        [-1, 1],
        [0, 0],
      ],
      [
        [0, 0],
        [2, 0],
        [3, 1],
      ],
    ]);
    // Shoelace: the hexagon has 12.5, the triangle cut off 1.
    expect(pieces?.map(areaOf)).toEqual([areaOf(hexagon.vertices) - 1, 1]);
    expect(cutPieces({ ...hexagon, cutFrom: 2, vertex: 0 })).toEqual(pieces);
  });

  test('is none between neighbours, from a point to itself, or through a crown with holes', () => {
    expect(cutPieces({ ...hexagon, cutFrom: 0, vertex: 1 })).toBeNull();
    expect(cutPieces({ ...hexagon, cutFrom: 0, vertex: 5 })).toBeNull();
    expect(cutPieces({ ...hexagon, cutFrom: 3, vertex: 3 })).toBeNull();
    expect(cutPieces({ ...hexagon, cutFrom: null, vertex: 3 })).toBeNull();
    const hole = [
      [
        [
          [0.5, 1],
          [1, 1],
          [1, 2],
          [0.5, 1],
        ],
      ],
    ];
    expect(cutPieces({ ...hexagon, others: hole, cutFrom: 0, vertex: 3 })).toBeNull();
  });
});

function areaOf(ring: readonly (readonly number[])[]): number {
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

describe('an outline by vertices', () => {
  test('becomes a closed, counter-clockwise ring (RFC 7946, 3.1.6), whichever way it was drawn', () => {
    expect(recordOf(drawn())?.geometry).toEqual({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [0, 0],
        ],
      ],
    });
  });

  test('vertices are put in, moved and taken away, never below three', () => {
    const inserted = vertexInserted(drawn(), 3, [1, -1]);
    expect(inserted.vertices.at(-1)).toEqual([1, -1]);
    const bare = [0, 0, 0, 0].reduce((now) => vertexRemoved(now, 0), inserted);
    expect(bare.vertices).toHaveLength(3);
  });

  test('every step can be undone and redone; a drag is one step', () => {
    const start = drawn();
    const before = shapeOf(start);
    let dragged = start;
    for (const x of [3, 4, 5]) dragged = reshapedSince(dragged, before, vertexMoved(dragged, 2, [x, x]));
    expect(dragged.vertices[2]).toEqual([5, 5]);
    expect(shapeOf(sketchUndone(dragged))).toEqual(before);
    expect(shapeOf(sketchRedone(sketchUndone(dragged)))).toEqual(shapeOf(dragged));
    const empty = Array.from({ length: 9 }).reduce<typeof start>((now) => sketchUndone(now), start);
    expect(empty.vertices).toEqual([]);
  });

  test('holes and further parts of a recorded outline stay', () => {
    const ring = (at: number) => [
      [at, 0],
      [at + 1, 0],
      [at + 1, 1],
      [at, 0],
    ];
    const geometry = { type: 'MultiPolygon' as const, coordinates: [[ring(0), ring(0.2)], [ring(5)]] };
    const record = { geometry, properties: { tree_id: 'T1', note: 'kept' } };
    expect(recordOf(sketchOf('T1', record))).toEqual(record);
  });
});

describe('an outline that the picture proposes', () => {
  const ring = [
    [0, 0],
    [1, 0],
    [1, 1],
  ] as const;
  const wanted = { ...newSketch('N1', 'polygon'), picture: { state: 'wanted' } } as const;
  const proposed = withProposal(wanted, ring, 'medium');

  test('is an outline like any other: it can be changed, undone and saved, and says where it is from', () => {
    expect(recordOf(proposed)?.properties).toEqual({ tree_id: 'N1', outlined_by: 'imagery' });
    const moved = { ...proposed, ...vertexMoved(proposed, 0, [-1, 0]) };
    expect(recordOf(moved)?.properties.outlined_by).toBe('imagery');
    expect(recordOf(sketchUndone(proposed))).toBeNull();
  });

  test('takes the place of what was paced, which undo brings back', () => {
    const paced = {
      geometry: { type: 'Point' as const, coordinates: [1, 2] },
      properties: { tree_id: 'T1', spread_m: 8, outlined_by: 'R1' },
    };
    const outlined = withProposal({ ...sketchOf('T1', paced), picture: { state: 'wanted' } }, ring, 'high');
    expect(recordOf(outlined)?.properties).toEqual({ tree_id: 'T1', outlined_by: 'imagery' });
    expect(recordOf(sketchUndone(outlined))).toEqual(paced);
  });

  test('pointing asks again as long as nobody has touched it, and only where the picture was asked at all', () => {
    expect([asksPicture(wanted), asksPicture(proposed)]).toEqual([true, true]);
    expect(asksPicture({ ...proposed, ...vertexMoved(proposed, 0, [-1, 0]) })).toBe(false);
    expect([asksPicture(newSketch('N1', 'polygon')), asksPicture(drawn())]).toEqual([false, false]);
  });
});

describe('what was paced in the field', () => {
  test.each([
    [{ spread_m: 8 }, 'spread'],
    [{ spread_a_m: 8, spread_b_m: 6, bearing_deg: 30 }, 'diameters'],
    [{ radii_m: [3, 4, 5, 4] }, 'radii'],
  ])('%o stays in the form it was recorded in', (sizes, tool) => {
    const record = {
      geometry: { type: 'Point' as const, coordinates: [1, 2] },
      properties: { tree_id: 'T1', ...sizes },
    };
    const sketch = sketchOf('T1', record);
    expect(sketch.tool).toBe(tool);
    expect(recordOf(sketch)).toEqual(record);
  });

  test('a crown that is outlined anew loses the sizes it was paced with', () => {
    const record = {
      geometry: { type: 'Point' as const, coordinates: [1, 2] },
      properties: { tree_id: 'T1', spread_m: 8 },
    };
    const outlined = { ...drawn(), before: record };
    expect(recordOf(outlined)?.properties).toEqual({ tree_id: 'N1' });
  });

  test('nothing is a crown before it has a place', () => {
    expect(recordOf(newSketch('N1', 'spread'))).toBeNull();
    expect(recordOf(placed(newSketch('N1', 'polygon'), [0, 0]))).toBeNull();
  });
});
