export { type AreaColumns, areasBy, figuresAt, unranged } from './area-columns.ts';
export { type BlameColumns, blockKey, type CrownColumns, crownFiguresAt } from './attribution.ts';
export { BalancedSums, balancedSum } from './balanced-sum.ts';
export type { CrownFigures, PavementFigures, Ranged } from './figures.ts';
export { type LedgerKeys, reckonStain, type StainReckoning } from './reckoning.ts';
export { cellDose, type DoseField, stainedShares } from './stained-share.ts';
export { savedByTreating, type WhatIf, whatIf, type ZoneCells, zoneCells } from './what-if.ts';
