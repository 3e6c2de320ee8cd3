import { finding } from '@crownfall/survey';
import type { FeatureTaker } from '../geojson/feature-taker.ts';

/**
 * Values of typed formats as a layer holds them: whole numbers of any width as numbers where they fit (else as text),
 * times as ISO text (days alone without a time), bytes left out and told.
 */
export function plainProperties(values: object, taker: FeatureTaker): Record<string, unknown> {
  const out: [string, unknown][] = [];
  for (const [name, value] of Object.entries(values)) {
    if (value instanceof Uint8Array) {
      const facts = { got: 'bytes', count: 1 };
      taker.findings.add(finding('values-left-out', 'note/left_out', { ...taker.place, field: name }, facts));
    } else out.push([name, plainValue(value)]);
  }
  return Object.fromEntries(out);
}

function plainValue(value: unknown): unknown {
  if (typeof value === 'bigint') {
    return value >= Number.MIN_SAFE_INTEGER && value <= Number.MAX_SAFE_INTEGER ? Number(value) : String(value);
  }
  if (value instanceof Date) return isoText(value);
  if (typeof value === 'string') return value.replace(/^(\d{4}-\d\d-\d\d)T00:00:00(?:\.0+)?Z?$/, '$1');
  if (Array.isArray(value)) return value.map(plainValue);
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, plainValue(inner)]));
  }
  return value;
}

function isoText(date: Date): string | null {
  if (Number.isNaN(date.getTime())) return null;
  const text = date.toISOString();
  return text.endsWith('T00:00:00.000Z') ? text.slice(0, 10) : text;
}
