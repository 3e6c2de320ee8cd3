import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CalendarSpan, icalendarOf } from './icalendar.ts';

const STAMP = '2026-05-20T06:30:00Z';
const SPAN: CalendarSpan = {
  uid: 'bloom-2026-1@crownfall.invalid',
  first: '2026-05-12',
  last: '2026-05-25',
  summary: 'Bloom',
  description: '',
  tentative: true,
};
const octets = (text: string) => new TextEncoder().encode(text).length;

/** RFC 5545 3.1, read back: a line break and one blank are taken out, then the lines parted. */
const contentLines = (text: string) => text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
/** RFC 5545 3.3.11 TEXT, read back. */
const plainText = (value: string) =>
  value.replace(/\\([\\;,nN])/g, (_, sign: string) => (sign.toLowerCase() === 'n' ? '\n' : sign));
/** RFC 5545 3.1: contentline = name *(";" param ) ":" value. */
const CONTENT_LINE = /^[A-Z][A-Z0-9-]*(;[A-Z-]+=[^:;,"]+)*:.*$/;

describe('iCalendar', () => {
  test('an event of whole days: the end is the day after the last', () => {
    const lines = contentLines(icalendarOf('T', [SPAN], STAMP));
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
    expect(lines.at(-1)).toBe('END:VCALENDAR');
    expect(lines).toContain('VERSION:2.0');
    expect(lines).toContain('DTSTAMP:20260520T063000Z');
    expect(lines).toContain('DTSTART;VALUE=DATE:20260512');
    expect(lines).toContain('DTEND;VALUE=DATE:20260526');
    expect(lines).toContain('UID:bloom-2026-1@crownfall.invalid');
    expect(lines).toContain('STATUS:TENTATIVE');
  });

  test('the end runs over months and leap days', () => {
    const lines = (last: string) => contentLines(icalendarOf('T', [{ ...SPAN, first: '2024-02-01', last }], STAMP));
    expect(lines('2024-02-28')).toContain('DTEND;VALUE=DATE:20240229');
    expect(lines('2024-12-31')).toContain('DTEND;VALUE=DATE:20250101');
  });

  // Law: what is written, read back by the grammar of RFC 5545, is what was meant; no line is longer than 75 octets.
  test('any text comes back, in lines of at most 75 octets that cut no character', () => {
    const anyText = fc.string({ unit: 'grapheme', maxLength: 200 }).map((text) => text.replace(/\p{Cc}/gu, '\n'));
    fc.assert(
      fc.property(anyText, anyText, (summary, description) => {
        const text = icalendarOf('Town', [{ ...SPAN, summary, description }], STAMP);
        expect(text.endsWith('\r\n')).toBe(true);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
        const lines = contentLines(text);
        for (const line of lines) expect(line).toMatch(CONTENT_LINE);
        const textOf = (name: string) =>
          plainText(lines.find((line) => line.startsWith(`${name}:`))?.slice(name.length + 1) ?? '–');
        expect(textOf('SUMMARY')).toBe(summary);
        expect(textOf('DESCRIPTION')).toBe(description);
      }),
      { seed: 5545, numRuns: 200 },
    );
  });

  test('a stamp that is none, or a span that ends before it begins, is refused', () => {
    expect(() => icalendarOf('T', [], '2026-05-20')).toThrow(/stamp: expected/);
    expect(() => icalendarOf('T', [{ ...SPAN, last: '2026-05-11' }], STAMP)).toThrow(RangeError);
  });
});
