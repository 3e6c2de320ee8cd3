/** The outcomes of planning, as the assessment room gives them. */
import type { planWork } from '@crownfall/assessment';

export type AnyPlan = ReturnType<typeof planWork>;
export type WorkPlan = Extract<AnyPlan, { readonly feasible: true }>;
export type NoPlan = Extract<AnyPlan, { readonly feasible: false }>;
export type PlannedBlock = WorkPlan['blocks'][number];
export type ActionOffer = PlannedBlock['taken'];
