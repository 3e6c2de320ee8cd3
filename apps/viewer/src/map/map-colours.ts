/** The map's own colours, by theme: quiet ground, crowns in leaf green, ink for what is ranked. */
import type { Theme } from './stain-ramp.ts';

export interface MapColours {
  readonly ground: string;
  readonly block: string;
  readonly blockLine: string;
  readonly pavementLine: string;
  readonly crown: string;
  readonly crownLine: string;
  readonly drift: string;
  readonly ink: string;
  readonly paper: string;
  readonly accent: string;
  readonly water: string;
}

export const MAP_COLOURS: Readonly<Record<Theme, MapColours>> = {
  light: {
    ground: '#e4eae2',
    block: '#edf2ed',
    blockLine: '#7d8c83',
    pavementLine: '#aab3ac',
    crown: '#60956b',
    crownLine: '#336144',
    drift: '#6b4a30',
    ink: '#1b2a23',
    paper: '#f8fbf9',
    accent: '#1a634d',
    water: '#2f6f9f',
  },
  dark: {
    ground: '#171e19',
    block: '#1c2520',
    blockLine: '#76867c',
    pavementLine: '#465049',
    crown: '#456f4e',
    crownLine: '#72a780',
    drift: '#d9b27a',
    ink: '#e3eae4',
    paper: '#101714',
    accent: '#7cd2ae',
    water: '#7db4dd',
  },
};
