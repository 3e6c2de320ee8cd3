import type { Defined } from '@crownfall/statistics';

/** The value of a result that a test expects to be defined; the test fails with the reason otherwise. */
export function required<T>(result: Defined<T>): T {
  if (!result.defined) throw new Error(`expected a defined result, got: ${result.reason}`);
  return result.value;
}
