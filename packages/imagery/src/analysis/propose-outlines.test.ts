import { signedArea } from '@crownfall/geometry';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ASPHALT, BROWN, type Colour, GREEN, picture, SHADE, under } from './made-picture.test-data.ts';
import {
  MOST_VERTICES,
  type OutlineAnswer,
  type OutlineProposal,
  proposeOutline,
  proposeOutlines,
} from './propose-outlines.ts';
import { crossings } from './ring-crossings.test-data.ts';

/** Cells of 0.25 m and rounded corners: a crown of some 4 m keeps its area to this. */
const AREA = 0.06;

type Disc = readonly [x: number, y: number, radius: number];

/** Crowns as half balls under the sun from the left, on asphalt: lit left, dark to the right. */
const discs =
  (crowns: readonly Disc[], leaf: Colour = GREEN) =>
  (x: number, y: number): Colour => {
    const tops = crowns
      .map(([cx, cy, r]) => ({ off: (x - cx) / r, high: r * r - (x - cx) ** 2 - (y - cy) ** 2 }))
      .filter(({ high }) => high > 0)
      .sort((a, b) => b.high - a.high);
    if (tops.length === 0) return ASPHALT;
    const light = 1 - 0.35 * tops[0].off;
    return under([light, light, light, light], leaf);
  };
/** The picture's y runs down, the ground's up. */
const at = ([x, y]: readonly number[], heightM = 30) => ({ x, y: heightM - y });
const proposal = (answer: OutlineAnswer): OutlineProposal => {
  if (!answer.proposed) throw new Error(answer.because);
  return answer;
};

describe('one crown', () => {
  test.each([2, 4, 7])('a disc of radius %d m: its area, round, seen all round, few vertices', (r) => {
    const got = proposal(proposeOutline(picture(30, 30, 0.25, discs([[15, 15, r]])), at([15.3, 14.8])));
    expect(Math.abs(got.areaM2 / (Math.PI * r * r) - 1)).toBeLessThan(r === 2 ? 2 * AREA : AREA);
    expect(got.roundness).toBeGreaterThan(0.85);
    expect(got.freeBorder).toBe(1);
    expect(got.confidence).toBe('high');
    expect(got.ring.length / 2).toBeLessThanOrEqual(MOST_VERTICES);
    expect(signedArea(got.ring)).toBeCloseTo(got.areaM2, 9);
  });

  test('browned patches and gaps belong to it', () => {
    const paint = (x: number, y: number): Colour => {
      const leaf = discs([[15, 15, 5]])(x, y);
      if (leaf === ASPHALT) return leaf;
      if (Math.hypot(x - 14, y - 15) < 0.4) return under(SHADE, ASPHALT);
      return Math.sin(x * 2.2) + Math.sin(y * 2.6) > 0.5 ? BROWN : leaf;
    };
    const got = proposal(proposeOutline(picture(30, 30, 0.25, paint), at([15, 15])));
    expect(Math.abs(got.areaM2 / (Math.PI * 25) - 1)).toBeLessThan(2 * AREA);
  });

  test('feet give the same square metres', () => {
    const window = picture(30, 30, 0.25, discs([[15, 15, 4]]));
    const FEET = 3937 / 1200;
    const t = window.transform;
    const inFeet = {
      ...window,
      transform: {
        ...t,
        originX: t.originX * FEET,
        originY: t.originY * FEET,
        columnX: t.columnX * FEET,
        rowY: t.rowY * FEET,
      },
    };
    const metres = proposal(proposeOutline(window, at([15, 15])));
    const feet = proposal(proposeOutline(inFeet, { x: 15 * FEET, y: 15 * FEET }));
    expect(feet.areaM2).toBeCloseTo(metres.areaM2, 6);
    expect(feet.ring[0]).toBeCloseTo(metres.ring[0] * FEET, 6);
  });

  test('refusals say why', () => {
    const window = picture(
      30,
      30,
      0.25,
      discs([
        [10, 15, 4],
        [22, 15, 0.7],
      ]),
    );
    const because = (x: number, y: number, options = {}) => {
      const got = proposeOutline(window, at([x, y]), options);
      return got.proposed ? 'proposed' : got.because;
    };
    expect(because(17, 5)).toBe('no-foliage');
    expect(because(22, 15)).toBe('too-small');
    expect(because(40, 15)).toBe('outside');
    expect(because(10, 15, { mostM2: 30 })).toBe('too-large');
    expect(because(10, 15, { occupied: [Float64Array.of(5, 10, 15, 10, 15, 20, 5, 20)] })).toBe('taken');
    const lawn = picture(60, 60, 0.5, () => GREEN);
    expect(proposeOutline(lawn, { x: 30, y: 30 })).toEqual({ proposed: false, because: 'too-large' });
    expect(() => proposeOutline({ ...window, pixelM: Number.NaN }, at([10, 15]))).toThrow(RangeError);
    expect(() => proposeOutline(window, at([10, 15]), { heights: new Float32Array(3) })).toThrow(/14400 heights/);
  });

  test('a height raster tells a tree from the lawn it stands on', () => {
    const window = picture(30, 30, 0.25, () => GREEN);
    const heights = Float32Array.from({ length: 120 * 120 }, (_, p) => {
      const off = Math.hypot(((p % 120) + 0.5) / 4 - 15, (Math.floor(p / 120) + 0.5) / 4 - 15);
      return off < 4 ? 3 + Math.sqrt(16 - off * off) : 0;
    });
    const got = proposal(proposeOutline(window, at([15, 15]), { heights }));
    expect(Math.abs(got.areaM2 / (Math.PI * 16) - 1)).toBeLessThan(AREA);
  });
});

describe('many crowns', () => {
  test('two that touch meet between them; neither enters the other', () => {
    const crowns: Disc[] = [
      [11, 15, 4],
      [18, 15, 4],
    ];
    const window = picture(30, 30, 0.25, discs(crowns));
    const [left, right] = proposeOutlines(
      window,
      crowns.map((c) => at(c)),
    ).map(proposal);
    const xs = (ring: Float64Array) => Array.from(ring).filter((_, i) => i % 2 === 0);
    expect(Math.max(...xs(left.ring))).toBeLessThan(15.5);
    expect(Math.min(...xs(right.ring))).toBeGreaterThan(13.5);
    expect(crossings([left.ring, right.ring])).toBe(0);
    expect(left.freeBorder).toBeLessThan(1);
  });

  test('the same point twice: one crown, the other is taken', () => {
    const window = picture(30, 30, 0.25, discs([[15, 15, 4]]));
    const answers = proposeOutlines(window, [at([15, 15]), at([15, 15])]);
    expect(answers.map((answer) => (answer.proposed ? 'proposed' : answer.because))).toEqual(['proposed', 'taken']);
  });

  test('law: rings never cross each other or themselves, nor an outline that is there already', () => {
    const crown = fc.tuple(
      fc.double({ min: 3, max: 27, noNaN: true }),
      fc.double({ min: 3, max: 27, noNaN: true }),
      fc.double({ min: 1, max: 6, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(crown, { minLength: 2, maxLength: 9 }), (crowns) => {
        const window = picture(30, 30, 0.25, discs(crowns));
        const [first, ...others] = crowns;
        const before = proposeOutline(window, at(first));
        const occupied = before.proposed ? [before.ring] : [];
        const answers = proposeOutlines(
          window,
          others.map((c) => at(c)),
          { occupied },
        );
        const rings = answers.flatMap((answer) => (answer.proposed ? [answer.ring] : []));
        expect(crossings([...occupied, ...rings])).toBe(0);
        for (const ring of rings) expect(ring.length / 2).toBeLessThanOrEqual(MOST_VERTICES);
      }),
      { numRuns: 40 },
    );
  });
});
