/** One page for people who were not there: a heading, sentences, charts, a table, where the figures come from. */
import { CHART, escaped } from '@crownfall/sheets';

export interface SummaryPage {
  /** English unless given. */
  readonly language?: 'en' | 'es';
  readonly title: string;
  /** What was asked, when, from what data. */
  readonly about: string;
  /** The answer, the most important sentence first. */
  readonly sentences: readonly string[];
  /** SVG texts with the sentence that says what to look for. */
  readonly charts: readonly { readonly caption: string; readonly svg: string }[];
  readonly table?: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** What the figures rest on and what they do not say. */
  readonly cautions: readonly string[];
}

const STYLE = `
body{font:16px/1.5 Inter,'Noto Sans','DejaVu Sans',Helvetica,Arial,sans-serif;color:${CHART.ink};max-width:46rem;margin:2rem auto;padding:0 1rem}
h1{font-size:1.5rem;line-height:1.25;margin:0 0 .25rem}.about{color:${CHART.muted};margin:0 0 1.25rem}
ul{padding-left:1.2rem}figure{margin:1.5rem 0}figure svg{width:100%;height:auto}figcaption{color:${CHART.muted}}
table{border-collapse:collapse;width:100%;font-size:.9rem}th,td{padding:.25rem .5rem;border-bottom:1px solid ${CHART.grid};text-align:right}
th:first-child,td:first-child{text-align:left}.cautions{font-size:.85rem;color:${CHART.muted}}
@media print{body{margin:0;max-width:none;font-size:11pt}figure{break-inside:avoid}}`;

/** The page as one self-contained HTML file: charts inside, no scripts, nothing fetched. */
export function summaryPage({
  language = 'en',
  title,
  about,
  sentences,
  charts,
  table,
  cautions,
}: SummaryPage): string {
  return [
    '<!doctype html>',
    `<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title>`,
    `<style>${STYLE}</style></head><body>`,
    `<h1>${escaped(title)}</h1><p class="about">${escaped(about)}</p>`,
    `<ul>${sentences.map((one) => `<li>${escaped(one)}</li>`).join('\n')}</ul>`,
    ...charts.map(({ caption, svg }) => `<figure>${svg}<figcaption>${escaped(caption)}</figcaption></figure>`),
    ...(table ? [tableText(table)] : []),
    `<ul class="cautions">${cautions.map((one) => `<li>${escaped(one)}</li>`).join('\n')}</ul>`,
    '</body></html>\n',
  ].join('\n');
}

function tableText({ columns, rows }: NonNullable<SummaryPage['table']>): string {
  const cells = (tag: 'th' | 'td', row: readonly string[]) =>
    `<tr>${row.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  return `<table><thead>${cells('th', columns)}</thead><tbody>${rows.map((row) => cells('td', row)).join('\n')}</tbody></table>`;
}
