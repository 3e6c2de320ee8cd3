import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { blockMap } from '../block-map.ts';
import { SMALL } from '../small-assessment.test-data.ts';
import { interFonts } from './inter.test-data.ts';
import type { PageList } from './page-list.ts';
import { PAPER } from './page-list.ts';
import { openFonts } from './sheet-fonts.ts';
import { writePdf } from './write-pdf.ts';

const INK = { sizeMm: 4, colour: '#000000' } as const;

function list(): PageList {
  return {
    title: 'Hoja de visita: ¿qué árbol?',
    language: 'es',
    createdAt: '2026-05-01T12:00:00Z',
    pages: [
      {
        paper: PAPER.letter,
        bookmark: 'Muelle',
        content: [
          {
            item: 'text',
            tag: 'H1',
            marks: [{ mark: 'text', x: 20, y: 20, text: 'Año, señal, ¡cuidado!', style: { ...INK, weight: 'bold' } }],
          },
          {
            item: 'ornament',
            marks: [
              {
                mark: 'line',
                points: [
                  [20, 25],
                  [120, 25],
                ],
                style: { stroke: { colour: '#000000', widthMm: 0.2 } },
              },
            ],
          },
          {
            item: 'table',
            about: 'Árboles',
            rows: [
              [{ heads: 'Column', marks: [{ mark: 'text', x: 20, y: 30, text: 'Árbol', style: INK }] }],
              [{ marks: [{ mark: 'text', x: 20, y: 36, text: 'Łódź', style: INK }] }],
            ],
          },
          {
            item: 'figure',
            alt: 'Plano & <escala>',
            box: { leftMm: 10, topMm: 50, widthMm: 140, heightMm: 160 },
            picture: blockMap(SMALL, 'B1', { widthMm: 140, heightMm: 160 }),
            link: 'https://example.org/?a=1',
          },
        ],
      },
      {
        paper: PAPER.a4,
        content: [{ item: 'list', entries: [[{ mark: 'text', x: 20, y: 20, text: '中', style: INK }]] }],
      },
    ],
  };
}

const poppler = programs(['pdfinfo', 'pdftotext', 'pdffonts']);

describe('a PDF', () => {
  const fonts = interFonts();
  let bytes: Uint8Array = new Uint8Array();
  const folder = mkdtempSync(join(tmpdir(), 'crownfall-pdf-'));
  const file = join(folder, 'sheet.pdf');
  beforeAll(async () => {
    bytes = await writePdf(list(), fonts);
    writeFileSync(file, bytes);
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  const read = (program: string, ...options: string[]) => execFileSync(program, [...options], { encoding: 'utf8' });

  test('is the same bytes each time', async () => {
    expect(Buffer.from(await writePdf(list(), fonts)).equals(Buffer.from(bytes))).toBe(true);
  });

  test.skipIf(!poppler)('is tagged, titled, and of the paper asked for (poppler)', () => {
    const info = read('pdfinfo', '-f', '1', '-l', '2', file);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/Title:\s+Hoja de visita: ¿qué árbol\?/);
    expect(info).toMatch(/Page\s+1 size:\s+612 x 792 pts \(letter\)/);
    expect(info).toMatch(/Page\s+2 size:\s+595\.276 x 841\.89 pts \(A4\)/);
    expect(info).toMatch(/Creator:\s+Crownfall/);
  });

  test.skipIf(!poppler)('tells its structure with headings, table heads and what a figure shows (poppler)', () => {
    const structure = read('pdfinfo', '-struct-text', file).replaceAll(/\s+/g, ' ');
    expect(structure).toMatch(
      /Document.*Sect.*H1.*"Año, señal, ¡cuidado!.*Table.*TR.*TH.*"Árbol.*TD.*"Łódź.*Link.*Figure/,
    );
    const plain = Buffer.from(bytes).toString('latin1');
    expect(plain).toContain('/Lang (es)');
    expect(plain).toContain('/Scope /Column');
    expect(plain).toContain('/Alt (Plano & <escala>)');
    expect(plain).toContain('https://example.org/?a=1');
  });

  test.skipIf(!poppler)(
    'embeds a subset of every font it uses, and prints a letter no font has as a question mark',
    () => {
      const rows = read('pdffonts', file).trim().split('\n').slice(2);
      expect(rows.length).toBe(3); // normal, bold, and the one with Ł
      for (const row of rows) expect(row).toMatch(/[A-Z]{6}\+Inter.*yes yes yes/);
      expect(read('pdftotext', '-f', '2', file, '-').trim()).toBe('?');
    },
  );

  test('lengths in its paths are true: a block of 100 m and a crown of 10 m at 1 : 1000', () => {
    const boxes = pathBoxes(bytes);
    for (const sideMm of [100, 10]) {
      expect(boxes.some((box) => Math.abs(box.width - sideMm) < 0.03 && Math.abs(box.height - sideMm) < 0.03)).toBe(
        true,
      );
    }
  });

  test('WOFF2 is refused at the door, other bytes by the reader', () => {
    const woff2 = new TextEncoder().encode('wOF2 and so on');
    expect(() => openFonts({ normal: [woff2], bold: [woff2] })).toThrow(
      'expected TrueType, OpenType or WOFF, got WOFF2',
    );
    expect(() => openFonts({ normal: [], bold: [] })).toThrow('expected a font file for normal text');
  });

  test('refuses a list without pages, and a moment that is none', async () => {
    await expect(writePdf({ ...list(), pages: [] }, fonts)).rejects.toThrow('at least one page');
    await expect(writePdf({ ...list(), createdAt: 'today' }, fonts)).rejects.toThrow('ISO 8601 instant, got today');
  });
});

/** Boxes in mm of the subpaths of straight lines on all pages, by a reader of content streams that knows only m, l, h, cm. */
function pathBoxes(bytes: Uint8Array): readonly { readonly width: number; readonly height: number }[] {
  const raw = Buffer.from(bytes);
  const boxes: { width: number; height: number }[] = [];
  for (let at = raw.indexOf('stream\n'); at >= 0; at = raw.indexOf('stream\n', at + 7)) {
    if (raw.subarray(at - 3, at).toString() === 'end') continue;
    const length = raw.indexOf('endstream', at);
    const text = (() => {
      try {
        return inflateSync(raw.subarray(at + 7, length)).toString('latin1');
      } catch {
        return '';
      }
    })();
    if (!text.includes(' cm')) continue;
    const perUnit = Math.abs(Number(text.match(/^([\d.]+) 0 0 \1 0 0 cm/m)?.[1])) * (25.4 / 72);
    for (const path of text.split(/ m$/m).slice(1)) {
      const start = text.slice(0, text.indexOf(path)).match(/([-\d.]+) ([-\d.]+) m$/);
      const points = [...path.matchAll(/^([-\d.]+) ([-\d.]+) l$/gm)].map((m) => [Number(m[1]), Number(m[2])]);
      if (start !== null) points.push([Number(start[1]), Number(start[2])]);
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      boxes.push({
        width: (Math.max(...xs) - Math.min(...xs)) * perUnit,
        height: (Math.max(...ys) - Math.min(...ys)) * perUnit,
      });
    }
  }
  return boxes;
}

function programs(names: readonly string[]): boolean {
  try {
    for (const name of names) execFileSync(name, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
