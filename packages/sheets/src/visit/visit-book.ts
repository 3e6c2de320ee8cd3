/** Visit sheets: one block or a day's blocks, with an index map, as a page list. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import { type LocalPlane, type LonLat, regionCentroid, walkInGroups } from '@crownfall/geometry';
import type { Language, Reason } from '@crownfall/survey';
import type { GroundMark } from '../drawing.ts';
import { mapPlane, regionOf } from '../map-marks.ts';
import type { PageList, PaperName } from '../pdf/page-list.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { indexPages } from './index-page.ts';
import type { VisitFacts } from './visit-facts.ts';
import { type UnnumberedPage, visitPages, withFoot } from './visit-page.ts';
import { stopsOf, type VisitRecords } from './visit-stops.ts';
import { wordsIn } from './words-in.ts';

export interface VisitBookOptions {
  /** Blocks to visit, in any order; more than one come in walking order behind an index. */
  readonly blockIds: readonly string[];
  readonly paper: PaperName;
  readonly language: Language;
  /** The project's own when absent. */
  readonly units?: 'metric' | 'us';
  /** An ISO 8601 instant. */
  readonly createdAt: string;
  /** Of the program, for the provenance line. */
  readonly version: string;
  /** Opens a block on a phone: printed as a QR code. None: no code. */
  readonly linkOf?: (blockId: string) => string;
  /** What forbids treatment in a block today. None: not printed. */
  readonly reasonsOf?: (blockId: string) => readonly Reason[] | undefined;
  /** Pictures of the ground below the maps, by block. */
  readonly imageryOf?: (blockId: string) => Extract<GroundMark, { mark: 'image' }> | undefined;
  /** Where the day begins and ends. */
  readonly from?: LonLat;
  readonly to?: LonLat;
}

/**
 * The pages of the sheets. Each block begins a page; its trees are numbered in walking order. Pure: the same input gives the
 * same pages.
 * @throws RangeError when no block is asked for, or one that does not exist, with the ids that do
 * @example writePdf(visitBook(assessment, survey, { blockIds: ['B04'], … }, fonts), fonts)
 */
export function visitBook(
  assessment: Assessment,
  records: VisitRecords,
  options: VisitBookOptions,
  fonts: SheetFonts,
): PageList {
  const plane = mapPlane(assessment);
  const words = wordsIn(options.language);
  const day = visitsOfTheDay(assessment, records, plane, options);
  const { version, language, units = assessment.units } = options;
  const shared = { assessment, records, plane, fonts, words, language, units, version };
  const facts = day.map(({ block, stops }): VisitFacts => {
    const link = options.linkOf?.(block.blockId);
    const reasons = options.reasonsOf?.(block.blockId);
    const imagery = options.imageryOf?.(block.blockId);
    return {
      ...shared,
      block,
      stops,
      ...(link === undefined ? {} : { link }),
      ...(reasons === undefined ? {} : { reasons }),
      ...(imagery === undefined ? {} : { imagery }),
    };
  });
  const sheets = facts.map((each) => visitPages(each, options.paper));
  const index =
    facts.length > 1
      ? indexPages(
          shared,
          facts,
          sheets.map((pages) => pages.length),
          options.paper,
        )
      : [];
  const pages: readonly UnnumberedPage[] = [...index, ...sheets.flat()];
  return {
    title:
      facts.length > 1
        ? `${words.day}: ${assessment.title}`
        : `${words.block} ${facts[0].block.blockId}: ${assessment.title}`,
    language,
    createdAt: options.createdAt,
    pages: pages.map((page, i) => withFoot(page, shared, { page: i + 1, of: pages.length })),
  };
}

interface Visit {
  readonly block: BlockResult;
  readonly stops: ReturnType<typeof stopsOf>;
}

/** Blocks in the order of a short walk; each entered where the one before was left, and left towards the next. */
function visitsOfTheDay(
  assessment: Assessment,
  records: VisitRecords,
  plane: LocalPlane,
  { blockIds, from, to }: VisitBookOptions,
): readonly Visit[] {
  const known = new Map(assessment.blocks.map((block) => [block.blockId, block]));
  const blocks = [...new Set(blockIds)].map((id) => {
    const block = known.get(id);
    if (block === undefined)
      throw new RangeError(`visitBook: expected ids of blocks (${[...known.keys()].join(', ')}), got ${id}`);
    return block;
  });
  if (blocks.length === 0) throw new RangeError('visitBook: expected at least one block, got none');
  const middles = blocks.map((block) => middleOf(block, plane));
  const at = (place: LonLat | undefined) => (place === undefined ? undefined : pointOf(place, plane));
  const [start, end] = [at(from), at(to)];
  const order = walkInGroups(
    middles.map((middle, group) => ({ ...middle, group })),
    {
      streets: records.streets.flatMap(({ lines }) => lines.map((line) => plane.forward(line))),
      ...(start === undefined ? {} : { from: start }),
      ...(end === undefined ? {} : { to: end }),
    },
  );
  let here = start;
  return order.map((i, k) => {
    const ahead = k + 1 < order.length ? middles[order[k + 1]] : end;
    const ends = { ...(here === undefined ? {} : { from: here }), ...(ahead === undefined ? {} : { to: ahead }) };
    const stops = stopsOf(blocks[i], { assessment, records, plane }, ends);
    here = stops.at(-1) ?? here;
    return { block: blocks[i], stops };
  });
}

function middleOf(block: BlockResult, plane: LocalPlane): { x: number; y: number } {
  const [x, y] = regionCentroid(regionOf(block.geometry, plane));
  return { x, y };
}

function pointOf({ lon, lat }: LonLat, plane: LocalPlane): { x: number; y: number } {
  const [x, y] = plane.forward(Float64Array.of(lon, lat));
  return { x, y };
}
