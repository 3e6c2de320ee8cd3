/**
 * The shape of a catalogue: every word that a person reads about a finding, in one language. In a sentence `{name}` stands
 * for a fact or a part of the place; a part in `[…]` is left away when one of its facts is not known.
 */
import type { Finding } from '@crownfall/geometry';
import type { FindingCode } from '../findings/finding-codes.ts';
import type { LayerName } from '../project-input.ts';

export type Language = 'en' | 'es';

export interface Words {
  /** What was found; one sentence without its full stop. */
  readonly what: string;
  /** What to do about it; one or two sentences. */
  readonly remedy: string;
}

export interface Catalogue {
  readonly messages: Readonly<Record<FindingCode, Words>>;
  /** For a code that another room has added and this catalogue does not have yet. */
  readonly unknown: Words;
  readonly effects: Readonly<Record<Finding['effect'], string>>;
  readonly severities: Readonly<Record<Finding['severity'], string>>;
  readonly layers: Readonly<Record<LayerName | 'settings' | 'imagery', string>>;
  /** How the parts of a place are said; joined by commas. */
  readonly place: {
    readonly feature: string;
    readonly position: string;
    readonly row: string;
    readonly field: string;
    readonly vertex: string;
    readonly lonlat: string;
    readonly nowhere: string;
  };
  /** Facts that are words of the program rather than of the data. */
  readonly terms: Readonly<Record<string, string>>;
  readonly decimal: '.' | ',';
  /** Added when one finding stands for further ones of its kind. */
  readonly more: string;
}
