/**
 * Windows as an iCalendar file that any calendar program takes in. Source: RFC 5545 (Desruisseaux B, ed., 2009): content lines and
 * folding 3.1, TEXT escaping 3.3.11, VEVENT 3.6.1, DATE values 3.3.4; UID as RFC 7986 5.3 wants it, unique and without names.
 */
import { addDays } from '../days.ts';

/** A span of whole days. */
export interface CalendarSpan {
  /** Stays the same when the file is made again, so that a calendar updates the event; unique in the world. */
  readonly uid: string;
  readonly first: string;
  /** Last day, included. */
  readonly last: string;
  readonly summary: string;
  readonly description: string;
  /** Only expected, not seen. */
  readonly tentative: boolean;
}

/** Longest line in octets, the line break aside. */
const FOLD_OCTETS = 75;

/**
 * The calendar as text with CRLF line breaks. `stamp` is the instant the file is made, UTC, `YYYY-MM-DDTHH:MM:SSZ`. RangeError for
 * another form, or a span that ends before it begins.
 * @example icalendarOf('Bloom', [span], '2026-05-20T06:00:00Z') // 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\n…'
 */
export function icalendarOf(title: string, spans: readonly CalendarSpan[], stamp: string): string {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/.test(stamp) || Number.isNaN(Date.parse(stamp)))
    throw new RangeError(`stamp: expected YYYY-MM-DDTHH:MM:SSZ, got ${stamp}`);
  const made = stamp.replace(/[-:]/g, '');
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Crownfall//Bloom windows//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `NAME:${escaped(title)}`,
    `X-WR-CALNAME:${escaped(title)}`,
    ...spans.flatMap((span) => eventLines(span, made)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines({ uid, first, last, summary, description, tentative }: CalendarSpan, made: string): string[] {
  if (last < first) throw new RangeError(`span ${uid}: expected an end on or after ${first}, got ${last}`);
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${made}`,
    `DTSTART;VALUE=DATE:${compact(first)}`,
    // The end is the first day that no longer belongs to it.
    `DTEND;VALUE=DATE:${compact(addDays(last, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    `STATUS:${tentative ? 'TENTATIVE' : 'CONFIRMED'}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

function compact(day: string): string {
  return day.replaceAll('-', '');
}

function escaped(text: string): string {
  return (
    text
      .replace(/\\/g, '\\\\')
      .replace(/[;,]/g, (sign) => `\\${sign}`)
      .replace(/\r\n|\r|\n/g, '\\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are not allowed in TEXT.
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, ' ')
  );
}

/** Broken into lines of at most 75 octets of UTF-8, further ones begun by a space; no character is cut. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > FOLD_OCTETS) {
      parts.push(part);
      part = '';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n ');
}

function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
