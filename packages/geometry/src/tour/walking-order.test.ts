import { describe, expect, test } from 'vitest';
import { streetCosts } from './street-walk.ts';
import { walkInGroups, walkingOrder } from './walking-order.ts';

/** A street along x from 0 to 200 m, two cross streets at its ends, a parallel one 100 m north. */
const BLOCK = [
  Float64Array.of(0, 0, 200, 0),
  Float64Array.of(0, 100, 200, 100),
  Float64Array.of(0, -50, 0, 150),
  Float64Array.of(200, -50, 200, 150),
];

describe('ways along streets', () => {
  test('on one side the way is along the kerb; across it leads over a junction', () => {
    const north = { x: 60, y: 6 };
    const farther = { x: 90, y: 6 };
    const south = { x: 60, y: -6 };
    const costs = streetCosts([north, farther, south], { streets: BLOCK, crossingM: 25 });
    expect(costs[1]).toBeCloseTo(30, 6);
    // To the junction at x = 0, over the carriageway, and back: 60 + 25 + 60 (closed form).
    expect(costs[2]).toBeCloseTo(145, 2);
    expect(costs).toEqual(Float64Array.from({ length: 9 }, (_, i) => costs[(i % 3) * 3 + Math.floor(i / 3)]));
  });

  test('nobody walks through the houses: from one street to the one behind, round the corner', () => {
    const costs = streetCosts(
      [
        { x: 50, y: 6 },
        { x: 50, y: 94 },
      ],
      { streets: BLOCK, crossingM: 25 },
    );
    // On the block's own sides no carriageway is crossed: 50 west, 100 north, 50 east.
    expect(costs[1]).toBeCloseTo(200, 2);
  });

  test('a bend is no junction, a dead end is walked round', () => {
    const bent = [Float64Array.of(0, 0, 100, 0, 100, 80)];
    const costs = streetCosts(
      [
        { x: 50, y: 5 },
        { x: 50, y: -5 },
        { x: 105, y: 40 },
      ],
      { streets: bent, crossingM: 25 },
    );
    expect(costs[5]).toBeCloseTo(50 + 40, 2); // both right of the line's way, past the bend
    expect(costs[1]).toBeCloseTo(50 + 50, 2); // round the street's end at x = 0
    expect(costs[2]).toBeCloseTo(50 + 80 + 40, 2); // past the bend, round the other end and back
  });

  test('a plaza is walked across; places without a street, or without any way, by a longer straight line', () => {
    const plaza = [
      { x: 80, y: 45, open: 'plaza' },
      { x: 80, y: 60, open: 'plaza' },
    ];
    expect(streetCosts(plaza, { streets: BLOCK })[1]).toBeCloseTo(15, 9);
    expect(
      streetCosts(
        [
          { x: 0, y: 290 },
          { x: 10, y: 290 },
        ],
        { streets: BLOCK },
      )[1],
    ).toBeCloseTo(14, 9);
    expect(
      streetCosts([
        { x: 0, y: 0 },
        { x: 3, y: 4 },
      ])[1],
    ).toBeCloseTo(5, 9);
  });
});

describe('walking order', () => {
  const both = [20, 50, 80, 110, 140, 170].flatMap((x) => [
    { x, y: 7 },
    { x, y: -7 },
  ]);

  test('keeps the sides of a street together, though straight across would be nearer', () => {
    const order = walkingOrder(both, { streets: BLOCK });
    const sides = order.map((i) => Math.sign(both[i].y));
    expect(sides.filter((side, i) => i > 0 && side !== sides[i - 1]).length).toBe(1);
    // The law that this is the streets' doing: without them the walk goes to and fro.
    const free = walkingOrder(both).map((i) => Math.sign(both[i].y));
    expect(free.filter((side, i) => i > 0 && side !== free[i - 1]).length).toBeGreaterThan(1);
  });

  test('does not depend on where the plane lies, nor on the streets’ direction', () => {
    const moved = both.map(({ x, y }) => ({ x: x + 4000, y: y - 700 }));
    const streets = BLOCK.map((line) => line.map((value, i) => value + (i % 2 === 0 ? 4000 : -700)));
    const turned = streets.map((line) => Float64Array.of(line[2], line[3], line[0], line[1]));
    const order = walkingOrder(both, { streets: BLOCK, start: 0 });
    expect(walkingOrder(moved, { streets, start: 0 })).toEqual(order);
    expect(walkingOrder(moved, { streets: turned, start: 0 })).toEqual(order);
  });

  test('a stretch that is walked twice is done on one pass', () => {
    // A dead end of four places between a start and an end at its mouth: in and out is the same way however they are shared.
    const alley = [
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 40, y: 0 },
      { x: 60, y: 0 },
      { x: 80, y: 0 },
      { x: 0, y: 1 },
    ];
    const order = walkingOrder(alley, { start: 0, end: 5 }).slice(1, -1);
    expect([order, [...order].reverse()]).toContainEqual([1, 2, 3, 4]);
  });

  test('begins and ends where told; none, one, all in one spot', () => {
    const order = walkingOrder(both, { streets: BLOCK, start: 4, end: 0 });
    expect([order[0], order.at(-1), new Set(order).size]).toEqual([4, 0, both.length]);
    expect(walkingOrder([])).toEqual([]);
    expect(walkingOrder([{ x: 3, y: 4 }])).toEqual([0]);
    expect([...walkingOrder([1, 2, 3].map(() => ({ x: 1, y: 1 })))].sort()).toEqual([0, 1, 2]);
  });

  test('a city’s worth of places is walked once each', () => {
    const many = Array.from({ length: 3200 }, (_, i) => ({ x: (i * 37) % 1009, y: (i * 61) % 997 }));
    expect(new Set(walkingOrder(many)).size).toBe(3200);
  });

  test('blocks of a day: one after another, from where the day begins to where it ends', () => {
    const places = [300, 0, 200, 100].flatMap((x, group) => [1, 2, 3].map((i) => ({ x: x + 10 * i, y: 0, group })));
    const order = walkInGroups(places, { from: { x: -50, y: 0 }, to: { x: 400, y: 0 } });
    expect(order.map((i) => places[i].x)).toEqual([10, 20, 30, 110, 120, 130, 210, 220, 230, 310, 320, 330]);
    expect(walkInGroups(places, { from: { x: 400, y: 0 } }).map((i) => places[i].group)[0]).toBe(0);
    expect(walkInGroups([])).toEqual([]);
  });
});
