/** Every reason that forbids an action stands on the visit sheet and in the report, in both languages. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { ActionOffer, NoPlan, WorkPlan } from '@crownfall/priority';
import { type Page, visitBook } from '@crownfall/sheets';
import { openFonts } from '@crownfall/sheets/pdf';
import { contentText, letterContent, reportContent, reportHtml } from '@crownfall/sheets/report';
import {
  describeConstraint,
  describeReason,
  type Language,
  REASON_CODES,
  type Reason,
  treatmentCautions,
} from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { CLASH, IMPOSSIBLE, planAgainst, planWith } from '../../packages/priority/src/plan/forbidden-plan.test-data.ts';
import { REASON_CASES, reasonsIn } from '../../packages/priority/src/plan/reason-cases.test-data.ts';
import { SMALL } from '../../packages/sheets/src/small-assessment.test-data.ts';

const LANGUAGES = ['en', 'es'] as const;
const [BLOCK] = SMALL.blocks;

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'", '#39': "'" };

/** The text of a page of HTML. */
function spoken(html: string): string {
  const text = html.replace(/<[^>]*>/g, '');
  return text.replace(/&([\w#]+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}

const require = createRequire(import.meta.url);
const inter = (weight: number) =>
  ['latin', 'latin-ext'].map((part) =>
    readFileSync(require.resolve(`@fontsource/inter/files/inter-${part}-${weight}-normal.woff`)),
  );
const fonts = openFonts({ normal: inter(400), bold: inter(700) });

function onSheet(language: Language, reasons: readonly Reason[]): string {
  const records = { ratings: [], bloom: [], water: [], streets: [], sites: [] };
  const options = {
    blockIds: [BLOCK.blockId],
    paper: 'letter',
    language,
    version: '0',
    reasonsOf: () => reasons,
  } as const;
  const { pages } = visitBook(SMALL, records, { ...options, createdAt: '2026-05-20T00:00:00Z' }, fonts);
  return pages.flatMap(textsOf).join(' ');
}

const textsOf = ({ content }: Page): readonly string[] =>
  content.flatMap((item) => {
    const marks = item.item === 'text' ? item.marks : item.item === 'list' ? item.entries.flat() : [];
    return marks.flatMap((mark) => (mark.mark === 'text' ? [mark.text] : []));
  });

const reportText = (language: Language, plan: WorkPlan | NoPlan): string =>
  spoken(reportHtml(reportContent({ assessment: SMALL, plan }, { language }), { paper: 'letter' }));

const REASONS = REASON_CODES.map((code) => reasonsIn(REASON_CASES[code])[0]);

describe('every reason that forbids an action', () => {
  test.each(LANGUAGES)('stands on the visit sheet, and only where it forbids (%s)', (language) => {
    const free = onSheet(language, []);
    const sheet = onSheet(language, REASONS);
    for (const reason of REASONS) {
      const { what } = describeReason(reason, language);
      expect(sheet, reason.code).toContain(what);
      expect(free, reason.code).not.toContain(what);
    }
  });

  test.each(LANGUAGES)('stands in the report with what would change it, beside the cautions (%s)', (language) => {
    const byAction = (action: ActionOffer['action']) =>
      REASONS.filter((_, i) => REASON_CASES[REASON_CODES[i]].action === action);
    const told = reportText(language, planWith(byAction));
    const free = reportText(
      language,
      planWith(() => []),
    );
    for (const reason of REASONS) {
      const { what, remedy } = describeReason(reason, language);
      expect(told, reason.code).toContain(what);
      expect(told, reason.code).toContain(remedy);
      expect(free, reason.code).not.toContain(what);
    }
    for (const caution of treatmentCautions(language)) expect(told).toContain(caution);
  });

  test.each(LANGUAGES)('the letter that names a treatment says what governs it (%s)', (language) => {
    const wish = { blockId: BLOCK.blockId, language, ask: ['Desk'] };
    const text = contentText(letterContent({ assessment: SMALL, plan: planAgainst('bees-seen') }, wish)).replace(
      /\s+/g,
      ' ',
    );
    expect(text).toMatch(
      language === 'en' ? /licensed applicator.*label.*bees/ : /aplicador con licencia.*etiqueta.*abejas/,
    );
  });
});

describe('limits that cannot be met together', () => {
  test.each(LANGUAGES)('each is named in the report, beside the cautions (%s)', (language) => {
    const report = reportText(language, IMPOSSIBLE);
    for (const constraint of CLASH) expect(report).toContain(describeConstraint(constraint, 'USD', language));
    for (const caution of treatmentCautions(language)) expect(report).toContain(caution);
  });
});
