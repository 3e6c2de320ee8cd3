/** What page and worker say to each other. */
import type { BlockWater, CrownPreview, Stage } from '@crownfall/assessment';
import type { Finding } from '@crownfall/geometry';
import type { PlanSettings } from '@crownfall/survey';
import type { CrownRecord, RecordEdit, Weighing } from '../edits/edit.ts';
import type { Shown } from '../project/project.ts';
import type { ProjectPlace } from '../project/project-files.ts';
import type { CalibrationShown } from './calibration-shown.ts';
import type { Change } from './change.ts';
import type { EarlierSeason } from './earlier-season.ts';
import type { GivenFiles } from './plan-files.ts';
import type { PlanOutcome } from './plan-maker.ts';
import type { FollowedRecord, TreeRecord } from './project-reckoner.ts';
import type { ReportWish } from './report-maker.ts';
import type { SheetWish } from './sheet-maker.ts';

/** Questions by name: what is asked, and what comes back. */
export interface Questions {
  readonly open: {
    readonly asked: { readonly place: ProjectPlace; readonly edits: readonly RecordEdit[] };
    readonly told: Opened;
  };
  readonly setEdits: { readonly asked: readonly RecordEdit[]; readonly told: Change };
  readonly follow: {
    readonly asked: { readonly records: readonly FollowedRecord[]; readonly edits: readonly RecordEdit[] };
    readonly told: Change;
  };
  readonly weigh: { readonly asked: Weighing; readonly told: null };
  /** Null: no earlier year was rated. */
  readonly season: { readonly asked: null; readonly told: EarlierSeason | null };
  readonly calibration: { readonly asked: null; readonly told: CalibrationShown };
  readonly sheets: { readonly asked: SheetWish; readonly told: Blob };
  readonly report: { readonly asked: ReportWish; readonly told: Blob };
  readonly plan: {
    readonly asked: { readonly settings: PlanSettings; readonly given: GivenFiles };
    readonly told: PlanOutcome;
  };
  /** Of a block, about the trees that a treatment could be meant for; null without a plan. */
  readonly water: { readonly asked: string; readonly told: BlockWater | null };
  readonly preview: {
    readonly asked: { readonly treeId: string; readonly record: CrownRecord };
    readonly told: CrownPreview | null;
  };
  readonly endPreview: { readonly asked: null; readonly told: null };
  readonly tree: { readonly asked: string; readonly told: TreeRecord | null };
  readonly layerFile: { readonly asked: 'crowns' | 'ratings'; readonly told: string };
}
export type Question = keyof Questions;

export type Opened =
  | { readonly stopped: false; readonly shown: Shown; readonly imagery: readonly string[] }
  | { readonly stopped: true; readonly findings: readonly Finding[] };

export interface Ask<Q extends Question = Question> {
  readonly id: number;
  readonly question: Q;
  readonly asked: Questions[Q]['asked'];
}

export type Answer =
  | { readonly id: number; readonly told: unknown }
  | { readonly id: number; readonly failed: string }
  | { readonly progress: Stage | 'reading'; readonly share: number }
  /** Addresses the worker has read from. */
  | { readonly loaded: readonly string[] };
