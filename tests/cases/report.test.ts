/** The sample town's report: what it says, where its figures come from, how it is set on paper. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PageList } from '@crownfall/sheets';
import { PAPER } from '@crownfall/sheets';
import { installedFonts } from '@crownfall/sheets/node';
import { type openFonts, writePdf } from '@crownfall/sheets/pdf';
import {
  contentText,
  fittedReport,
  letterContent,
  type ReportContent,
  reportHtml,
  reportPages,
} from '@crownfall/sheets/report';
import { describeReason, treatmentCautions } from '@crownfall/survey';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { type SampleReport, sampleReport } from './report-sample.ts';
import { followed, type Trace } from './report-traces.ts';

const LANGUAGES = ['en', 'es'] as const;
const PAPERS = ['letter', 'a4'] as const;
const VARIANTS = LANGUAGES.flatMap((language) => PAPERS.map((paper) => ({ language, paper })));
const M2_PER_FT2 = 0.3048 ** 2;

let sample: SampleReport;
let fonts: ReturnType<typeof openFonts>;
const made = new Map<string, { content: ReportContent; pages: PageList }>();

beforeAll(async () => {
  sample = await sampleReport();
  fonts = await installedFonts();
  for (const { language, paper } of VARIANTS) {
    const content = fittedReport(sample.input, { language }, { paper, fonts });
    const pages = reportPages(content, { paper, fonts, createdAt: '2026-05-21T08:00:00Z' });
    made.set(`${language} ${paper}`, { content, pages });
  }
}, 120_000);

const of = (language: string, paper: string) =>
  made.get(`${language} ${paper}`) as { content: ReportContent; pages: PageList };

describe('figures', () => {
  /** Every figure of a page of HTML with the traces that travel with it. */
  const figuresIn = (html: string) =>
    [...html.matchAll(/<span class="figure" data-from="([^"]*)">([^<]*)<\/span>/g)].map(([, from, text]) => ({
      text: text.replaceAll('\u00a0', ' '),
      from: JSON.parse(from.replaceAll('&quot;', '"').replaceAll('&amp;', '&')) as Trace[],
    }));

  const numbersIn = (text: string): { value: number; decimals: number }[] =>
    [...text.replaceAll('−', '-').matchAll(/(?<![\d,.])-?\d[\d,]*(?:\.\d+)?/g)].map(([digits]) => ({
      value: Number(digits.replaceAll(',', '')),
      decimals: digits.split('.')[1]?.length ?? 0,
    }));

  test.each(['metric', 'us'] as const)('each is found again in the files of the run (%s)', (units) => {
    const content = fittedReport(sample.input, { language: 'en', units }, { paper: 'letter', fonts });
    const figures = figuresIn(reportHtml(content, { paper: 'letter' }));
    expect(figures.length).toBeGreaterThan(400);
    for (const { text, from } of figures) {
      const shown = numbersIn(text.replace(/^<0\.1 %$/, '0.0 %'));
      expect(shown.length, text).toBe(from.length);
      for (const [i, trace] of from.entries()) {
        const isArea = /_m2|M2/.test(trace.column.replace('nearest_m', '')) && trace.per === undefined;
        const isLength = /nearest_m|distance_m/.test(trace.column);
        const perUnit = units === 'us' && isArea ? M2_PER_FT2 : units === 'us' && isLength ? 0.3048 : 1;
        const isShare = trace.per !== undefined || /share/.test(trace.column);
        const expected = (followed(trace, sample.files) * (isShare ? 100 : 1)) / perUnit;
        // Half a unit of the last digit shown, and the files' own rounding.
        const tolerance = 0.5 * 10 ** -shown[i].decimals + 1e-5 + (trace.file === 'notices.csv' ? 0.5 : 0);
        expect(Math.abs(shown[i].value - expected), `${text} from ${JSON.stringify(trace)}`).toBeLessThanOrEqual(
          tolerance,
        );
      }
    }
  });

  test('outside tables each has its unit', () => {
    const { content } = of('en', 'letter');
    const runs = content.parts.flatMap((part) =>
      part.part === 'paragraph'
        ? [part.text]
        : part.part === 'list'
          ? part.items
          : part.part === 'notice'
            ? part.lines
            : [],
    );
    const figures = runs.flatMap((run) =>
      run.flatMap((one, i) =>
        typeof one === 'object' && 'figure' in one ? [`${one.figure}${String(run[i + 1] ?? '').slice(0, 12)}`] : [],
      ),
    );
    expect(figures.length).toBeGreaterThan(10);
    for (const text of figures) expect(text).toMatch(/m²|%|USD|crew hours/);
  });

  test('in tables the unit stands in the figure or in the head of its column', () => {
    for (const part of of('en', 'letter').content.parts) {
      if (part.part !== 'table') continue;
      for (const row of part.rows)
        for (const [i, cell] of row.entries())
          for (const one of cell)
            if (typeof one === 'object' && 'figure' in one && one.from.length > 0)
              expect(`${part.columns[i].title} ${one.figure}`, part.caption).toMatch(/m²|%|USD|hours|\dm|\d\u00a0m/);
    }
  });

  test('distances drawn to water are those of the plan', () => {
    const plan = sample.input.plan;
    if (!plan?.feasible) throw new Error('no plan');
    const drawn = of('en', 'letter').content.parts.flatMap((part) =>
      part.part === 'picture' ? [...part.drawing.description.matchAll(/(T\d+): \w+ ([\d.]+)\u00a0m/g)] : [],
    );
    expect(drawn.length).toBeGreaterThan(2);
    for (const [, tree, text] of drawn) {
      const known = plan.treated.find(({ treeId }) => treeId === tree);
      const nearest = Math.min(...Object.values(known?.nearestM ?? {}));
      const decimals = text.split('.')[1]?.length ?? 0;
      expect(Math.abs(Number(text) - nearest), tree).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-3);
    }
  });
});

test('a district’s figure is that of its blocks, and its range holds it', () => {
  const { plan } = sample.input;
  if (!plan?.feasible) throw new Error('no plan');
  expect(plan.districts.length).toBe(2);
  for (const { name, avoidedM2, avoidedRange80M2: range } of plan.districts) {
    const own = plan.settings.districts.find((district) => district.name === name)?.blocks ?? [];
    const blocks = plan.blocks.filter(({ blockId }) => own.includes(blockId));
    expect(avoidedM2).toBeCloseTo(
      blocks.reduce((sum, { taken }) => sum + taken.avoidedM2.value, 0),
      9,
    );
    if (range === null) throw new Error('no range');
    expect(range[0]).toBeLessThan(avoidedM2);
    expect(range[1]).toBeGreaterThan(avoidedM2);
  }
});

describe('words', () => {
  test.each([VARIANTS[0], VARIANTS[3]])(
    'uncalibrated is said on each page ($language, $paper)',
    async ({ language, paper }) => {
      const folder = temporaryFolder();
      const file = join(folder, 'report.pdf');
      const { pages } = of(language, paper);
      writeFileSync(file, await writePdf(pages, fonts));
      const texts = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
      expect(texts.length).toBe(pages.pages.length);
      for (const [i, text] of texts.entries()) {
        expect(text).toContain(language === 'en' ? 'uncalibrated' : 'sin calibrar');
        expect(text).toContain(
          language === 'en' ? `page ${i + 1} of ${texts.length}` : `página ${i + 1} de ${texts.length}`,
        );
        // A letter that no font has would print as a question mark.
        expect(text).not.toContain('?');
      }
      expect(texts[0].replace(/\s+/g, ' ')).toContain(
        language === 'en'
          ? 'Street trees are expected to stain 3,153 m² of pavement'
          : 'los árboles de calle manchen 3,153 m² de pavimento',
      );
      expect(texts[0]).toContain(language === 'en' ? 'What it leaves undone' : 'Qué deja sin hacer');
      expect(texts[1]).toContain(language === 'en' ? 'The plan' : 'El plan');
    },
  );

  test.each(LANGUAGES)('every reason that forbids an action is told (%s)', (language) => {
    const plan = sample.input.plan;
    if (!plan?.feasible) throw new Error('no plan');
    const html = reportHtml(of(language, 'letter').content, { paper: 'letter' });
    const codes = new Map(
      plan.blocks.flatMap(({ offers }) =>
        offers.flatMap(({ forbidden }) => forbidden.map((reason) => [reason.code, reason] as const)),
      ),
    );
    expect(codes.size).toBeGreaterThan(3);
    for (const reason of codes.values()) {
      const [opening] = describeReason(reason, language).what.split(/[\d:]/);
      expect(html, reason.code).toContain(opening.trim());
    }
  });

  test.each(LANGUAGES)('cautions stand on the first page and beside products and distances (%s)', (language) => {
    const { content } = of(language, 'letter');
    const notices = content.parts.filter((part) => part.part === 'notice');
    const said = notices.map((part) => JSON.stringify(part));
    for (const caution of treatmentCautions(language))
      expect(said.filter((text) => text.includes(caution)).length, caution).toBeGreaterThanOrEqual(2);
  });
});

describe('pages', () => {
  test.each(VARIANTS)(
    'nothing over the edge, no heading last, rows whole ($language, $paper)',
    ({ language, paper }) => {
      const { pages, content } = of(language, paper);
      const { widthMm, heightMm } = PAPER[paper];
      for (const page of pages.pages) {
        const items = page.content.filter(({ item }) => item !== 'ornament');
        const last = items[items.length - 1];
        expect(last.item === 'text' && last.tag.startsWith('H'), page.bookmark).toBe(false);
        for (const item of items) {
          const marks = item.item === 'text' ? item.marks : item.item === 'list' ? item.entries.flat() : [];
          const cells = item.item === 'table' ? item.rows.flatMap((row) => row.flatMap((cell) => cell.marks)) : [];
          for (const mark of [...marks, ...cells]) {
            if (mark.mark !== 'text') continue;
            const right = mark.x + fonts.widthMm(mark.text, mark.style);
            expect(right, mark.text).toBeLessThanOrEqual(widthMm - 18 + 0.05);
            expect(mark.y, mark.text).toBeLessThanOrEqual(heightMm - 17);
          }
        }
      }
      const rows = pages.pages.flatMap(({ content: items }) =>
        items.flatMap((item) => (item.item === 'table' ? item.rows.filter((row) => row[0].heads !== 'Column') : [])),
      );
      const expected = content.parts.reduce((sum, part) => sum + (part.part === 'table' ? part.rows.length : 0), 0);
      expect(rows.length).toBe(expected);
    },
  );

  test.each(VARIANTS)('a table that goes on has its head again ($language, $paper)', ({ language, paper }) => {
    for (const page of of(language, paper).pages.pages)
      for (const item of page.content)
        if (item.item === 'table') expect(item.rows[0][0].heads, item.about).toBe('Column');
  });

  test.each(VARIANTS)('no word of a table’s head is cut ($language, $paper)', ({ language, paper }) => {
    const { pages, content } = of(language, paper);
    const words = new Set(
      content.parts.flatMap((part) =>
        part.part === 'table' ? part.columns.flatMap(({ title }) => title.split(' ')) : [],
      ),
    );
    for (const page of pages.pages)
      for (const item of page.content)
        for (const cell of item.item === 'table' ? item.rows[0] : [])
          for (const mark of cell.marks)
            if (mark.mark === 'text') for (const word of mark.text.split(' ')) expect(words).toContain(word);
  });

  test.each(VARIANTS)('the council’s page holds all that is its own ($language, $paper)', ({ language, paper }) => {
    const { pages, content } = of(language, paper);
    const second = content.parts.find((part) => part.part === 'heading' && part.newPage === true);
    expect(pages.pages[1].bookmark).toBe(second?.part === 'heading' ? second.text : '');
  });
});

describe('a report without a plan', () => {
  const bare = (language: 'en' | 'es') => {
    const { plan, ...input } = sample.input;
    return fittedReport(input, { language }, { paper: 'letter', fonts });
  };

  test.each(LANGUAGES)('says so, and ranks and explains all the same (%s)', (language) => {
    const content = bare(language);
    const text = contentText(content).replace(/\s+/g, ' ');
    expect(text).toContain(
      language === 'en' ? 'No plan was made for this report.' : 'No se hizo un plan para este informe.',
    );
    const headings = content.parts.flatMap((part) => (part.part === 'heading' ? [part.text] : []));
    const whole = of(language, 'letter').content.parts.flatMap((part) => (part.part === 'heading' ? [part.text] : []));
    expect(headings).not.toContain(language === 'en' ? 'The plan' : 'El plan');
    expect(headings).not.toContain(language === 'en' ? 'Safety' : 'Seguridad');
    // Nothing else goes with it.
    expect(whole.filter((heading) => headings.includes(heading))).toEqual(headings);
    expect(headings.length).toBeGreaterThan(6);
    const figures = content.parts.flatMap((part) => (part.part === 'key-figures' ? part.figures : []));
    expect(figures.length).toBe(3);
    for (const { range } of figures) expect(range).not.toBeNull();
    // No figure comes from files that were never written.
    expect(JSON.stringify(content.parts)).not.toMatch(/"file":"(plan|notices)\./);
  });

  test('each figure is found again in the files of the run, and the first page holds all that is its own', () => {
    const content = bare('en');
    const html = reportHtml(content, { paper: 'letter' });
    const froms = [...html.matchAll(/data-from="([^"]*)"/g)].flatMap(
      ([, from]) => JSON.parse(from.replaceAll('&quot;', '"').replaceAll('&amp;', '&')) as Trace[],
    );
    expect(froms.length).toBeGreaterThan(200);
    for (const trace of froms) expect(Number.isFinite(followed(trace, sample.files)), JSON.stringify(trace)).toBe(true);
    const { pages } = reportPages(content, { paper: 'letter', fonts, createdAt: '2026-05-21T08:00:00Z' });
    const second = content.parts.find((part) => part.part === 'heading' && part.newPage === true);
    expect(pages[1].bookmark).toBe(second?.part === 'heading' ? second.text : '');
  });
});

describe('HTML', () => {
  test('headings go down step by step; no script, nothing fetched', () => {
    const html = reportHtml(of('en', 'letter').content, { paper: 'letter' });
    const levels = [...html.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1).length).toBe(1);
    for (let i = 1; i < levels.length; i++) expect(levels[i]).toBeLessThanOrEqual(levels[i - 1] + 1);
    expect(html).not.toMatch(/<script|<link|@import|url\((?!#)|src=|href="http/);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('letter', () => {
  const ask = ['Tree desk (invented), 555-0100'];
  const letter = (blockId: string, language: 'en' | 'es' = 'en') =>
    letterContent(sample.input, { blockId, language, ask, to: 'Ms. Invented', about: 'dark spots' });

  test.each(VARIANTS)('every block’s fits one page ($language, $paper)', ({ language, paper }) => {
    for (const { blockId } of sample.input.assessment.blocks) {
      const pages = reportPages(letter(blockId, language), { paper, fonts, createdAt: '2026-05-21T08:00:00Z' });
      expect(pages.pages.length, blockId).toBe(1);
    }
  });

  test('says what is planned, when, what is not, and whom to ask', () => {
    const plan = sample.input.plan;
    if (!plan?.feasible) throw new Error('no plan');
    const cleaned = plan.blocks.find(({ action }) => action === 'clean');
    const text = contentText(letter(cleaned?.blockId ?? ''));
    expect(text).toContain('The pavement will be cleaned, in the week of');
    expect(text).toContain('Tree desk (invented), 555-0100');
    expect(text.replace(/\s+/g, ' ')).toContain('have not yet been checked by measuring the pavement');
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(76);
  });

  test('names a cause only where one was found, and blames no unrated tree', () => {
    const { assessment } = sample.input;
    const clean = assessment.blocks
      .map(({ blockId }) => blockId)
      .filter((id) =>
        assessment.trees.every((tree) => tree.blockId !== id || tree.severityFrom !== 'rating' || tree.dose === 0),
      );
    const without = { ...assessment, trees: assessment.trees.map((tree) => ({ ...tree, dose: 0 })) };
    const text = contentText(
      letterContent({ ...sample.input, assessment: without }, { blockId: clean[0] ?? 'B04', language: 'en', ask }),
    ).replace(/\s+/g, ' ');
    expect(text).toContain('In none of them did we find anything that stains pavement.');
    expect(text).not.toMatch(/larvae in the flowers, whose|honeydew grows/);
    expect(text).toContain('We cannot say yet whether the trees that were not looked at stain anything.');
  });

  test('unknown blocks and nobody to ask are refused', () => {
    expect(() => letter('B99')).toThrow(/B99/);
    expect(() => letterContent(sample.input, { blockId: 'B04', language: 'en', ask: [] })).toThrow(RangeError);
  });
});
