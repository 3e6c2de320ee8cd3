import { finding } from '@crownfall/survey';
import type { FeatureTaker } from '../geojson/feature-taker.ts';

/** Tells that a file breaks off or is not as its format asks; what was complete before is kept. */
export function tellDamage(taker: FeatureTaker, format: string, problem: string): void {
  const kept = taker.count();
  const words = kept === 0 ? problem : `${problem}; the ${kept} complete features before it are kept`;
  const grade = kept === 0 ? 'error/stops' : 'warning/left_out';
  taker.findings.add(finding('file-damaged', grade, taker.place, { format, problem: words }));
}

/** Tells that a file is not read because reading it could do harm. */
export function tellRefusal(taker: FeatureTaker, format: string, problem: string): void {
  taker.findings.add(finding('file-refused', 'error/stops', taker.place, { format, problem }));
}

/** What went wrong with a file, in one line, whatever was thrown; a failing disk is no fault of the file and goes on. */
export function problemOf(error: unknown): string {
  if (error instanceof Error && error.name === 'Outage') throw error;
  // Words of the engine differ between engines and tell a person nothing.
  if (error instanceof TypeError) return 'its parts do not fit together';
  if (error instanceof SyntaxError) return 'its description of itself is not JSON';
  const words = error instanceof Error ? error.message : String(error);
  if (error instanceof RangeError && /DataView|array|Invalid/i.test(words)) return 'it points outside of itself';
  return words.split('\n', 1)[0].slice(0, 160);
}
