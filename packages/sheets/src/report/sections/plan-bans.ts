/** What a plan may not do, gathered: reasons that differ only in days and numbers become one with their range. */
import type { Reason } from '@crownfall/survey';
import type { ActionOffer, WorkPlan } from '../any-plan.ts';

export interface Ban {
  readonly actions: readonly ActionOffer['action'][];
  /** Its days and numbers span those of all blocks. */
  readonly reason: Reason;
  readonly blocks: readonly string[];
}

/** Bans by reason; actions forbidden for the same reason in the same blocks stand together. Most blocks first. */
export function bansOf({ blocks }: Pick<WorkPlan, 'blocks'>): readonly Ban[] {
  const single = new Map<string, { action: ActionOffer['action']; reasons: Reason[]; blocks: string[] }>();
  for (const { blockId, offers } of blocks) {
    for (const { action, forbidden } of offers) {
      for (const reason of forbidden) {
        const key = `${action} ${kindOf(reason)}`;
        const known = single.get(key) ?? { action, reasons: [], blocks: [] };
        known.reasons.push(reason);
        known.blocks.push(blockId);
        single.set(key, known);
      }
    }
  }
  const joined = new Map<string, Ban>();
  for (const { action, reasons, blocks: held } of single.values()) {
    const key = `${kindOf(reasons[0])} ${held.join(' ')}`;
    const known = joined.get(key);
    joined.set(key, {
      actions: [...(known?.actions ?? []), action],
      reason: { code: reasons[0].code, facts: spannedFacts(reasons) },
      blocks: held,
    });
  }
  return [...joined.values()].sort((a, b) => b.blocks.length - a.blocks.length);
}

const isDay = (value: unknown): boolean => /^\d{4}-\d{2}-\d{2}$/.test(String(value));
const spans = (value: unknown): boolean => typeof value === 'number' || isDay(value);

/** The code and the facts that are words: what makes two reasons of one kind; and which facts are known at all. */
function kindOf({ code, facts }: Reason): string {
  const parts = Object.entries(facts).map(([name, value]) => (spans(value) ? name : `${name}=${value}`));
  return [code, ...parts.sort()].join(' ');
}

function spannedFacts(reasons: readonly Reason[]): Reason['facts'] {
  const [first] = reasons;
  return Object.fromEntries(
    Object.entries(first.facts).map(([name, value]) => {
      if (!spans(value)) return [name, value];
      const all = reasons.map(({ facts }) => facts[name]);
      const sorted = typeof value === 'number' ? all.map(Number).sort((a, b) => a - b) : all.map(String).sort();
      const [least, most] = [sorted[0], sorted[sorted.length - 1]];
      return [name, least === most ? value : `${least}–${most}`];
    }),
  );
}
