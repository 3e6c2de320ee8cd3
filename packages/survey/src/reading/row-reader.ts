/**
 * Reads the fields of one feature or row, and writes a finding for each value that is not what the field's rule says. A
 * needed field that cannot be read spoils the row: it is left out. An optional one is left out by itself.
 */
import type { Finding, Place } from '@crownfall/geometry';
import type { FactsOf, FindingCode, Grade } from '../findings/finding-codes.ts';
import { finding } from '../findings/finding-codes.ts';
import { nearestWord } from '../findings/nearest-word.ts';
import type { LayerName, RawFeature } from '../project-input.ts';
import type { Extra } from '../records.ts';
import type { FieldOf } from '../schemas/layer-schemas.ts';
import { fieldRule } from '../schemas/layer-schemas.ts';
import type { DateColumn } from './date-text.ts';
import { readDate } from './date-text.ts';
import { isMissing, readNumber } from './number-text.ts';

/** Whether a field that is absent or unreadable costs the whole row, or only itself. */
export type Need = 'needed' | 'optional';

/** What a row needs of the layer it belongs to. */
export interface RowLayer {
  readonly name: LayerName;
  readonly findings: Finding[];
  place(feature: RawFeature, field?: string): Place;
  /** Counts a finding that may repeat on every row; told once. `key`: what counts as the same. */
  tally<Code extends FindingCode>(
    code: Code,
    grade: Grade,
    where: () => Place,
    facts: Omit<FactsOf<Code>, 'count'>,
    key?: string,
  ): void;
  dateColumn(field: string): DateColumn;
}

export class RowReader<Layer extends LayerName> {
  readonly feature: RawFeature;
  /** True once something needed could not be read: the row yields no record. */
  spoiled = false;
  readonly #layer: RowLayer;

  constructor(layer: RowLayer, feature: RawFeature) {
    this.#layer = layer;
    this.feature = feature;
  }

  /** Where this row is, as its user knows it. */
  place(field?: string): Place {
    return this.#layer.place(this.feature, field);
  }

  find<Code extends FindingCode>(code: Code, grade: Grade, facts: FactsOf<Code>, field?: string): void {
    this.#layer.findings.push(finding(code, grade, this.place(field), facts));
  }

  /** Counts a finding that may repeat on every row; told once for the layer, at the first place. */
  tally<Code extends FindingCode>(
    code: Code,
    grade: Grade,
    facts: Omit<FactsOf<Code>, 'count'>,
    field?: string,
    key?: string,
  ): void {
    this.#layer.tally(code, grade, () => this.place(field), facts, `${field ?? ''} ${key ?? ''}`);
  }

  /** Writes the finding and leaves the row out. */
  spoil<Code extends FindingCode>(code: Code, facts: FactsOf<Code>, field?: string): void {
    this.spoiled = true;
    this.find(code, 'warning/left_out', facts, field);
  }

  /** As `spoil`, at a more exact place than the row. */
  spoilAt<Code extends FindingCode>(where: Place, code: Code, facts: FactsOf<Code>): void {
    this.spoiled = true;
    this.#layer.findings.push(finding(code, 'warning/left_out', where, facts));
  }

  text(field: FieldOf<Layer>, need: Need = 'optional'): string | undefined {
    const raw = this.feature.properties[field];
    const missing = isMissing(raw) || typeof raw === 'object';
    if (missing && need === 'needed') this.spoil('field-missing', {}, field);
    return missing ? undefined : String(raw).trim().normalize('NFC');
  }

  /** A number within the field's limits; `maximum` narrows them further. */
  number(field: FieldOf<Layer>, need: Need = 'optional', maximum?: number): number | undefined {
    const raw = this.feature.properties[field];
    const rule = fieldRule(this.#layer.name, field) ?? {};
    const unit = rule['x-unit'] ?? '';
    const reading = readNumber(raw, unit);
    if (reading === 'missing') {
      if (need === 'needed') this.spoil('field-missing', {}, field);
      return undefined;
    }
    if (reading === 'unreadable') {
      this.#refuse('field-not-a-number', { got: String(raw), unit: unit || undefined }, field, need);
      return undefined;
    }
    const limits = { ...rule, maximum: Math.min(rule.maximum ?? Infinity, maximum ?? Infinity) };
    if (!within(reading.value, limits)) {
      this.#refuse('value-out-of-range', { got: reading.value, expected: limitsText(limits, unit) }, field, need);
      return undefined;
    }
    if (reading.mended) {
      this.tally('number-mended', 'note/mended', { got: String(raw), read_as: reading.value }, field);
    }
    return reading.value;
  }

  /**
   * A word of the field's list; case, spaces and hyphens do not matter. `instead` is what an unknown word is read as;
   * without it the value is left out. `tally`: unknown words are counted per word, for layers with many features.
   */
  word<Word extends string>(field: FieldOf<Layer>, instead?: Word, tally = false): Word | undefined {
    const raw = this.feature.properties[field];
    const words = fieldRule(this.#layer.name, field)?.enum ?? [];
    if (raw === undefined || raw === null) return undefined;
    const got = String(raw).trim();
    const folded = got.toLowerCase().replace(/[\s-]+/g, '_');
    if (words.includes(folded)) return folded as Word;
    if (isMissing(raw)) return undefined;
    const facts = { got, valid: words.join(', '), nearest: nearestWord(folded, words), read_as: instead };
    const grade = instead === undefined ? 'warning/left_out' : 'warning/assumed';
    if (tally) this.tally('unknown-word', grade, facts, field, got);
    else this.find('unknown-word', grade, facts, field);
    return instead;
  }

  /** A day, ISO. */
  date(field: FieldOf<Layer>, need: Need = 'optional'): string | undefined {
    const raw = this.feature.properties[field];
    if (isMissing(raw)) {
      if (need === 'needed') this.spoil('field-missing', {}, field);
      return undefined;
    }
    const reading = readDate(raw, this.#layer.dateColumn(field));
    const got = String(raw).trim();
    if (reading.is === 'date') return reading.iso;
    if (reading.is === 'inferred') {
      const facts = { got, read_as: reading.iso, proof: reading.proof };
      this.tally('date-order-inferred', 'note/mended', facts, field);
      return reading.iso;
    }
    if (reading.is === 'ambiguous') {
      this.#refuse('date-ambiguous', { got, either: reading.either, or: reading.or }, field, need);
    } else {
      this.#refuse(reading.is === 'impossible' ? 'date-impossible' : 'date-unreadable', { got }, field, need);
    }
    return undefined;
  }

  /** Fields beyond the layer's own, as they came. */
  extra(): Extra {
    const entries = Object.entries(this.feature.properties);
    return Object.fromEntries(entries.filter(([field]) => fieldRule(this.#layer.name, field) === undefined));
  }

  #refuse<Code extends FindingCode>(code: Code, facts: FactsOf<Code>, field: string, need: Need): void {
    if (need === 'needed') this.spoil(code, facts, field);
    else this.find(code, 'warning/left_out', facts, field);
  }
}

interface Limits {
  readonly type?: string;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
}

/** Whether a value keeps a rule's limits, whole numbers included. */
export function within(value: number, limits: Limits): boolean {
  if (limits.type === 'integer' && !Number.isInteger(value)) return false;
  if (limits.minimum !== undefined && value < limits.minimum) return false;
  if (limits.exclusiveMinimum !== undefined && value <= limits.exclusiveMinimum) return false;
  return limits.maximum === undefined || value <= limits.maximum;
}

/** Limits in signs that every language reads: `0–100 %`, `> 0, ≤ 60 m`. */
export function limitsText(limits: Limits, unit: string): string {
  const { minimum, exclusiveMinimum, maximum = Infinity } = limits;
  const tail = unit === '' ? '' : ` ${unit}`;
  if (minimum !== undefined && maximum !== Infinity) return `${minimum}–${maximum}${tail}`;
  const parts: string[] = [];
  if (minimum !== undefined) parts.push(`≥ ${minimum}`);
  if (exclusiveMinimum !== undefined) parts.push(`> ${exclusiveMinimum}`);
  if (maximum !== Infinity) parts.push(`≤ ${maximum}`);
  return parts.join(', ') + tail;
}
