/**
 * How stained pavement is shown: fixed classes of stained share, so that a colour means the same in every town and season;
 * a ramp of even lightness steps in one hue family, legible without colour vision; and, from the middle up, hatching that
 * grows denser, legible without any colour.
 */
export type Theme = 'light' | 'dark';

export interface StainClass {
  /** Lower bound of the class, per cent of the pavement piece. */
  readonly fromPct: number;
  readonly label: string;
  readonly light: string;
  readonly dark: string;
  /** Distance between hatch lines in pixels; null for plain. */
  readonly hatchPx: number | null;
}

/** Below this share (per cent) pavement counts as clean and stays grey. */
export const CLEAN_BELOW_PCT = 0.5;

export const CLEAN: Readonly<Record<Theme, string>> = { light: '#ced2cf', dark: '#323734' };

/** Colours from OKLab: lightness .90 to .325 (light theme) and .36 to .885 (dark theme) in equal steps. */
export const STAIN_CLASSES: readonly StainClass[] = [
  { fromPct: CLEAN_BELOW_PCT, label: '0.5–2 %', light: '#eaddbd', dark: '#4b392a', hatchPx: null },
  { fromPct: 2, label: '2–5 %', light: '#d9b27a', dark: '#725235', hatchPx: null },
  { fromPct: 5, label: '5–10 %', light: '#c48647', dark: '#996d3e', hatchPx: null },
  { fromPct: 10, label: '10–20 %', light: '#a26032', dark: '#bf8c48', hatchPx: 8 },
  { fromPct: 20, label: '20–40 %', light: '#7b4026', dark: '#deaf5c', hatchPx: 5 },
  { fromPct: 40, label: 'over 40 %', light: '#50271c', dark: '#f3d78b', hatchPx: 3 },
];

export const hatchName = (stain: StainClass): string => `hatch-${stain.hatchPx}`;

/** Hatch lines across a stain colour: dark on the light half of the ramp and the other way round. */
export const HATCH_INK: Readonly<Record<Theme, string>> = { light: '#f8fbf9', dark: '#101714' };
