import type { Assessment } from '@crownfall/assessment';
import { describeFinding, type ProjectInput } from '@crownfall/survey';
import { writeCsv } from '../csv/write-csv.ts';
import { type OutFeature, writeGeoJson } from '../geojson/write-geojson.ts';
import { areaColumns, stainedColumns } from './figure-columns.ts';
import { blockFeature, LEDGER_COLUMNS, ledgerRecord, pavementFeature, treeFeature } from './result-features.ts';

/** What a run knows beside its results. */
export interface RunFacts {
  /** Files read, as `readProject` gives them. */
  readonly inputs: ProjectInput['sources'];
  /** Names of programs and their versions. */
  readonly versions: Readonly<Record<string, string>>;
  /** Seconds by stage. The one thing in all outputs that differs between runs of the same input. */
  readonly timings: Readonly<Record<string, number>>;
}

/** One file of the results: its name, and its text in pieces. */
export interface ResultFile {
  readonly name: string;
  readonly text: Iterable<string>;
}

/**
 * All files of a run, in a fixed order. The same assessment gives the same bytes on every machine, `timings` in
 * `run.json` excepted.
 */
export function resultFiles(assessment: Assessment, facts: RunFacts): readonly ResultFile[] {
  return [
    { name: 'blocks.geojson', text: writeGeoJson(mapped(assessment.blocks, blockFeature)) },
    { name: 'trees.geojson', text: writeGeoJson(mapped(assessment.trees, treeFeature)) },
    { name: 'pavement.geojson', text: writeGeoJson(mapped(assessment.pavement, pavementFeature)) },
    { name: 'ledger.csv', text: writeCsv(LEDGER_COLUMNS, mapped(assessment.ledger, ledgerRecord)) },
    { name: 'findings.json', text: [jsonText({ findings: assessment.findings.map(findingRecord) })] },
    { name: 'run.json', text: [jsonText(runRecord(assessment, facts))] },
  ];
}

function* mapped<From, To extends OutFeature | object>(from: Iterable<From>, to: (item: From) => To): Generator<To> {
  for (const item of from) yield to(item);
}

function findingRecord(found: Assessment['findings'][number]): object {
  const { code, severity, effect, where, facts } = found;
  const words = describeFinding(found, 'en');
  const said = { what: words.what, where: words.where, what_to_do: words.remedy, totals: words.effect };
  return { code, severity, effect, ...said, place: where, facts };
}

function runRecord({ title, season, units, run, total }: Assessment, { inputs, versions, timings }: RunFacts): object {
  return {
    title,
    season,
    units,
    as_of: run.asOf,
    calibrated: run.calibrated,
    draws: run.draws,
    seed: run.seed,
    plane: run.plane,
    counts: run.counts,
    total: { ...areaColumns(total), ...stainedColumns(total.stainedM2) },
    settings: run.settings,
    inputs: inputs.map(({ file, sha256, bytes }) => ({ file, sha256, bytes })),
    versions,
    timings,
  };
}

function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
