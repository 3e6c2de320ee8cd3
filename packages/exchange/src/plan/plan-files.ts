/** The plan for machines: JSON, tables for a spreadsheet, blocks for a map. What names a treatment says what governs it. */
import type { planWork } from '@crownfall/assessment';
import { briefCaution, describeConstraint, describeReason, type Language, treatmentCautions } from '@crownfall/survey';
import { writeCsv } from '../csv/write-csv.ts';
import type { JsonGeometry } from '../geojson/geometry-to-json.ts';

type AnyPlan = ReturnType<typeof planWork>;
type WorkPlan = Extract<AnyPlan, { readonly feasible: true }>;
type PlannedBlock = WorkPlan['blocks'][number];
type ActionOffer = PlannedBlock['taken'];

export interface PlanFile {
  readonly name: string;
  readonly text: Iterable<string>;
}

export interface PlanFileOptions {
  readonly language?: Language;
  /** Outlines by block id; without them there is no plan.geojson. */
  readonly outlines?: ReadonlyMap<string, JsonGeometry>;
}

const COLUMNS = [
  'rank',
  'block_id',
  'name',
  'action',
  'avoided_m2',
  'avoided_lo80_m2',
  'avoided_hi80_m2',
  'cost',
  'crew_hours',
  'week_of',
  'last_day',
  'trees',
  'cleaned_m2',
  'kept_share',
  'must_do',
  'bloom_state',
  'left_alone_m2',
  'not_treated_because',
  'caution',
] as const;

/** `plan.csv`, `plan.json`, `notices.csv`, and `plan.geojson` where outlines are given. Columns as documented in the guide to planning. */
export function planFiles(plan: WorkPlan, { language = 'en', outlines }: PlanFileOptions = {}): PlanFile[] {
  const caution = briefCaution(language);
  const rows = plan.blocks.map((block) => tableRow(block, caution));
  const notices = plan.notices.map(({ blockId, address, distanceM }) => ({
    block_id: blockId,
    address,
    distance_m: Number(distanceM.toFixed(1)),
    caution,
  }));
  return [
    { name: 'plan.csv', text: writeCsv(COLUMNS, rows) },
    { name: 'plan.json', text: [`${JSON.stringify(planJson(plan, language), null, 2)}\n`] },
    { name: 'notices.csv', text: writeCsv(['block_id', 'address', 'distance_m', 'caution'], notices) },
    ...(outlines === undefined ? [] : [{ name: 'plan.geojson', text: [mapText(rows, outlines)] }]),
  ];
}

type Row = Readonly<Record<(typeof COLUMNS)[number], string | number | null>>;

function mapText(rows: readonly Row[], outlines: NonNullable<PlanFileOptions['outlines']>): string {
  const features = rows.map((properties) =>
    JSON.stringify({ type: 'Feature', properties, geometry: outlines.get(String(properties.block_id)) ?? null }),
  );
  return `{"type":"FeatureCollection","features":[\n${features.join(',\n')}\n]}\n`;
}

function tableRow({ taken, ...block }: PlannedBlock, caution: string): Row {
  const reasons = block.offers.find(({ action }) => action === 'treat')?.forbidden ?? [];
  return {
    rank: block.rank,
    block_id: block.blockId,
    name: block.name,
    action: block.action,
    avoided_m2: taken.avoidedM2.value,
    avoided_lo80_m2: taken.avoidedM2.range80?.[0] ?? null,
    avoided_hi80_m2: taken.avoidedM2.range80?.[1] ?? null,
    cost: taken.cost ?? 0,
    crew_hours: taken.crewHours ?? 0,
    week_of: block.weekOf,
    last_day: taken.lastDay,
    trees: taken.treeIds.length,
    cleaned_m2: taken.areaM2,
    kept_share: block.keeps,
    must_do: block.mustDo ? 'yes' : 'no',
    bloom_state: block.bloomState,
    left_alone_m2: block.leave.stainedM2.value,
    not_treated_because: reasons.map(({ code }) => code).join(' '),
    caution,
  };
}

/** Areas m², money in `currency`, shares 0–1. A plan that cannot be says which constraints clash. */
export function planJson(plan: AnyPlan, language: Language = 'en'): unknown {
  const frame = {
    title: plan.title,
    cautions: treatmentCautions(language),
    as_of: plan.asOf,
    weeks: plan.limits.weeks,
    budget: plan.limits.budget,
    crew_hours_per_week: plan.limits.crewHoursPerWeek,
    currency: plan.currency,
    calibrated: plan.calibrated,
    draws: plan.draws,
    seed: plan.seed,
  };
  if (!plan.feasible) {
    const clash = plan.clash.map((constraint) => ({
      ...constraint,
      in_words: describeConstraint(constraint, plan.currency, language),
    }));
    return { ...frame, feasible: false, clash, offers: plan.offers.map((offer) => offerJson(offer, language)) };
  }
  return {
    ...frame,
    feasible: true,
    stained_m2: plan.stainedM2,
    avoided_m2: plan.avoidedM2,
    cost: plan.cost,
    crew_hours: plan.crewHours,
    proof: plan.proof,
    next: plan.next.map(({ of, step, avoidedM2 }) => ({ of, step, avoided_m2: avoidedM2 })),
    frontier: plan.frontier.map(({ avoidedM2, ...point }) => ({ ...point, avoided_m2: avoidedM2 })),
    districts: plan.districts,
    worth_rating: plan.worthRating.map(({ treeId, blockId, valueM2 }) => ({
      tree_id: treeId,
      block_id: blockId,
      value_m2: valueM2,
    })),
    rotation: plan.rotation,
    notices: plan.notices.length,
    treated: plan.treated.map(({ treeId, blockId, nearestM }) => ({
      tree_id: treeId,
      block_id: blockId,
      nearest_m: nearestM,
    })),
    products: plan.settings.products,
    blocks: plan.blocks.map((block) => ({
      block_id: block.blockId,
      name: block.name,
      rank: block.rank,
      bloom_state: block.bloomState,
      action: block.action,
      week: block.week,
      week_of: block.weekOf,
      must_do: block.mustDo,
      kept_share: block.keeps,
      leave: {
        stained_m2: block.leave.stainedM2,
        faded_m2: block.leave.fadedM2,
        on: block.leave.onDay,
        refoliated_by: block.leave.refoliatedBy,
      },
      offers: block.offers.map((offer) => offerJson(offer, language)),
    })),
  };
}

function offerJson(offer: ActionOffer, language: Language) {
  return {
    block_id: offer.blockId,
    action: offer.action,
    avoided_m2: offer.avoidedM2,
    cost: offer.cost,
    crew_hours: offer.crewHours,
    last_day: offer.lastDay,
    trees: offer.treeIds,
    cleaned_m2: offer.areaM2,
    forbidden: offer.forbidden.map((reason) => ({ ...reason, ...describeReason(reason, language) })),
  };
}
