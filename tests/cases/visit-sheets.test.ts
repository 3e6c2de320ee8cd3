/** Visit sheets of the whole demo town: nothing printed over anything else, every tree once, lengths true, readable by machines. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { type Assessment, assess, blockWater, isStopped, offersOf, reckonProject } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { type Drawing, onPaper, type Page, type PageList, textCorners, visitBook } from '@crownfall/sheets';
import { openFonts, writePdf } from '@crownfall/sheets/pdf';
import { readSurvey, type Survey, treatmentCautions } from '@crownfall/survey';
import Geodesic from 'geographiclib-geodesic';
import jsQR from 'jsqr';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const require = createRequire(import.meta.url);
const inter = (weight: number) =>
  ['latin', 'latin-ext'].map((part) =>
    readFileSync(require.resolve(`@fontsource/inter/files/inter-${part}-${weight}-normal.woff`)),
  );
const fonts = openFonts({ normal: inter(400), bold: inter(700) });
const LINK = 'https://trees.example.org/town/#block=';

let town: Assessment;
let survey: Survey;

beforeAll(async () => {
  const input = await readProject(join(import.meta.dirname, '../../sample-geo'));
  const outcome = assess(input, { draws: 100 });
  if (isStopped(outcome)) throw new Error('the demo town stopped');
  town = outcome;
  survey = readSurvey(input).survey;
});

function bookOf(
  blockIds: readonly string[],
  { paper, language, units }: { paper: 'letter' | 'a4'; language: 'en' | 'es'; units: 'metric' | 'us' },
): PageList {
  return visitBook(
    town,
    survey,
    {
      blockIds,
      paper,
      language,
      units,
      createdAt: '2026-05-20T00:00:00Z',
      version: '0.0.0',
      linkOf: (id) => `${LINK}${id}`,
      reasonsOf: (id) =>
        id < 'B20'
          ? [
              { code: 'water-near', facts: { distance_m: 3.4, kind: 'drain', keep_off_m: 10 } },
              { code: 'bees-seen', facts: { seen_on: '2026-05-19' } },
            ]
          : undefined,
    },
    fonts,
  );
}

interface Printed {
  readonly text: string;
  readonly corners: Float64Array;
}

/** Every text on a page with its room, those in pictures included. */
function printedOn(page: Page): readonly Printed[] {
  return page.content.flatMap((item): readonly Printed[] => {
    if (item.item === 'figure') {
      if (!('ground' in item.picture)) return textsOf(item.picture);
      return drawingTexts(item.picture, item.box.leftMm, item.box.topMm);
    }
    if (item.item === 'table') return item.rows.flatMap((row) => row.flatMap(({ marks }) => textsOf(marks)));
    return item.item === 'list' ? item.entries.flatMap(textsOf) : textsOf(item.marks);
  });
}

function textsOf(marks: Drawing['onPaper']): readonly Printed[] {
  return marks.flatMap((mark) =>
    mark.mark === 'text' ? [{ text: mark.text, corners: textCorners(mark, fonts) }] : [],
  );
}

function drawingTexts(drawing: Drawing, left: number, top: number): readonly Printed[] {
  const ground = drawing.ground.flatMap((mark): readonly Printed[] => {
    if (mark.mark !== 'label' && mark.mark !== 'badge') return [];
    const [x, y] = onPaper(drawing, mark.x, mark.y);
    if (mark.mark === 'label') return [{ text: mark.text, corners: textCorners({ ...mark, x, y }, fonts, true) }];
    return [{ text: mark.text, corners: discAbout(x, y, mark.radiusMm) }];
  });
  return [...ground, ...textsOf(drawing.onPaper)].map(({ text, corners }) => ({
    text,
    corners: corners.map((value, i) => value + (i % 2 === 0 ? left : top)),
  }));
}

/** A disc as a polygon of 16 corners. */
function discAbout(x: number, y: number, radius: number): Float64Array {
  const angles = Array.from({ length: 16 }, (_, i) => (Math.PI * i) / 8);
  return Float64Array.from(angles.flatMap((angle) => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]));
}

/** Area two convex rooms have in common: Sutherland and Hodgman 1974, and the area of a polygon. */
function commonMm2(a: Float64Array, b: Float64Array): number {
  let points = pairs(a);
  const clip = pairs(b);
  clip.forEach(([x0, y0], i) => {
    const [x1, y1] = clip[(i + 1) % clip.length];
    const side = ([x, y]: readonly [number, number]) => (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
    points = points.flatMap((p, k) => {
      const q = points[(k + 1) % points.length];
      const [sp, sq] = [side(p), side(q)];
      const cut = [p[0] + ((q[0] - p[0]) * sp) / (sp - sq), p[1] + ((q[1] - p[1]) * sp) / (sp - sq)] as const;
      return [...(sp >= 0 ? [p] : []), ...(sp >= 0 !== sq >= 0 ? [cut] : [])];
    });
  });
  return Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length];
      return sum + (x * ny - nx * y) / 2;
    }, 0),
  );
}

function pairs(flat: Float64Array): readonly (readonly [number, number])[] {
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]] as const);
}

/** A tenth of a hair's width along a letter's height. */
const TOUCH_MM2 = 0.05;

function overprints(page: Page): readonly string[] {
  const printed = printedOn(page).filter(({ text }) => text.trim() !== '');
  const boxes = printed.map(({ corners }) => boxAbout(corners));
  const found: string[] = [];
  for (let i = 0; i < printed.length; i++) {
    for (let k = 0; k < i; k++) {
      const [a, b] = [printed[i], printed[k]];
      if (!boxesMeet(boxes[i], boxes[k])) continue;
      if (commonMm2(a.corners, b.corners) > TOUCH_MM2) found.push(`${a.text} | ${b.text}`);
    }
  }
  return found;
}

type Box = readonly [left: number, top: number, right: number, bottom: number];

function boxAbout(corners: Float64Array): Box {
  const xs = corners.filter((_, i) => i % 2 === 0);
  const ys = corners.filter((_, i) => i % 2 === 1);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

function boxesMeet(a: Box, b: Box): boolean {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

describe.each([
  { paper: 'letter', language: 'en', units: 'us' },
  { paper: 'a4', language: 'es', units: 'metric' },
] as const)('all blocks on $paper in $language', (asked) => {
  let book: PageList;
  beforeAll(() => {
    book = bookOf(
      town.blocks.map(({ blockId }) => blockId),
      asked,
    );
  });

  test('no text is printed over another, none leaves the paper', () => {
    expect(town.blocks.length).toBe(42);
    for (const page of book.pages) {
      expect(overprints(page)).toEqual([]);
      for (const { text, corners } of printedOn(page)) {
        for (const [x, y] of pairs(corners)) {
          const inside = x > 5 && y > 5 && x < page.paper.widthMm - 5 && y < page.paper.heightMm - 5;
          expect(inside, text).toBe(true);
        }
      }
    }
  });

  test('every tree of the town has its row and its number on a map, once', () => {
    const rows = book.pages.flatMap((page) =>
      page.content.flatMap((item) =>
        item.item === 'table' ? item.rows.slice(1).map((row) => textsOf(row[1].marks)[0]?.text.split(' ')[0]) : [],
      ),
    );
    const inBlocks = town.trees.filter(({ blockId }) => blockId !== null).map(({ treeId }) => treeId);
    expect(rows.filter((id) => /^T\d/.test(id ?? '')).sort()).toEqual(inBlocks.sort());
    const maps = book.pages.flatMap((page) =>
      page.content.flatMap((item) => (item.item === 'figure' && 'ground' in item.picture ? [item.picture] : [])),
    );
    const numbers = maps.slice(1).map(({ ground }) => ground.filter(({ mark }) => mark === 'badge').length);
    expect(numbers.reduce((sum, count) => sum + count, 0)).toBe(inBlocks.length);
  });

  test('a block goes on to a second page only when its trees do not fit, and fills the first one before', () => {
    const bookmarked = book.pages.flatMap((page, i) => (page.bookmark === undefined ? [] : [i]));
    bookmarked.slice(1).forEach((first, k) => {
      const next = bookmarked[k + 2] ?? book.pages.length;
      if (next - first < 2) return;
      const lowest = Math.max(
        ...printedOn(book.pages[first])
          .slice(0, -1)
          .flatMap(({ corners }) => pairs(corners).map(([, y]) => y)),
      );
      expect(book.pages[first].paper.heightMm - lowest).toBeLessThan(30);
    });
  });
});

const poppler = hasPrograms(['pdfinfo', 'pdftotext', 'pdftoppm']);

describe('printed sheets', () => {
  const folder = temporaryFolder('visit-sheets');
  const file = join(folder, 'sheet.pdf');

  test('the nearest water is told and drawn, as far as the plan reckons it', async () => {
    const reckoned = reckonProject(await readProject(join(import.meta.dirname, '../../sample-geo')));
    if (isStopped(reckoned)) throw new Error('the demo town stopped');
    const book = offersOf(reckoned);
    for (const blockId of ['B13', 'B21', 'B28']) {
      const near = blockWater(book, blockId).trees.flatMap(({ lines }) => lines);
      const [least] = near.sort((a, b) => a.distanceM - (a.keepOffM ?? 0) - b.distanceM + (b.keepOffM ?? 0));
      const told = least.distanceM.toFixed(least.distanceM < 9.95 ? 1 : 0);
      const sheets = bookOf([blockId], { paper: 'letter', language: 'en', units: 'metric' });
      const texts = sheets.pages.flatMap((page) => printedOn(page).map(({ text }) => text));
      const whole = texts.join(' ').replaceAll('\u00a0', ' ');
      expect(whole, blockId).toMatch(new RegExp(`${told} m \\(${least.kind}, tree \\d+\\); keep ${least.keepOffM}`));
      // In the figures, and on the map where it has room.
      if (blockId !== 'B21') expect(texts.filter((text) => text === `${told}\u00a0m`).length, blockId).toBe(1);
    }
  });

  test('distances on the map are true to 0.2 mm: every corner of the block against geodesics', async () => {
    for (const blockId of ['B04', 'B30', 'B17']) {
      const bytes = await writePdf(bookOf([blockId], { paper: 'letter', language: 'en', units: 'metric' }), fonts);
      const { scale, outline } = outlineOf(bytes);
      const block = town.blocks.find((each) => each.blockId === blockId);
      if (block?.geometry.kind !== 'area') throw new Error('a block without area');
      const corners = pairs(block.geometry.polygons[0][0]);
      // Two corners far apart are told by their distance; every other one by its distances from these two.
      const toGround = (p: readonly [number, number], q: readonly [number, number]) =>
        (Geodesic.Geodesic.WGS84.Inverse(p[1], p[0], q[1], q[0]).s12 ?? Number.NaN) * (1000 / scale);
      const toPaper = (p: readonly [number, number], q: readonly [number, number]) =>
        Math.hypot(p[0] - q[0], p[1] - q[1]);
      const [a, b] = farthest(outline, toPaper);
      const [A, B] = farthest(corners, toGround);
      expect(Math.abs(toPaper(outline[a], outline[b]) - toGround(corners[A], corners[B]))).toBeLessThan(0.2);
      expect(outline.length).toBeGreaterThanOrEqual(3);
      const fits = (p: readonly [number, number], from: number, to: number) =>
        corners.some(
          (c) =>
            Math.abs(toGround(c, corners[from]) - toPaper(p, outline[a])) < 0.2 &&
            Math.abs(toGround(c, corners[to]) - toPaper(p, outline[b])) < 0.2,
        );
      expect(outline.every((p) => fits(p, A, B)) || outline.every((p) => fits(p, B, A))).toBe(true);
    }
  });

  test.skipIf(!poppler)('tagged, in their language, the cautions found by an outside reader (poppler)', async () => {
    for (const language of ['en', 'es'] as const) {
      writeFileSync(file, await writePdf(bookOf(['B04', 'B12'], { paper: 'a4', language, units: 'us' }), fonts));
      expect(run('pdfinfo', file)).toMatch(/Tagged:\s+yes/);
      const text = run('pdftotext', file, '-').replaceAll(/\s+/g, ' ');
      for (const caution of treatmentCautions(language)) expect(text).toContain(caution);
      expect(text).toContain(language === 'en' ? 'Traffic: stay off the carriageway' : 'Tráfico: no pise la calzada');
      expect(text).toContain(
        language === 'en' ? 'Bees were at the flowers on 2026-05-19' : 'Había abejas en las flores',
      );
      const structure = run('pdfinfo', '-struct', file);
      for (const tag of ['H1', 'H2', 'Table', 'TH', 'TD', 'Figure', 'Link', 'L']) {
        expect(structure).toMatch(new RegExp(`^ *${tag}\\b`, 'm'));
      }
    }
  });

  test.skipIf(!poppler)('the printed code is read by another library and opens the block', async () => {
    writeFileSync(file, await writePdf(bookOf(['B30'], { paper: 'letter', language: 'en', units: 'us' }), fonts));
    const picture = execFileSync('pdftoppm', ['-r', '150', '-gray', '-f', '1', '-l', '1', file], {
      maxBuffer: 1 << 26,
    });
    const [, width, height] =
      /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.subarray(0, 30).toString('latin1'))?.map(Number) ?? [];
    const grey = picture.subarray(picture.length - width * height);
    const pixels = new Uint8ClampedArray(width * height * 4);
    for (const [i, value] of grey.entries()) pixels.set([value, value, value, 255], 4 * i);
    expect(jsQR(pixels, width, height)?.data).toBe(`${LINK}B30`);
  });
});

function run(program: string, ...options: string[]): string {
  return execFileSync(program, options, { encoding: 'utf8' });
}

function hasPrograms(names: readonly string[]): boolean {
  try {
    for (const name of names) execFileSync(name, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

function farthest<P>(points: readonly P[], distance: (p: P, q: P) => number): readonly [number, number] {
  let [best, far] = [[0, 0] as readonly [number, number], -1];
  points.forEach((p, i) => {
    for (let k = 0; k < i; k++) {
      const own = distance(p, points[k]);
      if (own > far) [best, far] = [[i, k], own];
    }
  });
  return best;
}

/** Of the first page: the vertices in mm of the path stroked 0.8 mm wide, the block's outline, and the scale as written. */
function outlineOf(bytes: Uint8Array): {
  readonly scale: number;
  readonly outline: readonly (readonly [number, number])[];
} {
  const content = firstContent(Buffer.from(bytes));
  const perUnitMm = Number(/^([\d.]+) 0 0 \1 0 0 cm/m.exec(content)?.[1]) * (25.4 / 72);
  const path = content.split(/^q$/m).find((each) => /^0\.8 w$/m.test(each) && /^[-\d.]+ [-\d.]+ m$/m.test(each));
  const outline = [...(path ?? '').matchAll(/^([-\d.]+) ([-\d.]+) [ml]$/gm)].map(
    (found) => [Number(found[1]) * perUnitMm, Number(found[2]) * perUnitMm] as const,
  );
  const title = /Map of block \w+, 1 : (\d+)/.exec(Buffer.from(bytes).toString('latin1'));
  return { scale: Number(title?.[1]), outline };
}

function firstContent(raw: Buffer): string {
  for (let at = raw.indexOf('stream\n'); at >= 0; at = raw.indexOf('stream\n', at + 7)) {
    if (raw.subarray(at - 3, at).toString() === 'end') continue;
    try {
      const text = inflateSync(raw.subarray(at + 7, raw.indexOf('endstream', at))).toString('latin1');
      if (text.includes(' cm') && text.includes('BDC')) return text;
    } catch {
      // Not a packed stream.
    }
  }
  throw new Error('no page content');
}
