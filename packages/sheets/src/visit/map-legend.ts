/** What the marks on a visit map mean, in rows below it. */
import type { PaperMark, Style } from '../drawing.ts';
import type { PageItem } from '../pdf/page-list.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { STYLE } from './sheet-style.ts';
import { VISIT_STYLES } from './visit-map.ts';
import type { VisitWords } from './visit-words.ts';

const ROW_MM = 4.9;
const SAMPLE_MM = 5;

/** Samples with their words, as many to a row as fit. */
export function legendItems(
  { legend }: VisitWords,
  { x, topMm, widthMm }: { readonly x: number; readonly topMm: number; readonly widthMm: number },
  fonts: SheetFonts,
): readonly PageItem[] {
  const entries = (['stains', 'clean', 'unrated', 'fallout', 'drain', 'well', 'water', 'edge'] as const).map(
    (name) => ({
      words: legend[name],
      style: VISIT_STYLES[name],
      round: name === 'stains' || name === 'clean' || name === 'unrated',
      flat: name === 'fallout' || name === 'edge',
    }),
  );
  let [at, y] = [x, topMm];
  const list = entries.map(({ words, style, round, flat }): readonly PaperMark[] => {
    const own = SAMPLE_MM + 1 + fonts.widthMm(words, STYLE.small);
    if (at > x && at + own > x + widthMm) [at, y] = [x, y + ROW_MM];
    const marks: PaperMark[] = [
      sample(style, { at, y, round, flat }),
      { mark: 'text', x: at + SAMPLE_MM + 1, y: y + 2.6, text: words, style: STYLE.small },
    ];
    at += own + 3.5;
    return marks;
  });
  return [{ item: 'list', entries: list }];
}

function sample(
  style: Style,
  { at, y, round, flat }: { at: number; y: number; round: boolean; flat: boolean },
): PaperMark {
  if (round) return { mark: 'disc', x: at + SAMPLE_MM / 2, y: y + 1.7, radiusMm: 1.9, style };
  if (flat)
    return {
      mark: 'line',
      points: [
        [at, y + 1.7],
        [at + SAMPLE_MM, y + 1.7],
      ],
      style,
    };
  const half = 1.1;
  const middle = at + SAMPLE_MM / 2;
  return {
    mark: 'box',
    box: { leftMm: middle - half, topMm: y + 1.7 - half, widthMm: 2 * half, heightMm: 2 * half },
    style,
  };
}
