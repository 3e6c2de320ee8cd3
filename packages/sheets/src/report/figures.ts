/** Figures of an assessment as they are read, each with the cells of the result files it comes from. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import {
  areaNumber,
  areaRange,
  areaText,
  grouped,
  percentRange,
  percentText,
  rangeNumbers,
  type Units,
} from '../quantities.ts';
import type { Figure, Trace } from './content.ts';

const LEDGER_SUM = { file: 'ledger.csv', sum: true } as const;
const ofBlocks = (row: string, column: string): Trace => ({ file: 'blocks.geojson', row, column });
const ofTotal = (column: string): Trace => ({ file: 'run.json', row: 'total', column });

/** The town's stained area: every row of the ledger added up. */
export function totalStained({ total }: Assessment, units: Units): Figure {
  return { figure: areaText(total.stainedM2.value, units), from: [{ ...LEDGER_SUM, column: 'stained_m2' }] };
}

export function totalPavement({ total }: Assessment, units: Units): Figure {
  return { figure: areaText(total.pavementM2, units), from: [{ ...LEDGER_SUM, column: 'pavement_m2' }] };
}

export function totalRange({ total }: Assessment, units: Units): Figure | null {
  const range = total.stainedM2.range80;
  if (range === null) return null;
  return { figure: areaRange(range, units), from: [ofTotal('stained_lo80_m2'), ofTotal('stained_hi80_m2')] };
}

/** The town's stained share of all pavement, or of the pavement below crowns and drift. */
export function totalShare({ total }: Assessment, of: 'pavement' | 'fallout'): Figure {
  const whole = of === 'pavement' ? total.pavementM2 : total.falloutM2;
  const per = { ...LEDGER_SUM, column: `${of}_m2` };
  return {
    figure: percentText(total.stainedM2.value / whole),
    from: [{ ...LEDGER_SUM, column: 'stained_m2', per }],
  };
}

export function totalShareRange({ total }: Assessment): Figure | null {
  const range = total.stainedM2.range80;
  if (range === null) return null;
  const per = ofTotal('fallout_m2');
  return {
    figure: percentRange([range[0] / total.falloutM2, range[1] / total.falloutM2]),
    from: [
      { ...ofTotal('stained_lo80_m2'), per },
      { ...ofTotal('stained_hi80_m2'), per },
    ],
  };
}

/** What part of the town's stained area some blocks bear. */
export function shareOfBlocks({ total }: Assessment, blocks: readonly BlockResult[]): Figure {
  const sum = blocks.reduce((area, { stainedM2 }) => area + stainedM2.value, 0);
  const row = blocks.map(({ blockId }) => blockId);
  return {
    figure: percentText(sum / total.stainedM2.value),
    from: [{ file: 'blocks.geojson', row, column: 'stained_m2', per: { ...LEDGER_SUM, column: 'stained_m2' } }],
  };
}

export function blockStained({ blockId, stainedM2 }: BlockResult, units: Units): Figure {
  return { figure: areaText(stainedM2.value, units), from: [ofBlocks(blockId, 'stained_m2')] };
}

/** The number alone, for a column whose title has the unit. */
export function blockStainedNumber({ blockId, stainedM2 }: BlockResult, units: Units): Figure {
  return { figure: areaNumber(stainedM2.value, units), from: [ofBlocks(blockId, 'stained_m2')] };
}

const rangeOfBlock = (blockId: string): readonly Trace[] => [
  ofBlocks(blockId, 'stained_lo80_m2'),
  ofBlocks(blockId, 'stained_hi80_m2'),
];

export function blockRange({ blockId, stainedM2: { range80 } }: BlockResult, units: Units): Figure | null {
  return range80 && { figure: areaRange(range80, units), from: rangeOfBlock(blockId) };
}

export function blockRangeNumbers({ blockId, stainedM2: { range80 } }: BlockResult, units: Units): Figure | null {
  return range80 && { figure: rangeNumbers(range80, units), from: rangeOfBlock(blockId) };
}

export function blockShare({ blockId, stainedM2, pavementM2 }: BlockResult): Figure {
  const trace = { ...ofBlocks(blockId, 'stained_m2'), per: ofBlocks(blockId, 'pavement_m2') };
  return { figure: percentText(stainedM2.value / pavementM2), from: [trace] };
}

export function topShare({ blockId, topShare: share }: BlockResult): Figure | null {
  return share === null ? null : { figure: percentText(share), from: [ofBlocks(blockId, 'top_share')] };
}

/** A column of the ledger added up over the rows of one kind of pavement. */
export function kindArea(
  { ledger }: Assessment,
  kind: BlockResult['blockId'],
  column: 'pavement_m2' | 'dripline_m2' | 'fallout_m2' | 'stained_m2',
  units: Units,
): Figure {
  const rows = ledger.filter((row) => row.kind === kind);
  const value = rows.reduce((sum, row) => sum + ledgerValue(row, column), 0);
  return { figure: areaNumber(value, units), from: [{ file: 'ledger.csv', row: kind, column }] };
}

function ledgerValue(row: Assessment['ledger'][number], column: string): number {
  if (column === 'stained_m2') return row.stainedM2.value;
  return column === 'pavement_m2' ? row.pavementM2 : column === 'dripline_m2' ? row.driplineM2 : row.falloutM2;
}

/** A range of a block's change, or any two numbers of one unit. */
export const signed = (value: number, decimals: number): string => `${value > 0 ? '+' : ''}${grouped(value, decimals)}`;
