/** The amount of each criterion, in its own unit, from what is known of a block. */
import type { Complaint, Criterion, FootTraffic, PavementKind, PrioritySettings } from '@crownfall/survey';
import { daysBetween } from './days.ts';
import type { BloomState } from './score.ts';

/** Stained area of a block on pavement that is alike, m². */
export interface StainedPart {
  readonly kind: PavementKind;
  readonly footTraffic: FootTraffic | undefined;
  readonly stainedM2: number;
}

export interface BlockFacts {
  readonly stained: readonly StainedPart[];
  /** Complaints located in the block (or given to it as the nearest), of any state and matter. */
  readonly complaints: readonly Complaint[];
  /** Severities 0–1 of the block's trees with a staining cause. */
  readonly severities: readonly number[];
  /** Sensitive sites near its stained pavement. */
  readonly sites: number;
  readonly bloomState: BloomState;
}

/**
 * All amounts of a block. `stained`: Σ visibility · stained m². `foot_traffic`: mean value of the pavement's class weighted by
 * stained area, 0–1; pavement without a class counts 0; 0 where nothing is stained. `complaints`: see `complaintWeight`.
 * `worst_severity`: % of the crown, 0 without trees. `sensitive_sites`: a count. `bloom_window`: the state's value.
 */
export function criterionAmounts(
  facts: BlockFacts,
  settings: PrioritySettings,
  asOf: string | null,
): Record<Criterion, number> {
  let visibleM2 = 0;
  let stainedM2 = 0;
  let trafficM2 = 0;
  for (const part of facts.stained) {
    visibleM2 += settings.visibility[part.kind] * part.stainedM2;
    stainedM2 += part.stainedM2;
    trafficM2 += (part.footTraffic ? settings.foot_traffic_value[part.footTraffic] : 0) * part.stainedM2;
  }
  return {
    stained: visibleM2,
    foot_traffic: stainedM2 > 0 ? trafficM2 / stainedM2 : 0,
    complaints: facts.complaints.reduce((sum, complaint) => sum + complaintWeight(complaint, settings, asOf), 0),
    worst_severity: 100 * facts.severities.reduce((worst, share) => Math.max(worst, share), 0),
    sensitive_sites: facts.sites,
    bloom_window: settings.bloom_state_value[facts.bloomState],
  };
}

/**
 * What a complaint weighs: 1 when new, half after each `complaint_half_life_days`; 1 when its date or today's is not known. 0
 * when it does not count: closed, about something other than staining or larvae, or received after `asOf`.
 *
 * Example: half-life 90 days, received 45 days ago: 0.7071.
 */
export function complaintWeight(
  complaint: Complaint,
  { complaint_half_life_days: halfLifeDays }: Pick<PrioritySettings, 'complaint_half_life_days'>,
  asOf: string | null,
): number {
  if (!complaintCounts(complaint, asOf)) return 0;
  if (asOf === null || complaint.receivedOn === undefined) return 1;
  return 2 ** (-daysBetween(complaint.receivedOn, asOf) / halfLifeDays);
}

/** Open, about staining or larvae, and received by the day `asOf`. */
export function complaintCounts({ state, about, receivedOn }: Complaint, asOf: string | null): boolean {
  const known = asOf === null || receivedOn === undefined || receivedOn <= asOf;
  return state === 'open' && (about === 'staining' || about === 'larvae') && known;
}
