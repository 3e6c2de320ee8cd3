/** All that the plan knows of one block: every action, what it brings and costs, and every reason against it. */
import type { ActionOffer, PlannedBlock, WorkPlan } from '@crownfall/priority';
import { actionName, describeReason, treatmentCautions } from '@crownfall/survey';
import { money, rangeText } from './plan-report.ts';
import { areaText, grouped, percentText } from './quantities.ts';

/** RangeError for a block that is not in the plan. */
export function blockReport(plan: WorkPlan, blockId: string): string {
  const block = plan.blocks.find((each) => each.blockId === blockId);
  if (!block) throw new RangeError(`expected a block of the plan, got ${blockId}`);
  const { name, rank, bloomState, leave, keeps, taken, weekOf } = block;
  const firm = keeps === null ? '' : `; chosen in ${percentText(keeps)} of the draws`;
  return [
    `${blockId}${name === null ? '' : ` ${name}`} – rank ${rank}, bloom ${bloomState}`,
    `Chosen: ${actionName(taken.action, 'en')}${weekOf === null ? '' : `, week of ${weekOf}`}${firm}.`,
    '',
    ...block.offers.flatMap((offer) => offerLines(offer, plan, block)),
    '',
    `Left alone, ${areaText(leave.stainedM2.value, plan.units)}${rangeText(leave.stainedM2)} is expected to show stain; ` +
      `${areaText(leave.fadedM2, plan.units)} of it still on ${leave.onDay} if nothing more falls.` +
      (leave.refoliatedBy === null ? '' : ` Crowns refoliate by about ${leave.refoliatedBy}.`),
    ...treeLines(plan, blockId),
    ...productLines(plan),
    ...treatmentCautions('en'),
  ].join('\n');
}

function offerLines(offer: ActionOffer, { currency, units }: WorkPlan, block: PlannedBlock): string[] {
  const cost = offer.cost === null ? 'no price' : money(offer.cost, currency);
  const hours = offer.crewHours === null ? '' : `, ${grouped(offer.crewHours, 1)} crew h`;
  const trees = offer.treeIds.length === 0 ? '' : `, ${offer.treeIds.length} trees`;
  const area = offer.areaM2 === 0 ? '' : `, ${areaText(offer.areaM2, units)} of pavement`;
  const until = offer.lastDay === null || offer.forbidden.length > 0 ? '' : `, by ${offer.lastDay}`;
  const chosen = block.action === offer.action ? ' ← chosen' : '';
  const effect =
    offer.action === 'leave' || offer.action === 'inspect'
      ? 'avoids nothing by itself'
      : `avoids ${areaText(offer.avoidedM2.value, units)}${rangeText(offer.avoidedM2)}`;
  return [
    `${actionName(offer.action, 'en')}: ${effect}, ${cost}${hours}${trees}${area}${until}${chosen}`,
    ...offer.forbidden.flatMap((reason) => {
      const { what, remedy } = describeReason(reason, 'en');
      return [`  not offered (${reason.code}): ${what}.`, `    ${remedy}`];
    }),
  ];
}

function treeLines({ treated }: WorkPlan, blockId: string): string[] {
  return treated
    .filter((tree) => tree.blockId === blockId)
    .map(({ treeId, nearestM }) => {
      const distances = Object.entries(nearestM).map(([kind, metres]) => `${kind} ${grouped(metres, 1)} m`);
      return `  ${treeId}: ${distances.length === 0 ? 'no water mapped' : distances.join(', ')}`;
    });
}

/** What the licensed person typed from the labels, as it stands. */
function productLines({ settings: { products } }: WorkPlan): string[] {
  return products.map(({ name, group, label_rate, label_source, typed_by }) => {
    const rate = label_rate ? `; typed from the label${typed_by ? ` by ${typed_by}` : ''}: ${label_rate}` : '';
    return `Product ${name}: mode-of-action group ${group}${rate}${label_source ? ` (${label_source})` : ''}.`;
  });
}
