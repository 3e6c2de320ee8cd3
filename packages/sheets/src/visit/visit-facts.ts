/** All that one sheet says of its block, gathered before it is laid out. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import type { LocalPlane } from '@crownfall/geometry';
import { type BloomObservation, describeFinding, type Language, type Reason } from '@crownfall/survey';
import { boundsOf } from '../map-frame.ts';
import { regionOf } from '../map-marks.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { drainsIn, type VisitMapInput } from './visit-map.ts';
import type { Stop, VisitRecords } from './visit-stops.ts';
import type { VisitWords } from './visit-words.ts';

export interface VisitFacts {
  readonly assessment: Assessment;
  readonly block: BlockResult;
  readonly stops: readonly Stop[];
  readonly plane: LocalPlane;
  readonly records: VisitRecords;
  readonly fonts: SheetFonts;
  readonly words: VisitWords;
  readonly language: Language;
  readonly units: 'metric' | 'us';
  /** Opens the block on a phone. */
  readonly link?: string;
  /** What forbids treatment today; absent: nobody has worked it out. */
  readonly reasons?: readonly Reason[];
  readonly imagery?: VisitMapInput['imagery'];
  readonly version: string;
}

/** Sites within this of the block's box are named on its sheet, m. (A) */
const NEAR_SITE_M = 30;

export function nearSites({ block, plane, records, words }: VisitFacts): string {
  const box = boundsOf([regionOf(block.geometry, plane)]);
  const kinds = records.sites
    .filter(({ at }) => {
      const [x, y] = plane.forward(Float64Array.of(at.lon, at.lat));
      const inX = x > box.minX - NEAR_SITE_M && x < box.maxX + NEAR_SITE_M;
      return inX && y > box.minY - NEAR_SITE_M && y < box.maxY + NEAR_SITE_M;
    })
    .map(({ kind }) => words.siteKinds[kind]);
  return [...new Set(kinds)].join(', ');
}

export function drainCount({ block, plane, records }: VisitFacts): number {
  return drainsIn(records, plane, boundsOf([regionOf(block.geometry, plane)])).length;
}

/** The last look at the block's flowers up to the day of the figures; of several on that day, bees seen once count as seen. */
export function lastBloom({
  assessment,
  block,
  stops,
  records,
}: VisitFacts): Pick<BloomObservation, 'observedOn' | 'bbch' | 'beesAtFlowers'> | null {
  const own = new Set(stops.map(({ tree }) => tree.treeId));
  const asOf = assessment.run.asOf;
  const looks = records.bloom
    .filter(({ blockId, treeId }) => blockId === block.blockId || (treeId !== undefined && own.has(treeId)))
    .filter(({ observedOn }) => asOf === null || observedOn <= asOf);
  const observedOn =
    looks
      .map((look) => look.observedOn)
      .sort()
      .at(-1) ?? '';
  const thatDay = looks.filter((look) => look.observedOn === observedOn);
  if (thatDay.length === 0) return null;
  const bees = (['yes', 'no'] as const).find((answer) => thatDay.some((look) => look.beesAtFlowers === answer));
  return { observedOn, bbch: Math.max(...thatDay.map(({ bbch }) => bbch)), beesAtFlowers: bees ?? 'unknown' };
}

/** What the data's findings say of this block and its trees, each once. */
export function blockFindings({ assessment, block, stops, language }: VisitFacts): readonly string[] {
  const own = new Set([block.blockId, ...stops.map(({ tree }) => tree.treeId)]);
  const said = assessment.findings
    .filter(({ where }) => where.feature !== undefined && own.has(where.feature))
    .map((finding) => {
      const { what, where } = describeFinding(finding, language);
      return `${where}: ${what}`;
    });
  return [...new Set(said)];
}
