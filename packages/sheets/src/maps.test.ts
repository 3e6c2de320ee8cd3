import { describe, expect, test } from 'vitest';
import { blockMap } from './block-map.ts';
import { scaleBar } from './furniture.ts';
import { fittingScale } from './map-frame.ts';
import { SMALL } from './small-assessment.test-data.ts';
import { svgText } from './svg.ts';
import { townMap } from './town-map.ts';

/** Boxes of all paths without hatching, mm. */
function pathBoxes(svg: string): readonly { readonly width: number; readonly height: number }[] {
  return [...svg.matchAll(/<path d="(M[^"]+)" fill="(?!url)/g)].map(([, d]) => {
    let [x, y] = [0, 0];
    const xs: number[] = [];
    const ys: number[] = [];
    for (const [, command, numbers] of d.matchAll(/([Mlhv])([-\d. ]+)/g)) {
      const [a, b] = (numbers.match(/-?\d*\.?\d+/g) ?? []).map(Number);
      if (command === 'M') [x, y] = [a, b];
      else if (command === 'h') x += a;
      else if (command === 'v') y += a;
      else [x, y] = [x + a, y + b];
      xs.push(x);
      ys.push(y);
    }
    return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
  });
}

describe('true scale', () => {
  test('a block of 100 m and a crown of 10 m are 100 mm and 10 mm wide at 1 : 1000', () => {
    const drawing = blockMap(SMALL, 'B1', { widthMm: 140, heightMm: 160 });
    expect(drawing.scale).toBe(1000);
    const boxes = pathBoxes(svgText(drawing));
    for (const side of [100, 10]) {
      // Coordinates are written to 0.01 mm, twice rounded.
      expect(boxes.some((box) => Math.abs(box.width - side) < 0.021 && Math.abs(box.height - side) < 0.021)).toBe(true);
    }
  });

  test('the picture carries its paper size in millimetres, so that it prints so', () => {
    expect(svgText(townMap(SMALL, { widthMm: 216, heightMm: 150 }))).toContain(
      'width="216mm" height="150mm" viewBox="0 0 216 150"',
    );
  });

  test('a round scale that just fits is taken, the next smaller when it does not', () => {
    const frame = { leftMm: 0, topMm: 0, widthMm: 200, heightMm: 100 };
    expect(fittingScale({ minX: 0, minY: 0, maxX: 100, maxY: 20 }, frame, 0)).toBe(500);
    expect(fittingScale({ minX: 0, minY: 0, maxX: 100, maxY: 20 }, frame, 0.1)).toBe(750);
  });

  test('the scale bar is as long as it says: metres, and international feet of 0.3048 m', () => {
    const width = (units: 'metric' | 'us') =>
      scaleBar({ x: 0, y: 0, roomMm: 60, scale: 1000, units }).reduce(
        (sum, mark) => sum + (mark.mark === 'box' ? mark.box.widthMm : 0),
        0,
      );
    const says = (units: 'metric' | 'us') =>
      scaleBar({ x: 0, y: 0, roomMm: 60, scale: 1000, units }).flatMap((mark) =>
        mark.mark === 'text' ? [mark.text] : [],
      );
    expect(says('metric')).toContain('40 m');
    expect(width('metric')).toBeCloseTo(40, 9);
    expect(says('us')).toContain('100 ft');
    expect(width('us')).toBeCloseTo(30.48, 9);
  });
});

describe('the maps', () => {
  test('say in words what they show, and what is uncalibrated', () => {
    const svg = svgText(townMap(SMALL));
    expect(svg).toContain('42 m² of 2,000 m² pavement expected to show stain');
    expect(svg).toContain('Uncalibrated');
    expect(svg).toContain('Map of 1 blocks and 1 crowns. First in rank: 1. Quay &amp; &lt;Mole&gt;.');
  });

  test('are the same text each time', () => {
    expect(svgText(townMap(SMALL))).toBe(svgText(townMap(SMALL)));
  });

  test('name the blocks that exist when one is asked for that does not', () => {
    expect(() => blockMap(SMALL, 'B9')).toThrow('expected the id of a block (B1), got B9');
    expect(() => townMap({ ...SMALL, blocks: [], trees: [] })).toThrow('expected blocks or trees');
  });
});
