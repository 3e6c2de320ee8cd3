/** Figures with their ranges. A range is null until random draws were made; it is never invented. */
export interface Ranged {
  readonly value: number;
  readonly range80: readonly [lo: number, hi: number] | null;
  readonly range95: readonly [lo: number, hi: number] | null;
}

/** The accounting of some pavement (a block, a piece, a kind), all in m². Overlaps between crowns count once. */
export interface PavementFigures {
  readonly pavementM2: number;
  /** Under crowns. */
  readonly driplineM2: number;
  /** Under crowns or their drift rings. */
  readonly falloutM2: number;
  /** Expected to show stain. */
  readonly stainedM2: Ranged;
}

/** What one crown does to the pavement: its own areas (overlaps not removed) and the stained area attributed to it. */
export interface CrownFigures {
  readonly driplineM2: number;
  readonly falloutM2: number;
  readonly stainedM2: Ranged;
}
