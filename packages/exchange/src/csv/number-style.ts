import { isMissing } from '@crownfall/survey';

/** How the numbers of a column are written. */
export type NumberStyle = 'point' | 'comma';

/** What the cells of one column have in common. */
export interface ColumnStyle {
  /** `null`: not a column of numbers. */
  readonly style: NumberStyle | null;
  /** True when every comma could part thousands as well: `1,234`. */
  readonly ambiguous: boolean;
}

const POINT = /^[-+]?(?:\d+|[1-9]\d{0,2}(?:,\d{3})+)?(?:\.\d*)?(?:[eE][-+]?\d+)?$/;
const COMMA = /^[-+]?(?:\d+|[1-9]\d{0,2}(?:[.\u00a0\u202f']\d{3})+)?(?:,\d*)?(?:[eE][-+]?\d+)?$/;
const THOUSANDS = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+$/;
/**
 * How a column writes its numbers, judged by all its cells together, since `1,234` alone cannot tell. A column with any
 * cell that is no number, or with no number at all, has no style.
 */
export function columnStyle(cells: Iterable<string>): ColumnStyle {
  let numbers = 0;
  let point = true;
  let comma = true;
  let commas = 0;
  let thousands = 0;
  for (const cell of cells) {
    const text = cell.trim();
    if (isMissing(text)) continue;
    if (!/\d/.test(text)) return { style: null, ambiguous: false };
    numbers++;
    point &&= POINT.test(text);
    comma &&= COMMA.test(text);
    if (!point && !comma) return { style: null, ambiguous: false };
    if (text.includes(',')) commas++;
    if (THOUSANDS.test(text)) thousands++;
  }
  if (numbers === 0) return { style: null, ambiguous: false };
  // Without any comma both readings agree unless points part thousands; a point is then taken for what it mostly is.
  if (commas === 0) return { style: point ? 'point' : 'comma', ambiguous: false };
  return { style: point ? 'point' : 'comma', ambiguous: point && comma && thousands === commas };
}

/** The number a cell holds in a given style; `undefined` when it holds none. */
export function numberIn(cell: string, style: NumberStyle): number | undefined {
  const text = cell.trim();
  if (isMissing(text)) return undefined;
  const plain = style === 'point' ? text.replaceAll(',', '') : text.replace(/[.\u00a0\u202f']/g, '').replace(',', '.');
  const number = Number(plain);
  return Number.isFinite(number) ? number : undefined;
}
