/**
 * The ramp's evenness by CIEDE2000, the order by lightness for reduced colour vision. The difference formula is written
 * here from Sharma, Wu and Dalal 2005 (Color Res. Appl. 30:21–30, equations 2 to 22) and checked against their Table 1.
 */
import { describe, expect, test } from 'vitest';
import { STAIN_RAMP, stainClass, stainHatch } from './palette.ts';

type Lab = readonly [number, number, number];
type Rgb = readonly [number, number, number];

test('the difference formula used below gives the published differences', () => {
  // Sharma, Wu and Dalal 2005, Table 1, pairs 1, 7, 13 and 25.
  expect(difference([50, 2.6772, -79.7751], [50, 0, -82.7485])).toBeCloseTo(2.0425, 4);
  expect(difference([50, 0, 0], [50, -1, 2])).toBeCloseTo(2.3669, 4);
  expect(difference([50, -0.001, 2.49], [50, 0.0009, -2.49])).toBeCloseTo(4.8045, 4);
  expect(difference([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387])).toBeCloseTo(1.2644, 4);
});

describe('the ramp of stained area', () => {
  const labs = STAIN_RAMP.map((hex) => labOf(linearRgb(hex)));

  test('rises in even steps', () => {
    const steps = labs.slice(1).map((lab, i) => difference(labs[i], lab));
    // A tenth of a step is about the formula's own disagreement with observers at such distances: judgement, no source.
    expect(Math.max(...steps) / Math.min(...steps)).toBeLessThan(1.1);
  });

  // Machado, Oliveira and Fernandes 2009 (IEEE Trans. Vis. Comput. Graph. 15:1291–1298), severity 1.0; from memory.
  const VISION: Readonly<Record<string, readonly (readonly number[])[]>> = {
    protanopia: [
      [0.152286, 1.052583, -0.204868],
      [0.114503, 0.786281, 0.099216],
      [-0.003882, -0.048116, 1.051998],
    ],
    deuteranopia: [
      [0.367322, 0.860646, -0.227968],
      [0.280085, 0.672501, 0.047413],
      [-0.01182, 0.04294, 0.968881],
    ],
    tritanopia: [
      [1.255528, -0.076749, -0.178779],
      [-0.078411, 0.930809, 0.147602],
      [0.004733, 0.691367, 0.3039],
    ],
  };
  for (const [name, matrix] of Object.entries(VISION)) {
    test(`keeps its order and its steps with ${name}`, () => {
      const seen = STAIN_RAMP.map((hex) => labOf(seenBy(matrix, linearRgb(hex))));
      for (let i = 1; i < seen.length; i++) {
        expect(seen[i][0]).toBeLessThan(seen[i - 1][0]);
        // Four times what CIEDE2000 calls just noticeable (about 1), across a map: common practice, no source.
        expect(difference(seen[i - 1], seen[i])).toBeGreaterThan(4);
      }
    });
  }

  test('is coded by hatching besides, in the two classes that matter most', () => {
    expect(STAIN_RAMP.map((_, i) => stainHatch(i)?.crossed)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      false,
      true,
    ]);
    expect([0, 9.99, 10, 160, 1e6].map(stainClass)).toEqual([0, 0, 1, 5, 5]);
  });
});

function linearRgb(hex: string): Rgb {
  const channel = (at: number) => {
    const v = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

function seenBy(matrix: readonly (readonly number[])[], rgb: Rgb): Rgb {
  const row = (i: number) => Math.max(0, matrix[i][0] * rgb[0] + matrix[i][1] * rgb[1] + matrix[i][2] * rgb[2]);
  return [row(0), row(1), row(2)];
}

/** IEC 61966-2-1 to XYZ, CIE 15 to L*a*b*, D65. */
function labOf([r, g, b]: Rgb): Lab {
  const xyz = [
    (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505,
    0.2126 * r + 0.7152 * g + 0.0722 * b,
    (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089,
  ];
  const [fx, fy, fz] = xyz.map((t) => (t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27 / 116) * t + 16 / 116));
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

function difference([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  const radians = (angle: number) => (angle * Math.PI) / 180;
  const meanC7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7;
  const g = 0.5 * (1 - Math.sqrt(meanC7 / (meanC7 + 25 ** 7)));
  const [c1, c2] = [Math.hypot((1 + g) * a1, b1), Math.hypot((1 + g) * a2, b2)];
  const hue = (a: number, b: number) => (a === 0 && b === 0 ? 0 : (degrees(Math.atan2(b, (1 + g) * a)) + 360) % 360);
  const [h1, h2] = [hue(a1, b1), hue(a2, b2)];
  const turn = h2 - h1;
  const dh = c1 * c2 === 0 ? 0 : turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin(radians(dh / 2));
  const [l, c] = [(l1 + l2) / 2, (c1 + c2) / 2];
  const sum = h1 + h2;
  const h = c1 * c2 === 0 ? sum : Math.abs(turn) <= 180 ? sum / 2 : (sum < 360 ? sum + 360 : sum - 360) / 2;
  const wave = (k: number, shift: number) => Math.cos(radians(k * h + shift));
  const t = 1 - 0.17 * wave(1, -30) + 0.24 * wave(2, 0) + 0.32 * wave(3, 6) - 0.2 * wave(4, -63);
  const sl = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sc = 1 + 0.045 * c;
  const sh = 1 + 0.015 * c * t;
  const rc = 2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));
  const rt = -Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2)))) * rc;
  const [dl, dc, dhn] = [(l2 - l1) / sl, (c2 - c1) / sc, dH / sh];
  return Math.sqrt(dl * dl + dc * dc + dhn * dhn + rt * dc * dhn);
}
