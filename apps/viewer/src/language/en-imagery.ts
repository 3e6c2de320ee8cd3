/** The screen in English: what the aerial picture proposes and suggests. */
import type { QualityFlag } from '@crownfall/imagery';
import type { ShareRefusal, SuggestedOutline } from '../map/crown-suggester.ts';

export type ImageryWords = typeof IMAGERY_EN;

type OutlineRefusal = Extract<SuggestedOutline, { readonly proposed: false }>['because'];
/** Says an area, m², in the units of the screen. */
type Area = (areaM2: number) => string;

export const IMAGERY_EN = {
  picture: {
    tool: 'From the picture',
    trace: 'Outline from the picture',
    how: 'Click the middle of a crown, or press Enter at the cross: the picture proposes its outline.',
    looking: 'Looking at the picture …',
    made: (sure: string) =>
      `Proposed from the picture; how sure: ${sure}. Compare it with the crown’s edge and drag its points.`,
    another: 'Click elsewhere for another.',
    refused: {
      outside: () => 'No outline: the picture does not show this place.',
      'no-foliage': () => 'No outline: no leaves are seen within a metre of this point.',
      taken: () => 'No outline: this place lies in a crown that is outlined already. Choose that one to correct it.',
      'too-small': (area) => `No outline: what can be told apart here is smaller than ${area(3)}.`,
      'too-large': (area) => `No outline: green runs on here over more than ${area(400)}, as a lawn or a thicket does.`,
      'no-colours': () => 'No outline: the picture has no red, green and blue, so leaves cannot be told in it.',
    } as Readonly<Record<OutlineRefusal, (area: Area) => string>>,
    failed: (why: string) => `The picture could not be read. ${why}`,
  },
  suggestion: {
    ask: 'Browned share from the picture',
    looking: (share: string) => `Looking at all crowns in the picture … ${share}`,
    found: (range: string) => ` of the lit leaves look browned${range}.`,
    range: (lower: string, upper: string) => ` (95 % range ${lower} to ${upper})`,
    rests: (lit: number, shaded: string, notLeaf: string) =>
      `From ${lit} pixels of lit leaves; ${shaded} of the crown in shade, ${notLeaf} no leaf.`,
    take: 'Fill it in',
    taken: 'Suggested by the picture. Look at the crown and correct what is wrong: your initials make it a rating.',
    leave: 'Without the picture',
    confirmedBy: 'Confirmed by (initials)',
    flownOn: 'Picture flown on',
    flownMissing: 'Give the day the picture was flown.',
    evidence: (lit: number, limit: string, saturation: string) =>
      `${lit} lit leaf pixels from above; browned below ${limit} (Otsu), leaves from saturation ${saturation}`,
    flags: {
      'leaf-off': 'Few crowns in the picture are green: it may have been flown out of leaf.',
      haze: 'The picture is hazy: the share may be off.',
      overexposed: 'Parts of the picture are overexposed: the share may be off.',
    } as Readonly<Record<QualityFlag, string>>,
    refused: {
      'too-coarse': (lit, needed) =>
        `No suggestion: ${lit} pixels of lit leaves are seen, ${needed} are needed. The crown is too small or too shaded for this picture.`,
      'no-data': () => 'No suggestion: the picture has no data over half of this crown.',
      outside: () => 'No suggestion: the picture does not show all of this crown.',
      'no-pixels': () => 'No suggestion: no crown lies wholly in the picture.',
      'one-kind': () =>
        'No suggestion: all leaves in the picture look alike, so browned ones cannot be told from sound ones.',
      'leaf-off': () => 'No suggestion: hardly any crown in the picture is green. Was it flown out of leaf?',
      'no-colours': () => 'No suggestion: the picture has no red, green and blue.',
    } as Readonly<Record<ShareRefusal, (lit: number, needed: number) => string>>,
    failed: (why: string) => `The picture could not be read. ${why}`,
  },
};
