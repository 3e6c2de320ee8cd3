/**
 * An assessment that follows edits: a changed crown redoes only its neighbourhood of the overlay, changed ratings only the
 * severities that they touch, changed weights only the ranking; sums are taken anew over all of it. What it answers equals
 * {@link assess} on the edited input (tested).
 */
import type { Finding, OverlayLedger } from '@crownfall/geometry';
import {
  asOfDay,
  type PlanSettings,
  type PrioritySettings,
  type ProjectInput,
  type Rating,
  readSurvey,
  type Settings,
  SeverityBook,
  type Survey,
  type Tree,
} from '@crownfall/survey';
import { type Placed, placedAsRead, type Reckoned } from '../assess.ts';
import { noProgress, type Progress } from '../progress.ts';
import { RankBook, type Ranking } from '../rank-stage.ts';
import type { Assessment } from '../result.ts';
import { compose } from '../results/compose.ts';
import type { Stain } from '../stain-stage.ts';
import { type CrownPreview, CrownPreviewer } from './crown-preview.ts';
import { LiveGround, type Standing } from './live-ground.ts';
import { LiveOverlayState } from './live-overlay-state.ts';
import { LiveStain } from './live-stain.ts';

/** A job that has begun elsewhere: placed, and its overlay where other threads have reckoned it. */
export interface Begun {
  readonly placed: Placed;
  readonly overlay?: OverlayLedger;
}

/** What follows from the records; a stage that is null is reckoned when it is next asked for. */
interface Known {
  readonly standing: Standing;
  readonly survey: Survey;
  readonly asOf: string;
  readonly stain: Stain;
}

export class LiveAssessment {
  /** Findings that stop the job; nothing else may be asked while there are any. */
  readonly stopping: readonly Finding[];
  readonly #input: Pick<ProjectInput, 'layers'>;
  readonly #findings: readonly Finding[];
  readonly #state: LiveOverlayState;
  readonly #ground: LiveGround;
  readonly #severities: SeverityBook;
  readonly #stain: LiveStain;
  readonly #ranks: RankBook;
  /** Its trees are those of the state. */
  #records: Survey;
  #settings: Settings;
  #known: Known | null = null;
  #ranking: Ranking | null = null;
  #assessment: Assessment | undefined;
  #previewer: CrownPreviewer | null = null;

  constructor(input: ProjectInput, progress: Progress = noProgress, begun?: Begun) {
    const placed = begun?.placed ?? placedAsRead(input, readSurvey(input), progress);
    const { survey, settings, findings, ground } = placed;
    this.stopping = findings.filter(({ effect }) => effect === 'stops');
    this.#input = input;
    this.#findings = findings;
    this.#records = survey;
    this.#settings = settings;
    this.#state = new LiveOverlayState(ground, settings, survey.trees, begun?.overlay);
    progress('overlay', 1, 1);
    this.#ground = new LiveGround(ground, this.#state);
    this.#severities = new SeverityBook(settings);
    this.#stain = new LiveStain(this.#ground, this.#state, settings);
    this.#ranks = new RankBook(this.#ground.fixed, survey, settings.priority);
  }

  get settings(): Settings {
    return this.#settings;
  }

  get asOf(): string {
    return this.#now().asOf;
  }

  tree(treeId: string): Tree | undefined {
    return this.#state.tree(treeId);
  }

  /** The ratings of a tree, oldest first. */
  ratings(treeId: string): readonly Rating[] {
    return this.#records.ratings
      .filter((rating) => rating.treeId === treeId)
      .sort((a, b) => (a.ratedOn < b.ratedOn ? -1 : a.ratedOn > b.ratedOn ? 1 : 0));
  }

  /** Everything, as {@link assess} gives it; of what did not change, the objects given before. */
  assessment(): Assessment {
    const { stages, settings, asOf } = this.reckoned();
    this.#assessment = compose(stages, { settings, asOf, draws: 0, seed: 1 }, this.#assessment);
    return this.#assessment;
  }

  /** The job as it stands, for `offersOf` and `planWork`. */
  reckoned(): Reckoned {
    const { standing, survey, stain, asOf } = this.#now();
    const stages = { survey, ground: standing.ground, stain, ranking: this.#ranked() };
    return { stages: { ...stages, input: this.#input, findings: this.#findings }, settings: this.#settings, asOf };
  }

  /** Other price list, budget, crew, checks, products: no figure of the assessment changes. */
  arrange(plan: PlanSettings): void {
    this.#settings = { ...this.#settings, plan };
  }

  /** Other weights, reference levels or values: ranks anew. */
  weigh(priority: PrioritySettings): void {
    if (priority === this.#settings.priority) return;
    this.#settings = { ...this.#settings, priority };
    this.#ranking = null;
    this.#previewer = null;
  }

  /**
   * The figures if this tree had this crown; nothing is kept. Of the same tree again and again while it is drawn; call
   * `keepTree` or `endPreview` when done.
   */
  preview(tree: Tree): CrownPreview {
    this.#previewer ??= this.#newPreviewer();
    return this.#previewer.preview(tree);
  }

  endPreview(): void {
    this.#state.revert();
  }

  /** Keeps a tree: changed in its place, or added last. */
  keepTree(tree: Tree): void {
    this.#state.keep(tree);
    this.#forget();
  }

  /** Takes a tree away. Its ratings stay on record. */
  dropTree(treeId: string): void {
    this.#state.drop(treeId);
    this.#forget();
  }

  /** All ratings from now on. */
  keepRatings(ratings: readonly Rating[]): void {
    this.#records = { ...this.#records, ratings };
    this.#forget();
  }

  #forget(): void {
    this.#known = null;
    this.#ranking = null;
    this.#previewer = null;
  }

  #now(): Known {
    this.#known ??= this.#reckon();
    return this.#known;
  }

  #reckon(): Known {
    this.#state.revert();
    const standing = this.#ground.standing();
    const survey = { ...this.#records, trees: standing.trees };
    const asOf = asOfDay(survey, this.#settings);
    const stain = this.#stain.follow(standing, this.#severities.read(survey, asOf));
    return { standing, survey, asOf, stain };
  }

  #ranked(): Ranking {
    const { standing, stain, asOf } = this.#now();
    this.#ranking ??= this.#ranks.rank(standing.ground, stain, this.#settings, asOf);
    return this.#ranking;
  }

  #newPreviewer(): CrownPreviewer {
    const { standing, stain, asOf } = this.#now();
    return new CrownPreviewer(
      { standing, stain, ranking: this.#ranked(), doses: this.#stain.doses, blockOf: this.#ground.blockOf },
      { settings: this.#settings, asOf, sites: this.#ranks.sites, severityOf: (tree) => this.#severities.of(tree) },
      this.#state,
    );
  }
}
