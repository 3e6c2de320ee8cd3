/** Scale bar, north arrow and legend: what a map needs on its margin. Positions in millimetres on the paper. */
import { METRES_PER_FOOT } from '@crownfall/geometry';
import type { PaperMark, Style, TextStyle } from './drawing.ts';
import { MAP, STAIN_CLASSES_M2, STAIN_RAMP, stainHatch } from './palette.ts';

/** Square metres in a square foot. */
const M2_PER_FT2 = METRES_PER_FOOT * METRES_PER_FOOT;

/**
 * A bar of four fields, a round length of at most `roomMm` on paper, in metres or feet, with the scale in words above.
 * @example scaleBar({ x: 0, y: 0, roomMm: 60, scale: 1000, units: 'metric' }) // four fields of 10 m each, 40 mm long
 */
export function scaleBar(at: {
  readonly x: number;
  readonly y: number;
  readonly roomMm: number;
  readonly scale: number;
  readonly units: 'metric' | 'us';
}): readonly PaperMark[] {
  const perUnitMm = (at.units === 'metric' ? 1 : METRES_PER_FOOT) * (1000 / at.scale);
  const field = roundLength(at.roomMm / perUnitMm / 4);
  const fieldMm = field * perUnitMm;
  const rim = { colour: MAP.ink, widthMm: 0.15 };
  const fields = [0, 1, 2, 3].map((i): PaperMark => {
    const box = { leftMm: at.x + i * fieldMm, topMm: at.y, widthMm: fieldMm, heightMm: 1.3 };
    return { mark: 'box', box, style: { fill: i % 2 === 0 ? MAP.ink : '#ffffff', stroke: rim } };
  });
  const unit = at.units === 'metric' ? 'm' : 'ft';
  const numbers = [0, 2, 4].map((i): PaperMark => {
    const text = i === 4 ? `${field * i} ${unit}` : String(field * i);
    return { mark: 'text', x: at.x + i * fieldMm, y: at.y + 4.1, text, style: { ...SMALL, anchor: 'middle' } };
  });
  const words: PaperMark = { mark: 'text', x: at.x, y: at.y - 1.5, text: `1 : ${grouped(at.scale)}`, style: SMALL };
  return [...fields, ...numbers, words];
}

/** An arrow 11 mm high whose tip points to the paper's top: north of the plane in the middle of the map. */
export function northArrow(x: number, y: number): readonly PaperMark[] {
  const rim = { colour: MAP.ink, widthMm: 0.2 };
  return [
    {
      mark: 'polygon',
      points: [
        [x, y],
        [x - 2.2, y + 7.6],
        [x, y + 5.9],
      ],
      style: { fill: MAP.ink, stroke: rim },
    },
    {
      mark: 'polygon',
      points: [
        [x, y],
        [x + 2.2, y + 7.6],
        [x, y + 5.9],
      ],
      style: { fill: '#ffffff', stroke: rim },
    },
    { mark: 'text', x, y: y + 11.2, text: 'N', style: { ...SMALL, weight: 'bold', anchor: 'middle', sizeMm: 3 } },
  ];
}

export const SMALL: TextStyle = { sizeMm: 2.6, colour: MAP.ink };
export const QUIET: TextStyle = { sizeMm: 2.4, colour: MAP.quiet };

/** The ramp with its limits, m² or ft² of stained pavement in a block. */
export function stainLegend(x: number, y: number, units: 'metric' | 'us', title?: string): readonly PaperMark[] {
  const step = 13;
  const limit = (m2: number) => (units === 'metric' ? m2 : Math.round(m2 / M2_PER_FT2));
  const boxes = STAIN_RAMP.map((fill, i): PaperMark => {
    const hatch = stainHatch(i);
    const style: Style = {
      fill,
      stroke: { colour: MAP.ink, widthMm: 0.12 },
      ...(hatch === undefined ? {} : { hatch }),
    };
    return { mark: 'box', box: { leftMm: x + i * step, topMm: y, widthMm: step, heightMm: 4 }, style };
  });
  const numbers = STAIN_CLASSES_M2.map((m2, i): PaperMark => {
    const text = grouped(limit(m2));
    return { mark: 'text', x: x + (i + 1) * step, y: y + 6.9, text, style: { ...SMALL, anchor: 'middle' } };
  });
  const unit = units === 'metric' ? 'm²' : 'ft²';
  const text = title ?? `Expected stained pavement in the block, ${unit}`;
  return [{ mark: 'text', x, y: y - 1.5, text, style: SMALL }, ...boxes, ...numbers];
}

const CROWN_WORDS = ['crown that stains', 'clean crown', 'not rated: host group’s mean'] as const;

/** Samples of a crown that fouls, one that does not, one that nobody rated. */
export function crownLegend(
  x: number,
  y: number,
  words: readonly [foul: string, clean: string, unrated: string] = CROWN_WORDS,
): readonly PaperMark[] {
  const rows: readonly (readonly [string, boolean, boolean])[] = [
    [words[0], true, false],
    [words[1], false, false],
    [words[2], true, true],
  ];
  return rows.flatMap(([text, foul, dashed], i): readonly PaperMark[] => {
    const top = y + i * 4.1;
    const stroke = {
      colour: foul ? MAP.foulCrownRim : MAP.cleanCrownRim,
      widthMm: foul ? 0.3 : 0.2,
      ...(dashed ? { dashMm: [0.7, 0.5] } : {}),
    };
    const fill = dashed ? '#ffffff' : foul ? MAP.foulCrown : MAP.cleanCrown;
    return [
      { mark: 'disc', x: x + 1.5, y: top, radiusMm: 1.4, style: { fill, opacity: foul ? 0.82 : 0.55, stroke } },
      { mark: 'text', x: x + 4.4, y: top + 0.9, text, style: SMALL },
    ];
  });
}

/** The greatest 1, 2, 2.5 or 5 times a power of ten that is at most `length`. */
function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length) + 1e-9);
  const step = [5, 2.5, 2, 1].find((each) => each * power <= length * (1 + 1e-9)) ?? 1;
  return step * power;
}

export function grouped(value: number): string {
  return String(value).replace(/\B(?=(\d{3})+$)/g, ',');
}
