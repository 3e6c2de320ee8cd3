/** The first page of a day's sheets: a map of the blocks in the order of the visits, and their list. */
import { type Region, regionCentroid } from '@crownfall/geometry';
import { type Drawing, type GroundMark, onPaper, type TextStyle } from '../drawing.ts';
import { northArrow, scaleBar } from '../furniture.ts';
import { boundsOf, fittingScale, meets, middleOf, shownBounds } from '../map-frame.ts';
import { blockOutline, pavementMarks, regionOf } from '../map-marks.ts';
import { PAPER, type PageItem, type PaperName } from '../pdf/page-list.ts';
import { areaRange, areaText, dayText } from '../quantities.ts';
import { labelRoom } from './label-room.ts';
import { MARGIN_MM, paragraph, STYLE } from './sheet-style.ts';
import { streetNameMarks } from './street-name-marks.ts';
import { laidTable, rowsThatFit, tableItems } from './tree-table.ts';
import type { VisitFacts } from './visit-facts.ts';
import { VISIT_STYLES } from './visit-map.ts';
import type { UnnumberedPage } from './visit-page.ts';

type Shared = Omit<VisitFacts, 'block' | 'stops'>;

const MAP_HEIGHT_MM = 128;
const FOOT_MM = 6;
const PARTS = [14, 60, 14, 31, 42, 28, 14];

/** Map and list; the list goes on over further pages when it must. `lengths`: pages of each block's sheet. */
export function indexPages(
  shared: Shared,
  visits: readonly VisitFacts[],
  lengths: readonly number[],
  paperName: PaperName,
): readonly UnnumberedPage[] {
  const paper = PAPER[paperName];
  const widthMm = paper.widthMm - 2 * MARGIN_MM;
  const bottomMm = paper.heightMm - MARGIN_MM - FOOT_MM;
  const { words, fonts } = shared;
  // How many pages the list takes depends on its rows, not on the numbers in them.
  const draft = listOf(
    visits,
    shared,
    lengths.map(() => 0),
    widthMm,
  );
  const head = headItems(shared, visits.length, widthMm);
  const top = head.bottomMm + MAP_HEIGHT_MM + 14;
  const counts = [rowsThatFit(draft, 0, bottomMm - top)];
  let told = counts[0];
  while (told < visits.length) {
    const count = Math.max(1, rowsThatFit(draft, told, bottomMm - MARGIN_MM - 8));
    counts.push(count);
    told += count;
  }
  let page = counts.length + 1;
  const starts = lengths.map((length) => {
    const own = page;
    page += length;
    return own;
  });
  const table = listOf(visits, shared, starts, widthMm);
  let first = 0;
  return counts.map((count, i): UnnumberedPage => {
    const more = paragraph(words.continued(words.day), { x: MARGIN_MM, y: MARGIN_MM, widthMm }, STYLE.heading, fonts);
    const above: readonly PageItem[] =
      i === 0
        ? [...head.items, ...mapItems(shared, visits, { topMm: head.bottomMm + 2, widthMm })]
        : [{ item: 'text', tag: 'H2', marks: more.marks }];
    const rows = tableItems(table, { first, count }, { x: MARGIN_MM, topMm: i === 0 ? top : more.bottomMm + 2 });
    first += count;
    return {
      paper,
      ...(i === 0 ? { bookmark: words.day } : {}),
      content: [...above, ...(count > 0 ? rows.items : [])],
    };
  });
}

function headItems({ assessment, words, fonts, language }: Shared, blocks: number, widthMm: number) {
  const title = paragraph(words.index.title(blocks), { x: MARGIN_MM, y: MARGIN_MM, widthMm }, STYLE.title, fonts);
  const asOf = assessment.run.asOf === null ? '–' : dayText(assessment.run.asOf, language);
  const about = `${assessment.title} · ${words.season(assessment.season, asOf)}. ${words.index.about}`;
  const told = paragraph(about, { x: MARGIN_MM, y: title.bottomMm + 1.6, widthMm }, STYLE.about, fonts);
  const items: readonly PageItem[] = [
    { item: 'text', tag: 'H1', marks: title.marks },
    { item: 'text', tag: 'P', marks: told.marks },
  ];
  return { items, bottomMm: told.bottomMm };
}

function listOf(
  visits: readonly VisitFacts[],
  { words, units, fonts }: Shared,
  starts: readonly number[],
  widthMm: number,
) {
  const t = STYLE.table;
  const rows = visits.map(({ block }, i): readonly (readonly [string, TextStyle])[] => {
    const { value, range80 } = block.stainedM2;
    const range = range80 === null ? '' : ` (${areaRange(range80, units)})`;
    return [
      [String(i + 1), STYLE.tableStrong],
      [`${block.blockId}${block.name === null ? '' : ` · ${block.name}`}`, t],
      [String(block.rank), t],
      [words.treesRated(block.treesRated, block.trees), t],
      [`${areaText(value, units)}${range}`, t],
      [words.bloomStates[block.bloomState], t],
      [String(starts[i]), t],
    ];
  });
  const { tableAbout: about, columns: heads } = words.index;
  return laidTable({ about, heads, parts: PARTS }, rows, { widthMm, leastMm: 5.6, fonts });
}

function mapItems(
  shared: Shared,
  visits: readonly VisitFacts[],
  { topMm, widthMm }: { readonly topMm: number; readonly widthMm: number },
): readonly PageItem[] {
  const drawing = indexMap(shared, visits, widthMm);
  const below = topMm + MAP_HEIGHT_MM;
  const bar = scaleBar({ x: MARGIN_MM + 0.5, y: below + 4.8, roomMm: 70, scale: drawing.scale, units: shared.units });
  const box = { leftMm: MARGIN_MM, topMm, widthMm, heightMm: MAP_HEIGHT_MM };
  return [
    { item: 'figure', alt: drawing.description, box, picture: drawing },
    { item: 'figure', alt: `1 : ${drawing.scale}`, box: { ...box, topMm: below, heightMm: 9 }, picture: bar },
  ];
}

function indexMap(
  { assessment, records, plane, fonts, words }: Shared,
  visits: readonly VisitFacts[],
  widthMm: number,
): Drawing {
  const size = { widthMm, heightMm: MAP_HEIGHT_MM };
  const frame = { leftMm: 0, topMm: 0, ...size };
  const regions = visits.map(({ block }) => regionOf(block.geometry, plane));
  const bounds = boundsOf(regions);
  const scale = fittingScale(bounds, frame, 10);
  const centre = middleOf(bounds);
  const shown = shownBounds(centre, size, scale);
  const base: Drawing = {
    title: words.day,
    description: words.index.mapAlt(visits.length),
    paper: size,
    frame,
    land: '#ffffff',
    scale,
    centre,
    ground: [],
    onPaper: [],
  };
  const room = labelRoom(size.widthMm, size.heightMm);
  const corner = { leftMm: widthMm - 8.5, topMm: 0, widthMm: 8.5, heightMm: 14 };
  room.take(Float64Array.of(widthMm - 8.5, 0, widthMm, 0, widthMm, 14, widthMm - 8.5, 14));
  const badges = regions.map((region, i) => stopBadge(i + 1, region));
  for (const { x, y, radiusMm: r } of badges) {
    const [px, py] = onPaper(base, x, y);
    room.take(Float64Array.of(px - r, py - r, px + r, py - r, px + r, py + r, px - r, py + r));
  }
  const inView = (mark: GroundMark) => mark.mark !== 'region' || meets(mark.region, shown);
  const chosen = new Set(visits.map(({ block }) => block.blockId));
  const route = Float64Array.from(badges.flatMap(({ x, y }) => [x, y])) as Extract<
    GroundMark,
    { mark: 'line' }
  >['line'];
  const water = records.water.flatMap(({ kind, geometry }): GroundMark[] =>
    kind === 'water' && geometry.kind === 'area'
      ? [{ mark: 'region', region: regionOf(geometry, plane), style: VISIT_STYLES.water }]
      : [],
  );
  return {
    ...base,
    ground: [
      ...water.filter(inView),
      ...pavementMarks(assessment.pavement, plane, 0.05).filter(inView),
      ...assessment.blocks
        .filter(({ blockId }) => !chosen.has(blockId))
        .map((each) => blockOutline(each, plane, 0.15))
        .filter(inView),
      ...regions.map(
        (region): GroundMark => ({
          mark: 'region',
          region,
          style: {
            hatch: { colour: '#8a837b', widthMm: 0.15, gapMm: 1.6, crossed: false },
            stroke: { colour: '#000000', widthMm: 0.8 },
          },
        }),
      ),
      { mark: 'line', line: route, style: { stroke: { colour: '#000000', widthMm: 0.35, dashMm: [1.6, 1.1] } } },
      ...streetNameMarks({ records, plane, fonts }, base, { shown, avoid: [] }, room),
      ...badges,
    ],
    onPaper: [
      { mark: 'box', box: corner, style: { fill: '#ffffff', stroke: { colour: '#000000', widthMm: 0.2 } } },
      ...northArrow(widthMm - 4.25, 1.5),
      { mark: 'box', box: frame, style: { stroke: { colour: '#000000', widthMm: 0.4 } } },
    ],
  };
}

function stopBadge(stop: number, region: Region) {
  const [x, y] = regionCentroid(region);
  return {
    mark: 'badge',
    x,
    y,
    radiusMm: 3.6,
    text: String(stop),
    style: { fill: '#000000', stroke: { colour: '#ffffff', widthMm: 0.4 } },
    textStyle: { sizeMm: 4.2, weight: 'bold', colour: '#ffffff' },
  } as const satisfies GroundMark;
}
