/** What is found at one tree, while the person stands under it: a plain value, written to the device at every tap. */
import type { Cause, Confidence, GallLoad, YesNoUnknown } from '@crownfall/survey';
import type { RatingDraft } from '../../outline/rating-draft.ts';

/** Signs by which a cause is known; each is written out into the rating's evidence. */
export const EVIDENCE = [
  'larvae-seen',
  'galls-opened',
  'frass-below',
  'sticky-leaves',
  'sooty-mould',
  'fruit-below',
  'litter-below',
] as const;
export type Evidence = (typeof EVIDENCE)[number];

export interface Stop {
  /** A UUID made on the device; it becomes the visit's id, so that sending twice adds it once. */
  readonly stopId: string;
  readonly project: string;
  readonly blockId: string;
  readonly treeId: string;
  /** Instant in UTC, and the day where the person stands. */
  readonly startedAt: string;
  readonly day: string;
  readonly brownedPct: number | null;
  readonly defoliatedPct: number | null;
  readonly gallLoad: GallLoad | null;
  readonly cause: Cause | null;
  readonly evidence: readonly Evidence[];
  readonly confidence: Confidence | null;
  readonly bbch: number | null;
  readonly larvae: YesNoUnknown | null;
  readonly bees: YesNoUnknown | null;
  readonly quadrats: readonly MeasuredQuadrat[];
  readonly notFound: boolean;
  /** The host that stands there instead of the recorded one. */
  readonly hostSeen: string | null;
  readonly newTree: NewTree | null;
  readonly photos: readonly TakenPhoto[];
  readonly note: string;
}

/** A stained share with its 95 % range, all 0–1. */
export interface ShareFound {
  readonly share: number;
  readonly range: readonly [number, number];
  readonly method: MeasuredQuadrat['method'];
}

export interface MeasuredQuadrat {
  readonly quadratId: string;
  readonly areaM2: number;
  readonly stainedPct: number;
  /** 95 %, in per cent. */
  readonly range: readonly [number, number];
  readonly method: 'photo' | 'count';
  readonly at: readonly [lon: number, lat: number];
}

export interface NewTree {
  readonly at: readonly [lon: number, lat: number];
  readonly host: string;
  readonly spreadM: number;
}

export interface TakenPhoto {
  readonly photoId: string;
  /** SHA-256 of the JPEG's bytes; null where the browser reckons none. */
  readonly sha256: string | null;
  /** Where it was taken, only when the person asked to keep that. */
  readonly at: readonly [lon: number, lat: number] | null;
}

type Begun = Pick<Stop, 'stopId' | 'project' | 'blockId' | 'treeId' | 'startedAt' | 'day'>;

export const newStop = (begun: Begun): Stop => ({
  ...begun,
  brownedPct: null,
  defoliatedPct: null,
  gallLoad: null,
  cause: null,
  evidence: [],
  confidence: null,
  bbch: null,
  larvae: null,
  bees: null,
  quadrats: [],
  notFound: false,
  hostSeen: null,
  newTree: null,
  photos: [],
  note: '',
});

export const isRated = ({ brownedPct, defoliatedPct, gallLoad, cause }: Stop): boolean =>
  brownedPct !== null || defoliatedPct !== null || gallLoad !== null || cause !== null;

export const isBloomSeen = ({ bbch, larvae, bees }: Stop): boolean => bbch !== null || larvae !== null || bees !== null;

/** The same rules as at the desk say what a rating lacks. */
export function ratingDraftOf(stop: Stop, rater: string, evidence: string): RatingDraft {
  const { treeId, brownedPct, defoliatedPct, gallLoad, cause, confidence, day } = stop;
  return {
    treeId,
    brownedPct,
    defoliatedPct,
    gallLoad,
    cause,
    confidence,
    evidence,
    ratedOn: day,
    rater,
    digitsTo: 'browned',
    digits: '',
  };
}

/** Per cent: fine where little is seen, by fives above. */
const FINE = [0, 1, 2, 3, 5] as const;

/** The next step of a share up or down; the first step up from nothing said is 5 %. */
export function steppedPct(pct: number | null, step: 1 | -1): number {
  if (pct === null) return step === 1 ? 5 : 0;
  if (step === 1) return FINE.find((each) => each > pct) ?? Math.min(100, pct + 5);
  return pct > 5 ? Math.max(5, pct - 5) : (FINE.findLast((each) => each < pct) ?? 0);
}
