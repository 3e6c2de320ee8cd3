/** The panels of a visit sheet beside its map: the block's figures, the bloom window, what forbids treatment, room to write. */
import { describeReason } from '@crownfall/survey';
import type { PaperMark } from '../drawing.ts';
import { LEADING } from '../pdf/lay-text.ts';
import type { PageItem } from '../pdf/page-list.ts';
import { areaRange, areaText, lengthText, percentText } from '../quantities.ts';
import { HAIRLINE, paragraph, STYLE } from './sheet-style.ts';
import { blockFindings, drainCount, lastBloom, nearSites, type VisitFacts } from './visit-facts.ts';
import { shortDay } from './visit-words.ts';
import { roomOf, waterWays } from './water-ways.ts';

/** Items of one panel from `topMm` down, and where they end. */
export interface Panel {
  readonly items: readonly PageItem[];
  readonly bottomMm: number;
}

export interface PanelRoom {
  readonly x: number;
  readonly topMm: number;
  readonly widthMm: number;
}

const GAP_MM = 1.1;

export function figuresPanel(facts: VisitFacts, room: PanelRoom): Panel {
  const { block, units, words } = facts;
  const { range80, value } = block.stainedM2;
  const rows: (readonly [string, string])[] = [
    [words.stained, areaText(value, units)],
    [words.range80, range80 === null ? words.noRange : areaRange(range80, units)],
    [words.pavement, areaText(block.pavementM2, units)],
    [words.fallout, areaText(block.falloutM2, units)],
    [words.trees, words.treesRated(block.treesRated, block.trees)],
  ];
  if (block.worstSeverityPct !== null) rows.push([words.worst, percentText(block.worstSeverityPct / 100)]);
  rows.push([words.complaints, String(block.complaintsOpen)], [words.drains, String(drainCount(facts))]);
  const near = nearSites(facts);
  const water = nearestWater(facts);
  if (water !== null) rows.push([words.nearestWater, water]);
  if (near !== '') rows.push([words.sites, near]);
  const head = heading(words.figures, room, facts);
  let y = head.bottomMm;
  const items = rows.map(([name, figure], i): PageItem => {
    const strong = i === 0 ? STYLE.strong : STYLE.text;
    const figureMm = facts.fonts.widthMm(figure, strong);
    const fits = figureMm < room.widthMm * 0.62;
    const namedMm = fits ? Math.max(18, room.widthMm - figureMm - 2) : room.widthMm;
    const named = paragraph(name, { x: room.x, y, widthMm: namedMm }, STYLE.text, facts.fonts);
    const told = fits
      ? {
          marks: [textAt(figure, room.x + room.widthMm, y, { ...strong, anchor: 'end' as const })],
          bottomMm: named.bottomMm,
        }
      : paragraph(
          figure,
          { x: room.x + 4, y: named.bottomMm + GAP_MM, widthMm: room.widthMm - 4 },
          strong,
          facts.fonts,
        );
    y = told.bottomMm + GAP_MM;
    return { item: 'text', tag: 'P', marks: [...named.marks, ...told.marks] };
  });
  return { items: [...head.items, ...items], bottomMm: y };
}

/** What leaves a tree that could be treated least room, with the distance to keep. */
function nearestWater(facts: VisitFacts): string | null {
  const { words, units } = facts;
  const [least] = [...waterWays(facts)].sort((a, b) => roomOf(a) - roomOf(b));
  if (least === undefined) return null;
  const { stop, kind, pair, keepM } = least;
  const keep = keepM === null ? null : lengthText(keepM, units);
  return words.waterFrom(lengthText(pair.distanceM, units), words.waterKinds[kind], stop.number, keep);
}

export function bloomPanel(facts: VisitFacts, room: PanelRoom): Panel {
  const { words, block } = facts;
  const last = lastBloom(facts);
  const seen =
    last === null
      ? words.neverSeen
      : `${words.seen(shortDay(last.observedOn, words), last.bbch)}; ${words.bees[last.beesAtFlowers]}`;
  const head = heading(`${words.bloom}: ${words.bloomStates[block.bloomState]}`, room, facts);
  return below(head, [`${words.bloomMeans[block.bloomState]} ${seen}.`], room, facts);
}

export function reasonsPanel(facts: VisitFacts, room: PanelRoom): Panel {
  const { reasons, words, language } = facts;
  if (reasons === undefined) return { items: [], bottomMm: room.topMm };
  if (reasons.length === 0) return below({ items: [], bottomMm: room.topMm }, [words.nothingAgainst], room, facts);
  const told = reasons.map((reason) => `– ${describeReason(reason, language).what}`);
  // Whatever forbids a treatment is told, however long the list.
  return below(heading(words.against, room, facts), told, room, facts);
}

export function findingsPanel(facts: VisitFacts, room: PanelRoom, most: number): Panel {
  const told = blockFindings(facts);
  if (told.length === 0 || most < 1) return { items: [], bottomMm: room.topMm };
  const head = heading(facts.words.findings, room, facts);
  return below(head, atMost(told, facts, most), room, facts, STYLE.small);
}

function atMost(told: readonly string[], { words }: VisitFacts, most: number): readonly string[] {
  return told.length <= most ? told : [...told.slice(0, most), words.more(told.length - most)];
}

/** Blanks to fill in, and ruled lines down to `bottomMm`. */
export function writingPanel(facts: VisitFacts, room: PanelRoom, bottomMm: number): Panel {
  const { write } = facts.words;
  const head = heading(write.title, room, facts);
  const half = room.widthMm / 2 - 1.5;
  const [left, right] = [room.x, room.x + room.widthMm / 2 + 1.5];
  const line = STYLE.text.sizeMm * LEADING + 2.6;
  let y = head.bottomMm + 1.4;
  const items: PageItem[] = [...head.items];
  const blank = (words: string, x: number, widthMm: number) =>
    items.push(...blankItems(words, { x, y, widthMm }, facts));
  blank(write.date, left, half);
  blank(write.crew, right, half);
  y += line;
  blank(write.wind, left, half);
  blank(write.rain, right, half);
  y += line;
  items.push(...tickItems(write.bees, [write.yes, write.no], { x: left, y, widthMm: room.widthMm }, facts));
  y += line;
  blank(write.bbch, left, room.widthMm);
  y += line;
  items.push(...notesItems(facts, { x: left, topMm: y, widthMm: room.widthMm }, bottomMm));
  return { items, bottomMm };
}

/** From one ruled line to the next, mm. */
const RULED_MM = 7;

/** The word and ruled lines down to `bottomMm`; nothing where not even one finds room. */
export function notesItems(facts: VisitFacts, { x, topMm, widthMm }: PanelRoom, bottomMm: number): readonly PageItem[] {
  if (topMm + 4 > bottomMm) return [];
  const { notes } = facts.words.write;
  const indent = facts.fonts.widthMm(notes, STYLE.text) + 1.5;
  const rules: PaperMark[] = [];
  for (let y = topMm + 3.4; y <= bottomMm + 0.01; y += RULED_MM) {
    rules.push(ruleAt(rules.length === 0 ? x + indent : x, y, x + widthMm));
  }
  return [
    { item: 'text', tag: 'P', marks: [textAt(notes, x, topMm, STYLE.text)] },
    { item: 'ornament', marks: rules },
  ];
}

function blankItems(
  words: string,
  { x, y, widthMm }: { x: number; y: number; widthMm: number },
  facts: VisitFacts,
): PageItem[] {
  const start = x + facts.fonts.widthMm(words, STYLE.text) + 1.2;
  return [
    { item: 'text', tag: 'P', marks: [textAt(words, x, y, STYLE.text)] },
    { item: 'ornament', marks: [ruleAt(start, y + 3.4, x + widthMm)] },
  ];
}

function tickItems(
  words: string,
  answers: readonly string[],
  { x, y }: { x: number; y: number; widthMm: number },
  facts: VisitFacts,
): PageItem[] {
  const marks: PaperMark[] = [textAt(words, x, y, STYLE.text)];
  const boxes: PaperMark[] = [];
  let at = x + facts.fonts.widthMm(words, STYLE.text) + 2.5;
  for (const answer of answers) {
    boxes.push({
      mark: 'box',
      box: { leftMm: at, topMm: y - 0.2, widthMm: 3, heightMm: 3 },
      style: { stroke: { colour: '#000000', widthMm: 0.3 } },
    });
    marks.push(textAt(answer, at + 4, y, STYLE.text));
    at += 4 + facts.fonts.widthMm(answer, STYLE.text) + 3;
  }
  return [
    { item: 'text', tag: 'P', marks },
    { item: 'ornament', marks: boxes },
  ];
}

function heading(words: string, { x, topMm, widthMm }: PanelRoom, { fonts }: VisitFacts): Panel {
  const { marks, bottomMm } = paragraph(words, { x, y: topMm, widthMm }, STYLE.heading, fonts);
  return { items: [{ item: 'text', tag: 'H2', marks }], bottomMm: bottomMm + 1.2 };
}

function below(
  head: Panel,
  texts: readonly string[],
  { x, widthMm }: PanelRoom,
  { fonts }: VisitFacts,
  style: typeof STYLE.text | typeof STYLE.small = STYLE.text,
): Panel {
  let y = head.bottomMm;
  const items = texts.map((text): PageItem => {
    const { marks, bottomMm } = paragraph(text, { x, y, widthMm }, style, fonts);
    y = bottomMm + GAP_MM;
    return { item: 'text', tag: 'P', marks };
  });
  return { items: [...head.items, ...items], bottomMm: y };
}

function textAt(
  text: string,
  x: number,
  topMm: number,
  style: Extract<PaperMark, { mark: 'text' }>['style'],
): PaperMark {
  return { mark: 'text', x, y: topMm + style.sizeMm * 0.76, text, style };
}

function ruleAt(from: number, y: number, to: number): PaperMark {
  return {
    mark: 'line',
    points: [
      [from, y],
      [to, y],
    ],
    style: { stroke: HAIRLINE },
  };
}
