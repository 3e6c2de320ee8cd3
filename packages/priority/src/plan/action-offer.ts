/** What can be done in a block, what it brings, what it costs, and what forbids it. */
import type { Ranged } from '@crownfall/stain';
import type { Action, Price, PricedAction, Reason } from '@crownfall/survey';

export interface ActionOffer {
  readonly blockId: string;
  readonly action: Action;
  /** Trees that are inspected, treated or replaced; empty for cleaning alone. */
  readonly treeIds: readonly string[];
  /** Pavement that is cleaned, m². */
  readonly areaM2: number;
  /** Stained area that this action alone prevents or takes off, anywhere in the town, m², ≥ 0. */
  readonly avoidedM2: Ranged;
  /** In the plan's currency; null without a price. */
  readonly cost: number | null;
  /** null without a price list entry. */
  readonly crewHours: number | null;
  /** The part of the crew hours that must fall before `lastDay`; 0 when there is no such day. */
  readonly hoursInWindow: number;
  /** Last day of the bloom window for what must happen in it, ISO; null: any week will do. */
  readonly lastDay: string | null;
  /** Empty: it may be done. */
  readonly forbidden: readonly Reason[];
}

/** Actions that lie in each action: treating and cleaning is both. */
export const PARTS: Readonly<Record<Action, readonly PricedAction[]>> = {
  leave: [],
  inspect: ['inspect'],
  clean: ['clean'],
  treat: ['treat'],
  treat_and_clean: ['treat', 'clean'],
  replace: ['replace'],
};

export interface Quantity {
  readonly trees: number;
  readonly areaM2: number;
}

export interface Charge {
  readonly cost: number;
  readonly crewHours: number;
}

/**
 * Cost and crew hours of one action: `set_up + per_tree · trees + per_m2 · m²`; null when the list has no entry for it.
 * @example chargeOf('treat', { trees: 4, areaM2: 0 }, prices) // 4 trees at 30 with a set-up of 90: { cost: 210, crewHours: … }
 */
export function chargeOf(action: PricedAction, { trees, areaM2 }: Quantity, prices: readonly Price[]): Charge | null {
  const price = prices.find((each) => each.action === action);
  if (!price) return null;
  return {
    cost: price.set_up + price.per_tree * trees + price.per_m2 * areaM2,
    crewHours: price.hours_set_up + price.hours_per_tree * trees + price.hours_per_m2 * areaM2,
  };
}

/** True when nothing forbids the offer and its cost is known. */
export function isOffered(
  offer: ActionOffer,
): offer is ActionOffer & { readonly cost: number; readonly crewHours: number } {
  return offer.forbidden.length === 0 && offer.cost !== null && offer.crewHours !== null;
}
