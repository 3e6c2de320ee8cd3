/** The sizes and colours of a report on paper; 1 mm is 2.83 points. */
import { MAP, STAIN_RAMP } from '../../palette.ts';
import type { Look } from './run-lines.ts';

export const ACCENT = STAIN_RAMP[5];
export const TINT = '#faf7f0';
export const HAIRLINE = { colour: '#cfc7ba', widthMm: 0.15 } as const;
export const RULE = { colour: MAP.ink, widthMm: 0.3 } as const;

const ink = { colour: MAP.ink } as const;
const quiet = { colour: MAP.quiet } as const;

export const LOOKS = {
  title: { ...ink, sizeMm: 7.6, leading: 1.15, weight: 'bold' },
  about: { ...quiet, sizeMm: 3.3, leading: 1.4 },
  section: { ...ink, sizeMm: 5.2, leading: 1.2, weight: 'bold' },
  subsection: { ...ink, sizeMm: 3.9, leading: 1.25, weight: 'bold' },
  body: { ...ink, sizeMm: 3.3, leading: 1.45 },
  lead: { ...ink, sizeMm: 4.1, leading: 1.36 },
  quiet: { ...quiet, sizeMm: 2.9, leading: 1.4 },
  quietInk: { ...ink, sizeMm: 3, leading: 1.4 },
  caption: { ...ink, sizeMm: 3.3, leading: 1.35, weight: 'bold' },
  below: { ...quiet, sizeMm: 2.75, leading: 1.4 },
  head: { ...ink, sizeMm: 2.7, leading: 1.25, weight: 'bold' },
  cell: { ...ink, sizeMm: 2.85, leading: 1.3 },
  note: { ...quiet, sizeMm: 2.35, leading: 1.35 },
  keyLabel: { ...ink, sizeMm: 2.95, leading: 1.3 },
  keyValue: { ...ink, sizeMm: 7, leading: 1.25, weight: 'bold' },
  keyRange: { ...quiet, sizeMm: 2.95, leading: 1.3 },
  foot: { ...quiet, sizeMm: 2.5, leading: 1.3 },
} as const satisfies Readonly<Record<string, Look>>;
