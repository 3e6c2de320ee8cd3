/** Colours of the walk: for full sun, and for dark hours. Every text stands at 7:1 or more on its ground (tested). */

export type Light = 'sun' | 'night';

export interface WalkColours {
  readonly paper: string;
  readonly card: string;
  readonly ink: string;
  readonly muted: string;
  readonly line: string;
  /** Ground and letters of the one main button. */
  readonly main: string;
  readonly onMain: string;
  /** Ground and letters of what is chosen. */
  readonly chosen: string;
  readonly onChosen: string;
  /** Cautions and what waits. */
  readonly warn: string;
  readonly onWarn: string;
}

/** Which letters stand on which ground. */
export const TEXT_ON: readonly (readonly [text: keyof WalkColours, ground: keyof WalkColours])[] = [
  ['ink', 'paper'],
  ['ink', 'card'],
  ['muted', 'paper'],
  ['muted', 'card'],
  ['main', 'paper'],
  ['main', 'card'],
  ['onMain', 'main'],
  ['onChosen', 'chosen'],
  ['onWarn', 'warn'],
];

export const WALK_COLOURS: Readonly<Record<Light, WalkColours>> = {
  sun: {
    paper: '#ffffff',
    card: '#f1f6f2',
    ink: '#0b1711',
    muted: '#35443c',
    line: '#6d7d74',
    main: '#0b4a37',
    onMain: '#ffffff',
    chosen: '#0b1711',
    onChosen: '#ffffff',
    warn: '#ffd84a',
    onWarn: '#1c1500',
  },
  night: {
    paper: '#0c120f',
    card: '#18211c',
    ink: '#f2f7f3',
    muted: '#c3d0c8',
    line: '#7d8e84',
    main: '#8fe3c0',
    onMain: '#06241a',
    chosen: '#f2f7f3',
    onChosen: '#0c120f',
    warn: '#f0c64a',
    onWarn: '#1c1500',
  },
};

/** Puts the colours on the page's root, where the style sheet looks for them. */
export function showLight(light: Light, root: HTMLElement): void {
  root.dataset.light = light;
  root.style.colorScheme = light === 'sun' ? 'light' : 'dark';
  for (const [name, value] of Object.entries(WALK_COLOURS[light])) root.style.setProperty(`--${name}`, value);
}
