/**
 * A reminder to change the mode of action: where the product meant to be used has the group of the block's last treatment.
 * Source of the principle: IRAC, Mode of Action Classification Scheme, section on alternations and sequences (from memory). The
 * groups are those the user typed from labels.
 */
import type { PlanSettings } from '@crownfall/survey';
import type { RotationNote } from './work-plan.ts';

/** One note for each block to be treated whose last treatment, this season or the one before, was of the same group. */
export function rotationNotes(
  blockIds: readonly string[],
  { product: chosen, products, treatments }: Pick<PlanSettings, 'product' | 'products' | 'treatments'>,
  asOf: string,
): RotationNote[] {
  const groupOf = new Map(products.map(({ name, group }) => [name, group.trim()]));
  const group = groupOf.get(chosen);
  if (group === undefined) return [];
  const year = Number(asOf.slice(0, 4));
  return blockIds.flatMap((blockId) => {
    const [last] = treatments
      .filter(({ block_id, on }) => block_id === blockId && on <= asOf)
      .sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
    if (!last || !alike(groupOf.get(last.product), group)) return [];
    const since = year - Number(last.on.slice(0, 4));
    if (since > 1) return [];
    const note = { blockId, product: chosen, group, last: { on: last.on, product: last.product } };
    return [{ ...note, since: since === 0 ? ('this-season' as const) : ('last-season' as const) }];
  });
}

/** Groups are typed by hand: capitals do not matter. */
function alike(a: string | undefined, b: string): boolean {
  return a?.toUpperCase() === b.toUpperCase();
}
