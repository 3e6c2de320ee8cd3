/**
 * What each band of an image shows: by the user's word, by the names and colours that the file gives its bands, by TIFF's own
 * tags, and, where a tag may lie, by statistics.
 *
 * Near-infrared in a fourth band is often tagged as alpha (transparency), because programs save four bands as RGBA. A reader that
 * trusts the tag fades the picture. True transparency is nearly all fully opaque or fully clear; light is in between.
 */
import type { BandRole, Samples } from './window.ts';

export interface StatedBands {
  readonly count: number;
  /** `PhotometricInterpretation`: 2 and 6 colour, 3 a colour table. */
  readonly photometric: number;
  /** `ExtraSamples`: 0 unspecified, 1 and 2 alpha. */
  readonly extraSamples: readonly number[];
  /** Text of the `GDAL_METADATA` tag, XML; empty without. */
  readonly metadata: string;
  readonly wholeNumbers: boolean;
}

export interface RoleReading {
  readonly roles: readonly BandRole[];
  /** Bands, from 0, whose tag says alpha or nothing, so that statistics must decide between alpha and near-infrared. */
  readonly doubtful: readonly number[];
  /** The roles follow from the order of the bands alone. */
  readonly assumed: boolean;
}

const COLOURS: readonly BandRole[] = ['red', 'green', 'blue'];

/** Roles by tags and names. */
export function rolesByTag(bands: StatedBands): RoleReading {
  const named = namedRoles(bands);
  const tagged = taggedRoles(bands);
  const roles = tagged.roles.map((role, i) => named[i] ?? role);
  const doubtful = roles.flatMap((role, i) => (isDoubtful(role, named[i], i, bands) ? [i] : []));
  return { roles, doubtful, assumed: tagged.assumed && named.every((one) => one === undefined) };
}

/** A name `near infrared` settles it; the colour `Alpha` does not, programs write it without being asked. */
function isDoubtful(role: BandRole, named: BandRole | undefined, band: number, { count }: StatedBands): boolean {
  if (band !== 3 || count > 5) return false;
  return role === 'alpha' || (role === 'near-infrared' && named === undefined);
}

function taggedRoles({ count, photometric, extraSamples, wholeNumbers }: StatedBands): Omit<RoleReading, 'doubtful'> {
  const colour = photometric === 2 || photometric === 6;
  const base: BandRole[] = colour ? [...COLOURS] : [photometric === 3 ? 'palette' : 'grey'];
  if (photometric > 3 && !colour) base[0] = 'other';
  const roles = Array.from({ length: count }, (_, i): BandRole => {
    if (i < base.length) return base[i];
    return extraRole(extraSamples[i - (count - extraSamples.length)], colour && i === 3);
  });
  const plain = photometric <= 1 && wholeNumbers && (count === 3 || count === 4);
  if (!plain || roles.includes('alpha')) return { roles, assumed: false };
  return { roles: [...COLOURS, 'near-infrared'].slice(0, count) as BandRole[], assumed: true };
}

function extraRole(tag: number | undefined, fourthOfColour: boolean): BandRole {
  if (tag === 1 || tag === 2) return 'alpha';
  return fourthOfColour ? 'near-infrared' : 'other';
}

const NAMES: readonly (readonly [RegExp, BandRole])[] = [
  [/near.?infra|infra.?red|\bnir\b|^nir\d?$/i, 'near-infrared'],
  [/^alpha$/i, 'alpha'],
  [/^red$|\bred band\b/i, 'red'],
  [/^green$|\bgreen band\b/i, 'green'],
  [/^blue$|\bblue band\b/i, 'blue'],
  [/^(height|elevation|canopy height|chm|dsm|ndsm)$/i, 'height'],
];

/** From `<Item name="DESCRIPTION" sample="3" role="description">near infrared</Item>`; a name outweighs a colour. */
function namedRoles({ count, metadata }: StatedBands): (BandRole | undefined)[] {
  const out = Array<BandRole | undefined>(count).fill(undefined);
  const items = [...metadata.matchAll(/<Item\s([^>]*)>([^<]*)<\/Item>/g)];
  for (const kind of ['colorinterp', 'description']) {
    for (const [, attributes, text] of items) {
      const band = Number(/sample="(\d+)"/.exec(attributes)?.[1] ?? -1);
      if (!attributes.includes(`role="${kind}"`) || !(band >= 0 && band < count)) continue;
      out[band] = NAMES.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? out[band];
    }
  }
  return out;
}

/** More than this share of samples well between 0 and the largest: no transparency looks like that. */
const BETWEEN_SHARE = 0.25;
const BETWEEN = [0.05, 0.95] as const;

/**
 * Whether a band is transparency or light, by a sample of it. Constant bands tell nothing and give `other` unless they are fully
 * opaque (`alpha`). (Common practice, no source; at 0.6 m on two real places all samples of near-infrared lie between,
 * and at most 0.01 % of those of true transparency.)
 * @example lightOrAlpha(Uint8Array.of(0, 255, 255, 0)) // 'alpha'
 */
export function lightOrAlpha(samples: Samples): 'near-infrared' | 'alpha' | 'other' {
  let largest = 0;
  let smallest = Number.POSITIVE_INFINITY;
  for (const sample of samples) {
    if (sample > largest) largest = sample;
    if (sample < smallest) smallest = sample;
  }
  if (samples.length === 0 || largest === 0) return 'other';
  if (smallest === largest) return 'alpha';
  let between = 0;
  for (const sample of samples) {
    if (sample > BETWEEN[0] * largest && sample < BETWEEN[1] * largest) between++;
  }
  return between > BETWEEN_SHARE * samples.length ? 'near-infrared' : 'alpha';
}
