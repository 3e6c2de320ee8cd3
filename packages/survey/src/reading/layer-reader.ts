/**
 * Reads a layer row by row and collects its findings. What would repeat on every row (a width that is never given, a
 * decimal comma in a whole column) is counted and told once, with the first place it was seen.
 */
import type { Finding, Place } from '@crownfall/geometry';
import type { Fact, FactsOf, FindingCode, Grade } from '../findings/finding-codes.ts';
import { finding } from '../findings/finding-codes.ts';
import type { LayerName, RawFeature, RawLayer } from '../project-input.ts';
import type { DateColumn } from './date-text.ts';
import { surveyDates } from './date-text.ts';
import type { RowLayer } from './row-reader.ts';
import { RowReader } from './row-reader.ts';

/** What reading a layer gives: its usable records, and what a person should know. */
export interface LayerReading<Record> {
  readonly records: readonly Record[];
  readonly findings: readonly Finding[];
}

/** The field that names a feature, by layer. */
const ID_FIELDS: Partial<Record<LayerName, string>> = {
  crowns: 'tree_id',
  pavement: 'pavement_id',
  blocks: 'block_id',
  quadrats: 'quadrat_id',
  complaints: 'complaint_id',
  sites: 'site_id',
};

interface Tally {
  readonly code: FindingCode;
  readonly grade: Grade;
  readonly where: Place;
  readonly facts: Readonly<Record<string, Fact | undefined>>;
  count: number;
}

class LayerReader<Layer extends LayerName> implements RowLayer {
  readonly name: Layer;
  readonly raw: RawLayer;
  readonly findings: Finding[] = [];
  readonly #whole: RawLayer;
  readonly #tallies = new Map<string, Tally>();
  readonly #dates = new Map<string, DateColumn>();

  constructor(name: Layer, raw: RawLayer, whole: RawLayer) {
    this.name = name;
    this.raw = raw;
    this.#whole = whole;
  }

  /**
   * Runs `read` over every row and gathers the records it returns; spoiled rows and `undefined` are left out. Tallied
   * findings follow those of single rows, in the order in which each first arose.
   */
  records<R>(read: (row: RowReader<Layer>) => R | undefined): LayerReading<R> {
    const records: R[] = [];
    for (const feature of this.raw.features) {
      const row = new RowReader<Layer>(this, feature);
      const record = read(row);
      if (record !== undefined && !row.spoiled) records.push(record);
    }
    return { records, findings: this.#allFindings(records.length) };
  }

  place(feature: RawFeature, field?: string): Place {
    const where = { layer: this.name, file: this.raw.file, ...(field === undefined ? {} : { field }) };
    if (this.raw.shape === 'table') return { ...where, row: feature.row };
    const idField = ID_FIELDS[this.name];
    const id = idField === undefined ? undefined : feature.properties[idField];
    const named = (typeof id === 'string' && id.trim() !== '') || typeof id === 'number';
    return { ...where, feature: named ? String(id).trim() : `#${feature.row}` };
  }

  /** Counts a finding under its code and key; told once, with `count`, at the first place. */
  tally<Code extends FindingCode>(
    code: Code,
    grade: Grade,
    where: () => Place,
    facts: Omit<FactsOf<Code>, 'count'>,
    key = '',
  ): void {
    const whole = `${code} ${key}`;
    const known = this.#tallies.get(whole);
    if (known === undefined) this.#tallies.set(whole, { code, grade, where: where(), facts, count: 1 });
    else known.count++;
  }

  /** What the whole column of a field shows about its dates; looked through once. */
  dateColumn(field: string): DateColumn {
    let column = this.#dates.get(field);
    if (column === undefined) {
      column = surveyDates(this.#whole.features.map((feature) => feature.properties[field]));
      this.#dates.set(field, column);
    }
    return column;
  }

  #allFindings(usable: number): Finding[] {
    const told = [...this.#tallies.values()].map(({ code, grade, where, facts, count }) =>
      finding(code, grade, where, { ...facts, count } as unknown as FactsOf<FindingCode>),
    );
    const empty = usable === 0 ? [this.#emptiness()] : [];
    return [...this.findings, ...told, ...empty];
  }

  #emptiness(): Finding {
    const needed = this.name === 'crowns' || this.name === 'pavement';
    const where = { layer: this.name, file: this.raw.file };
    const grade = needed ? 'error/stops' : 'warning/kept';
    return finding('layer-empty', grade, where, { rows: this.raw.features.length });
  }
}

/**
 * Reads a layer that may be absent; an absent one has no records and, here, no findings. `whole`: the layer whose columns show how
 * dates are written, when only some of its rows are read.
 */
export function readLayer<Layer extends LayerName, R>(
  name: Layer,
  raw: RawLayer | undefined,
  read: (row: RowReader<Layer>) => R | undefined,
  whole = raw,
): LayerReading<R> {
  if (raw === undefined || whole === undefined) return { records: [], findings: [] };
  return new LayerReader(name, raw, whole).records(read);
}
