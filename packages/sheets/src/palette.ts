/**
 * The colours of Crownfall's maps. The ramp of stained area falls evenly in lightness, so that it stays in order for every
 * kind of colour vision and in grey; the two uppermost classes are hatched besides.
 */
import type { Hatch } from './drawing.ts';

/** From little to much stained area: even steps of CIEDE2000, from sand over rose to plum. */
export const STAIN_RAMP = ['#f3ead3', '#e9be9c', '#d3917f', '#b46c75', '#8a4e6c', '#532f56'] as const;

/** Upper ends of the classes, m² of stained pavement in a block; the last class is open. */
export const STAIN_CLASSES_M2 = [10, 30, 60, 100, 160] as const;

const HATCH_LIGHT: Hatch = { colour: '#ffffff', widthMm: 0.09, gapMm: 1.5, crossed: false };
const HATCH_DENSE: Hatch = { colour: '#ffffff', widthMm: 0.09, gapMm: 1.5, crossed: true };

export const MAP = {
  ink: '#26221f',
  quiet: '#6d655d',
  land: '#efece4',
  water: '#c9dde6',
  waterInk: '#4d7386',
  carriageway: '#ffffff',
  parking: '#f1ede6',
  walk: '#e2dcd2',
  plaza: '#d8cebd',
  kerb: '#b9b0a4',
  cleanCrown: '#8fae8b',
  cleanCrownRim: '#5f8360',
  foulCrown: '#3d2a20',
  foulCrownRim: '#1e130d',
} as const;

/** The class of a stained area, from 0. */
export function stainClass(stainedM2: number): number {
  const index = STAIN_CLASSES_M2.findIndex((to) => stainedM2 < to);
  return index < 0 ? STAIN_CLASSES_M2.length : index;
}

/** Hatching of the two uppermost classes; none below. */
export function stainHatch(index: number): Hatch | undefined {
  if (index === STAIN_RAMP.length - 1) return HATCH_DENSE;
  return index === STAIN_RAMP.length - 2 ? HATCH_LIGHT : undefined;
}
