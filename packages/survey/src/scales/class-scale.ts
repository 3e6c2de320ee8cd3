/**
 * Rating scales: a class stands for an interval of the crown's affected share; its midpoint is the point estimate, the
 * interval is what is really known.
 */
import type { SeverityInterval } from '../records.ts';

export interface ScaleClass {
  /** As written in the field; compared as a number when it is one, so that `05` and `5` are the same class. */
  readonly code: string;
  readonly loPct: number;
  readonly hiPct: number;
}

export interface ClassScale {
  /** As written in the `scale` field. */
  readonly name: string;
  readonly title: string;
  /** Author, year, publication. */
  readonly source: string;
  readonly classes: readonly ScaleClass[];
}

/**
 * A class as shares 0–1: limits as printed, midpoint their mean. `undefined` for a code that the scale does not have.
 * @example severityOfClass(HORSFALL_BARRATT_0_11, '7') // { share: 0.815, lo: 0.75, hi: 0.88, scale: 'horsfall-barratt-0-11' }
 */
export function severityOfClass(scale: ClassScale, code: string): SeverityInterval | undefined {
  const wanted = foldedCode(code);
  const found = scale.classes.find((one) => foldedCode(one.code) === wanted);
  if (found === undefined) return undefined;
  const { loPct, hiPct } = found;
  return { share: (loPct + hiPct) / 200, lo: loPct / 100, hi: hiPct / 100, scale: scale.name };
}

/** A percentage as it was written: a point without an interval; what raters disagree by is a matter of its own. */
export function severityOfPercent(percent: number): SeverityInterval {
  const share = percent / 100;
  return { share, lo: share, hi: share, scale: 'percent' };
}

function foldedCode(code: string): string {
  const typed = code.trim().toLowerCase();
  return /^\d+(\.0+)?$/.test(typed) ? String(Number(typed)) : typed;
}
