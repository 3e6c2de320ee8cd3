/**
 * An assessment that follows edits: a changed crown redoes only its neighbourhood of the overlay, changed ratings only the
 * stain, changed weights only the ranking. What it answers equals {@link assess} on the edited input (tested).
 */
import type { Finding } from '@crownfall/geometry';
import {
  asOfDay,
  type PlanSettings,
  type PrioritySettings,
  type ProjectInput,
  type Rating,
  readSurvey,
  type Settings,
  type Survey,
  type Tree,
} from '@crownfall/survey';
import type { Reckoned } from '../assess.ts';
import type { Ground } from '../ground/ground.ts';
import { groundOf, type PlacedGround, placeGround } from '../ground/reckon-geometry.ts';
import { noProgress, type Progress } from '../progress.ts';
import { type Ranking, rank } from '../rank-stage.ts';
import type { Assessment } from '../result.ts';
import { compose } from '../results/compose.ts';
import { reckonStain, type Stain } from '../stain-stage.ts';
import { type CrownPreview, CrownPreviewer } from './crown-preview.ts';
import { LiveOverlayState } from './live-overlay-state.ts';

export class LiveAssessment {
  /** Findings that stop the job; nothing else may be asked while there are any. */
  readonly stopping: readonly Finding[];
  #input: Pick<ProjectInput, 'layers'>;
  #survey: Survey;
  #settings: Settings;
  #findings: readonly Finding[];
  #asOf: string;
  #placed: PlacedGround;
  #state: LiveOverlayState;
  #ground: Ground;
  #stain: Stain;
  #ranking: Ranking;
  #previewer: CrownPreviewer | null = null;

  constructor(input: ProjectInput, progress: Progress = noProgress) {
    const { survey, settings, findings } = readSurvey(input);
    this.stopping = findings.filter(({ effect }) => effect === 'stops');
    this.#input = input;
    this.#findings = findings;
    this.#survey = survey;
    this.#settings = settings;
    this.#asOf = asOfDay(survey, settings);
    this.#placed = placeGround(survey, settings, progress);
    progress('overlay', 0, 1);
    this.#state = new LiveOverlayState(this.#placed, settings);
    progress('overlay', 1, 1);
    this.#ground = groundOf(this.#placed, this.#state.overlay.ledger());
    this.#stain = reckonStain(this.#ground, survey, settings, this.#asOf);
    this.#ranking = rank(this.#ground, this.#stain, survey, settings, this.#asOf);
  }

  get settings(): Settings {
    return this.#settings;
  }

  get asOf(): string {
    return this.#asOf;
  }

  tree(treeId: string): Tree | undefined {
    return this.#survey.trees.find((tree) => tree.treeId === treeId);
  }

  /** The ratings of a tree, oldest first. */
  ratings(treeId: string): readonly Rating[] {
    return this.#survey.ratings
      .filter((rating) => rating.treeId === treeId)
      .sort((a, b) => (a.ratedOn < b.ratedOn ? -1 : a.ratedOn > b.ratedOn ? 1 : 0));
  }

  /** Everything, as {@link assess} gives it. */
  assessment(): Assessment {
    const stages = { survey: this.#survey, ground: this.#ground, stain: this.#stain, ranking: this.#ranking };
    return compose(
      { ...stages, input: this.#input, findings: this.#findings },
      { settings: this.#settings, asOf: this.#asOf, draws: 0, seed: 1 },
    );
  }

  /** The job as it stands, for `offersOf` and `planWork`. */
  reckoned(): Reckoned {
    const stages = { survey: this.#survey, ground: this.#ground, stain: this.#stain, ranking: this.#ranking };
    return {
      stages: { ...stages, input: this.#input, findings: this.#findings },
      settings: this.#settings,
      asOf: this.#asOf,
    };
  }

  /** Other price list, budget, crew, checks, products: no figure of the assessment changes. */
  arrange(plan: PlanSettings): void {
    this.#settings = { ...this.#settings, plan };
  }

  /** Other weights, reference levels or values: ranks anew. */
  weigh(priority: PrioritySettings): void {
    this.#settings = { ...this.#settings, priority };
    this.#rank();
  }

  /**
   * The figures if this tree had this crown; nothing is kept. Of the same tree again and again while it is drawn; call
   * `keepTree` or `endPreview` when done.
   */
  preview(tree: Tree): CrownPreview {
    this.#previewer ??= new CrownPreviewer(
      { ground: this.#ground, stain: this.#stain, ranking: this.#ranking },
      { survey: this.#survey, settings: this.#settings, asOf: this.#asOf },
      this.#state,
    );
    return this.#previewer.preview(tree);
  }

  endPreview(): void {
    this.#state.revert();
  }

  /** Keeps a tree: changed in its place, or added last. */
  keepTree(tree: Tree): void {
    const at = this.#survey.trees.findIndex(({ treeId }) => treeId === tree.treeId);
    const trees = at < 0 ? [...this.#survey.trees, tree] : this.#survey.trees.with(at, tree);
    this.#state.keep(tree.treeId, this.#state.place(tree));
    this.#regain({ ...this.#survey, trees });
  }

  /** Takes a tree away. Its ratings stay on record. */
  dropTree(treeId: string): void {
    this.#state.keep(treeId, null);
    this.#regain({ ...this.#survey, trees: this.#survey.trees.filter((tree) => tree.treeId !== treeId) });
  }

  /** All ratings from now on. */
  keepRatings(ratings: readonly Rating[]): void {
    this.#survey = { ...this.#survey, ratings };
    this.#asOf = asOfDay(this.#survey, this.#settings);
    this.#stainAgain();
  }

  #regain(survey: Survey): void {
    this.#survey = survey;
    const indexOf = new Map(survey.trees.map((tree, index) => [tree.treeId, index]));
    const { ledger, crowns } = this.#state.standing();
    const numbered = crowns.map((crown) => ({ ...crown, treeIndex: indexOf.get(crown.tree.treeId) ?? -1 }));
    this.#ground = groundOf({ ...this.#placed, crowns: numbered }, ledger);
    this.#stainAgain();
  }

  #stainAgain(): void {
    this.#stain = reckonStain(this.#ground, this.#survey, this.#settings, this.#asOf);
    this.#rank();
  }

  #rank(): void {
    this.#previewer = null;
    this.#ranking = rank(this.#ground, this.#stain, this.#survey, this.#settings, this.#asOf);
  }
}
