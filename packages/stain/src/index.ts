export type { CrownFigures, PavementFigures, Ranged } from './figures.ts';
