import type { BlockResult } from '@crownfall/assessment';
import { m2 } from '../round.ts';

type Figures = Pick<BlockResult, 'pavementM2' | 'driplineM2' | 'falloutM2'>;

/** The columns of a stained area with its ranges; a range that was not drawn is null, never invented. */
export function stainedColumns({ value, range80, range95 }: BlockResult['stainedM2']): Record<string, number | null> {
  return {
    stained_m2: m2(value),
    stained_lo80_m2: range80 && m2(range80[0]),
    stained_hi80_m2: range80 && m2(range80[1]),
    stained_lo95_m2: range95 && m2(range95[0]),
    stained_hi95_m2: range95 && m2(range95[1]),
  };
}

/** The areas of some pavement before its stained area, m². */
export function areaColumns(figures: Figures): Record<string, number | null> {
  return {
    pavement_m2: m2(figures.pavementM2),
    dripline_m2: m2(figures.driplineM2),
    fallout_m2: m2(figures.falloutM2),
  };
}

/**
 * Our columns, then what the record carried beyond them; an extra that bears one of our names stays as `NAME_given`, so
 * that nothing the user recorded is lost and no figure of ours is replaced.
 */
export function withExtra(
  ours: Readonly<Record<string, unknown>>,
  extra: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const out: [string, unknown][] = Object.entries(ours);
  for (const [name, value] of Object.entries(extra))
    out.push([Object.hasOwn(ours, name) ? `${name}_given` : name, value]);
  return Object.fromEntries(out);
}
