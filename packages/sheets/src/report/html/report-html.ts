/** A report as one HTML file: everything inside, no scripts, nothing fetched; prints as it reads. */
import { escaped } from '../../charts/chart-frame.ts';
import { PAPER, type PaperName } from '../../pdf/page-list.ts';
import { svgText } from '../../svg.ts';
import type { Figure, KeyFigures, Notice, Part, Picture, ReportContent, Run, Table } from '../content.ts';
import { REPORT_STYLE } from './report-style.ts';

/** The file's text, the same for the same content. `paper` is that of `@page`, for whoever prints it. */
export function reportHtml(content: ReportContent, { paper }: { readonly paper: PaperName }): string {
  const { title, about, running, language, parts } = content;
  const { widthMm, heightMm } = PAPER[paper];
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(`${title} – ${about}`)}</title>`,
    `<style>@page{size:${widthMm}mm ${heightMm}mm;margin:16mm 18mm}${REPORT_STYLE}</style>`,
  ].join('\n');
  return [
    '<!doctype html>',
    `<html lang="${language}"><head>`,
    head,
    '</head><body>',
    `<header><h1>${escaped(title)}</h1><p class="about">${escaped(about)}</p></header>`,
    `<main>${parts.map(partHtml).join('\n')}</main>`,
    `<footer><p>${escaped(running)}</p></footer>`,
    '</body></html>\n',
  ].join('\n');
}

function partHtml(part: Part, index: number): string {
  switch (part.part) {
    case 'heading': {
      const looks = [part.newPage ? 'new-page' : '', part.small ? 'small-head' : ''].filter((look) => look !== '');
      const page = looks.length === 0 ? '' : ` class="${looks.join(' ')}"`;
      return `<h${part.level}${page} id="part-${index}">${escaped(part.text)}</h${part.level}>`;
    }
    case 'paragraph':
      return `<p${part.tone === undefined ? '' : ` class="${part.tone}"`}>${runHtml(part.text)}</p>`;
    case 'list':
      return `<ul${part.tone === undefined ? '' : ' class="small"'}>${part.items.map((item) => `<li>${runHtml(item)}</li>`).join('')}</ul>`;
    case 'key-figures':
      return keyFiguresHtml(part, index);
    case 'table':
      return tableHtml(part, index);
    case 'picture':
      return pictureHtml(part, index);
    case 'notice':
      return noticeHtml(part);
  }
}

function runHtml(run: Run): string {
  return run
    .map((one) => {
      if (typeof one === 'string') return escaped(one);
      return 'figure' in one ? figureHtml(one) : `<strong>${escaped(one.strong)}</strong>`;
    })
    .join('');
}

/** The cells it comes from travel with the figure, for whoever looks at the page's source. */
function figureHtml({ figure, from }: Figure): string {
  return `<span class="figure" data-from="${escaped(JSON.stringify(from))}">${escaped(figure)}</span>`;
}

function keyFiguresHtml({ figures, beside }: KeyFigures, index: number): string {
  const one = ({ label, figure, range, rangeLabel, note }: KeyFigures['figures'][number]) =>
    `<div><dt>${escaped(label)}</dt><dd class="value">${figureHtml(figure)}</dd>` +
    `<dd class="range">${range === null ? escaped(rangeLabel) : `${escaped(rangeLabel)}: ${figureHtml(range)}`}</dd>` +
    `${note === undefined ? '' : `<dd class="range">${escaped(note)}</dd>`}</div>`;
  const list = `<dl class="key-figures">${figures.map(one).join('')}</dl>`;
  return beside === undefined ? list : `<div class="beside">${pictureHtml(beside, index)}${list}</div>`;
}

function tableHtml({ caption, captionHidden, columns, rows, note }: Table, index: number): string {
  const side = (at: number) => (columns[at].align === 'right' ? ' class="right"' : '');
  const widths = columns.map(({ weight }) => weight);
  const all = widths.reduce((sum, weight) => sum + weight, 0);
  const cols = widths.map((weight) => `<col style="width:${((100 * weight) / all).toFixed(1)}%">`).join('');
  const head = columns.map(({ title }, at) => `<th scope="col"${side(at)}>${escaped(title)}</th>`).join('');
  const cells = (row: readonly Run[]) =>
    row
      .map((cell, at) =>
        at === 0 ? `<th scope="row"${side(at)}>${runHtml(cell)}</th>` : `<td${side(at)}>${runHtml(cell)}</td>`,
      )
      .join('');
  const body = rows.map((row) => `<tr>${cells(row)}</tr>`).join('\n');
  const below = note === undefined ? '' : `<p class="note">${runHtml(note)}</p>`;
  const hidden = captionHidden ? ' class="unseen"' : '';
  const region = `class="scroll" role="region" tabindex="0" aria-labelledby="caption-${index}"`;
  return `<div ${region}><table><caption id="caption-${index}"${hidden}>${escaped(caption)}</caption><colgroup>${cols}</colgroup><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>${below}`;
}

function pictureHtml({ drawing, caption }: Picture, index: number): string {
  return `<figure>${svgText(drawing, `p${index}-`)}<figcaption>${escaped(caption)}</figcaption></figure>`;
}

function noticeHtml({ title, lines }: Notice): string {
  if (lines.length === 1)
    return `<div class="notice" role="note"><p><strong>${escaped(title)}.</strong> ${runHtml(lines[0])}</p></div>`;
  return `<div class="notice" role="note"><p><strong>${escaped(title)}</strong></p><ul>${lines.map((line) => `<li>${runHtml(line)}</li>`).join('')}</ul></div>`;
}
