import type { Place } from '@crownfall/geometry';
import { finding, nearestWord } from '@crownfall/survey';
import type { FindingSink } from './finding-sink.ts';
import type { LayerEntry } from './layer-reading.ts';
import { unitsFor } from './unit-factors.ts';

export type Properties = Readonly<Record<string, unknown>>;

/** Renames and converts the columns of one file as its project says. */
export interface FieldMapping {
  /** Our name for a column of the file. */
  ourName(theirs: string): string;
  /** One record's values, renamed and converted; what is not mapped stays. */
  apply(theirs: Properties): Properties;
  /** Tells which mapped columns were in no record; call it once, after the last one. */
  finish(): void;
}

/** Columns looked at for "did you mean …?". */
const COLUMNS_REMEMBERED = 200;

/**
 * The mapping of a layer entry. A column that our name displaces stays as `NAME_given`. Values with a unit that are not
 * numbers stay as they are: the survey tells about them. A unit that does not fit is told and not applied.
 */
export function fieldMapping(entry: LayerEntry, place: Place, findings: FindingSink): FieldMapping {
  const theirNames = new Map<string, string[]>();
  for (const [ours, theirs] of Object.entries(entry.fields ?? {})) {
    theirNames.set(theirs, [...(theirNames.get(theirs) ?? []), ours]);
  }
  const taken = new Set([...theirNames.values()].flat());
  const factors = factorsOf(entry, place, findings);
  const seen = new Set<string>();
  const plain = theirNames.size === 0 && factors.size === 0;

  function apply(theirs: Properties): Properties {
    if (plain) return theirs;
    const out: [string, unknown][] = [];
    for (const [name, value] of Object.entries(theirs)) {
      if (seen.size < COLUMNS_REMEMBERED || theirNames.has(name)) seen.add(name);
      const ours = theirNames.get(name) ?? [taken.has(name) ? `${name}_given` : name];
      for (const our of ours) out.push([our, converted(value, factors.get(our))]);
    }
    return Object.fromEntries(out);
  }

  return {
    ourName: (theirs) => theirNames.get(theirs)?.[0] ?? theirs,
    apply,
    finish() {
      if (seen.size === 0) return;
      for (const [theirs, ours] of theirNames) {
        if (seen.has(theirs)) continue;
        const valid = [...seen].sort();
        const facts = { got: theirs, valid: valid.slice(0, 12).join(', '), nearest: nearestWord(theirs, valid) };
        findings.add(finding('mapping-field-missing', 'warning/left_out', { ...place, field: ours[0] }, facts));
      }
    },
  };
}

function factorsOf(entry: LayerEntry, place: Place, findings: FindingSink): Map<string, number> {
  const factors = new Map<string, number>();
  for (const [field, unit] of Object.entries(entry.units ?? {})) {
    const units = unitsFor(field);
    if (Object.hasOwn(units, unit)) factors.set(field, units[unit]);
    else {
      const valid = Object.keys(units);
      const facts = {
        got: unit,
        valid: valid.join(', ') || 'none: the name carries no unit',
        nearest: nearestWord(unit, valid),
      };
      // Figures in a wrong unit would silently change every area: the job must not go on.
      findings.add(finding('unit-unknown', 'error/stops', { ...place, field }, facts));
    }
  }
  return factors;
}

/** A number, a number written as text, or a list of either, times the factor; anything else as it is. */
function converted(value: unknown, factor: number | undefined): unknown {
  if (factor === undefined || factor === 1) return value;
  if (typeof value === 'number') return times(value, factor);
  if (Array.isArray(value)) return value.map((item) => converted(item, factor));
  if (typeof value !== 'string' || value.trim() === '') return value;
  const parts = value.trim().split(/\s*[;|\s]\s*|,\s*(?=\S+,|\S+$)/);
  const numbers = parts.map(Number);
  if (numbers.some((number) => !Number.isFinite(number))) return value;
  return parts.length === 1 ? times(numbers[0], factor) : numbers.map((number) => times(number, factor));
}

/** Free of the binary dust that 12 × 0.3048 would leave behind: 12 significant digits. */
function times(value: number, factor: number): number {
  return Number((value * factor).toPrecision(12));
}
