/** The season's plan as people read it: one line for each block, what it brings, how firm it is, what more would buy. */
import type { Ranged } from '@crownfall/stain';
import type { Action, Constraint, PlanSettings } from '@crownfall/survey';
import type { BloomState } from '../score.ts';
import type { ActionOffer } from './action-offer.ts';
import type { WorkLimits } from './work-problem.ts';

/** What becomes of a block that is left alone. */
export interface LeaveOutlook {
  /** Stained area expected now. */
  readonly stainedM2: Ranged;
  /** Of it, still showing on `onDay` if nothing more falls, by the user's fade setting; m². */
  readonly fadedM2: number;
  readonly onDay: string;
  /** Crowns are expected to have refoliated by this day; null when no crown is known to be affected. */
  readonly refoliatedBy: string | null;
}

export interface PlannedBlock {
  readonly blockId: string;
  readonly name: string | null;
  readonly rank: number;
  readonly bloomState: BloomState;
  readonly action: Action;
  /** The offer taken. */
  readonly taken: ActionOffer;
  /** Week of the plan, from 1, and its first day; null when left alone. */
  readonly week: number | null;
  readonly weekOf: string | null;
  readonly mustDo: boolean;
  /** Share of the draws in which this action is chosen for this block; null without draws. */
  readonly keeps: number | null;
  /** All offers of the block, allowed or not, in the order of `ACTIONS`. */
  readonly offers: readonly ActionOffer[];
  readonly leave: LeaveOutlook;
}

/** What one more unit would buy. */
export interface NextUnit {
  readonly of: 'money' | 'crew_days_per_week';
  /** Size of the unit. */
  readonly step: number;
  /** Stained area avoided more, m²; 0: nothing, the limit does not bind. */
  readonly avoidedM2: number;
}

export interface FrontierPoint {
  readonly budget: number;
  readonly cost: number;
  readonly avoidedM2: number;
  /** null: not proved. */
  readonly gap: number;
}

export interface DistrictShare {
  readonly name: string;
  readonly stainedM2: number;
  /** Effects of its blocks, added up. */
  readonly avoidedM2: number;
  /** null without draws. */
  readonly avoidedRange80M2: readonly [number, number] | null;
  readonly cost: number;
  readonly blocks: number;
}

/** An unrated tree and what knowing it would be worth to the plan. */
export interface RatingValue {
  readonly treeId: string;
  readonly blockId: string;
  /** Expected further stained area avoided if the tree were rated before the plan is made, m². */
  readonly valueM2: number;
}

export interface RotationNote {
  readonly blockId: string;
  readonly product: string;
  readonly group: string;
  readonly last: { readonly on: string; readonly product: string };
  /** In the same bloom as now, or in the one before. */
  readonly since: 'this-season' | 'last-season';
}

export interface Notice {
  readonly blockId: string;
  readonly address: string;
  readonly distanceM: number;
}

/** A tree of the plan that is treated, and how far water lies. */
export interface TreatedTree {
  readonly treeId: string;
  readonly blockId: string;
  /** Nearest of each kind that is mapped, m. */
  readonly nearestM: Readonly<Partial<Record<'water' | 'drain' | 'well', number>>>;
}

interface PlanFrame {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  readonly asOf: string;
  readonly currency: string;
  readonly calibrated: boolean;
  readonly draws: number;
  readonly seed: number;
  readonly limits: WorkLimits;
  readonly settings: PlanSettings;
}

export interface WorkPlan extends PlanFrame {
  readonly feasible: true;
  /** All blocks in rank order, those left alone too. */
  readonly blocks: readonly PlannedBlock[];
  /** Stained area expected in the town, and what the whole plan avoids of it, all blocks reckoned together; m². */
  readonly stainedM2: Ranged;
  readonly avoidedM2: Ranged;
  readonly cost: number;
  readonly crewHours: number;
  /** Of the programme, which adds the blocks' own effects: bound, gap (0: optimum proved), and the plan made by hand. */
  readonly proof: {
    readonly avoidedM2: number;
    readonly boundM2: number;
    readonly gap: number;
    readonly greedyM2: number | null;
  };
  readonly next: readonly NextUnit[];
  readonly frontier: readonly FrontierPoint[];
  readonly districts: readonly DistrictShare[];
  /** Greatest first. */
  readonly worthRating: readonly RatingValue[];
  readonly rotation: readonly RotationNote[];
  readonly notices: readonly Notice[];
  readonly treated: readonly TreatedTree[];
}

/** There is no plan: these constraints cannot be met together. */
export interface NoPlan extends PlanFrame {
  readonly feasible: false;
  readonly clash: readonly Constraint[];
  readonly offers: readonly ActionOffer[];
}
