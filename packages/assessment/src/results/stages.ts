/** The outcomes of all stages of one run, side by side. */
import type { Finding } from '@crownfall/geometry';
import type { ProjectInput, Survey } from '@crownfall/survey';
import type { DrawnRanges } from '../draws/drawn-ranges.ts';
import type { Ground } from '../ground/ground.ts';
import type { Ranking } from '../rank-stage.ts';
import type { Stain } from '../stain-stage.ts';

export interface Stages {
  readonly input: Pick<ProjectInput, 'layers'>;
  readonly survey: Survey;
  readonly ground: Ground;
  readonly stain: Stain;
  readonly ranking: Ranking;
  /** Absent when no draws were made. */
  readonly drawn?: DrawnRanges | undefined;
  /** Of reading the survey; those of the later stages are added. */
  readonly findings: readonly Finding[];
}
