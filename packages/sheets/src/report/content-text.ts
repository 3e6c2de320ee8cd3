/** Content as plain text for a message: paragraphs wrapped at a width, headings on lines of their own. */
import { type Part, plainText, type ReportContent } from './content.ts';

const WIDTH = 76;

/** The text of a letter. Tables, pictures and panels are no part of plain text and are left out. */
export function contentText({ title, parts }: ReportContent): string {
  const blocks = parts.flatMap((part) => partText(part));
  return `${[title, ...blocks].join('\n\n')}\n`;
}

function partText(part: Part): readonly string[] {
  if (part.part === 'heading') return [part.text.toUpperCase()];
  if (part.part === 'paragraph') {
    const text = plainText(part.text);
    return text === '' ? [] : [wrapped(text, '')];
  }
  if (part.part === 'list') return [part.items.map((item) => wrapped(plainText(item), '  ', '- ')).join('\n')];
  if (part.part === 'notice')
    return [[part.title, ...part.lines.map((line) => wrapped(plainText(line), '  ', '- '))].join('\n')];
  return [];
}

/** Broken at spaces; those that hold a number to its unit become plain ones in the end. */
function wrapped(text: string, indent: string, first = indent): string {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ').filter((each) => each !== '')) {
    const bare = line === first || line === indent;
    if (!bare && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = indent + word;
    } else line += bare ? word : ` ${word}`;
  }
  return [...lines, line].join('\n').replaceAll('\u00a0', ' ');
}
