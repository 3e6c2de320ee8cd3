/** Guesses an inventory's mapping, or takes the inventory in by a mapping that a person looked through. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type FieldGuess, type InventoryMapping, readInventoryMapping } from '@crownfall/exchange';
import {
  type AdoptReport,
  adoptInventory,
  guessInventory,
  type InventoryGuess,
  mappingName,
  writeFiles,
} from '@crownfall/exchange/node';
import { findingsReport } from '../reports/findings-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import { layOut } from '../terminal/table.ts';
import type { CommonOptions } from './job-options.ts';

export interface AdoptOptions extends CommonOptions {
  readonly to: string;
  readonly mapping?: string;
  readonly crs?: string;
  readonly season?: number;
  readonly units: 'metric' | 'us';
}

export async function adopt(file: string, options: AdoptOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${file}`, 0.3);
  if (options.mapping === undefined) {
    const guess = await guessInventory(file, options.crs).finally(progress.end);
    return proposed(file, guess, options);
  }
  const mapping = await confirmed(options.mapping, options.crs);
  const season = options.season ?? new Date().getFullYear();
  const report = await adoptInventory(file, options.to, mapping, { season, units: options.units }).finally(
    progress.end,
  );
  process.stdout.write(
    options.json ? `${JSON.stringify(report, null, 2)}\n` : `${reportInWords(file, report, options)}\n`,
  );
  return report.files.length > 0 ? EXIT.done : EXIT.dataStops;
}

async function confirmed(path: string, crs: string | undefined): Promise<InventoryMapping> {
  const text = await readFile(path, 'utf8').catch((error) => {
    throw new RangeError(`expected a mapping that can be read: ${error instanceof Error ? error.message : error}`);
  });
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new RangeError(`expected a mapping in JSON, got ${path}: ${error instanceof Error ? error.message : error}`);
  }
  return { ...readInventoryMapping(value), ...(crs === undefined ? {} : { crs }) };
}

async function proposed(file: string, guess: InventoryGuess, options: AdoptOptions): Promise<number> {
  const name = mappingName(file);
  const usable = guess.rows > 0;
  if (usable) await writeFiles(options.to, [{ name, text: [`${JSON.stringify(guess.mapping, null, 2)}\n`] }]);
  const path = join(options.to, name);
  const shown = options.json
    ? JSON.stringify({ ...guess, written: usable ? path : null }, null, 2)
    : guessInWords(file, guess, usable ? path : null);
  process.stdout.write(`${shown}\n`);
  return usable ? EXIT.done : EXIT.dataStops;
}

const GUESS_COLUMNS = [
  { title: 'our field', align: 'left' },
  { title: 'their column', align: 'left' },
  { title: 'unit', align: 'left' },
  { title: 'sure', align: 'left' },
  { title: 'why; cells as they stand', align: 'left' },
] as const;
const WIDTH = 110;
const SHOWN = 12;

function guessInWords(file: string, guess: InventoryGuess, path: string | null): string {
  const told = guess.findings.length > 0 ? [findingsReport(file, guess.findings, { all: false }), ''] : [];
  if (path === null) return [...told, 'Nothing to guess by; nothing was written.'].join('\n');
  return [
    ...told,
    `${file}: ${guess.rows} rows. Nothing is taken in yet. This is a guess; please look it through:`,
    '',
    ...layOut(GUESS_COLUMNS, guess.guesses.map(guessRow), WIDTH),
    '',
    ...placeInWords(guess),
    ...missingInWords(guess.guesses),
    ...listed(
      'Names that would be read as other ones',
      guess.mends.map(({ from, to, rows }) => `${from} → ${to} (${rows})`),
    ),
    ...listed(
      'Names that name no species',
      guess.unknownNames.map(({ name, rows }) => `${name} (${rows})`),
    ),
    `The guess is in ${path}. Correct it there, then:`,
    `  crownfall adopt ${file} --to ${path.slice(0, path.lastIndexOf(mappingName(file)) - 1)} --mapping ${path}`,
  ].join('\n');
}

function guessRow({ field, column, unit, confidence, reasons, examples }: FieldGuess): string[] {
  const why = `${reasons.join('; ')}: ${examples.join(' · ')}`;
  return [field, [column].flat().join(' + '), unit ?? '', confidence, why];
}

function placeInWords({ example, crsGuessed, mapping }: InventoryGuess): string[] {
  if (example === null) return ['No row has a position. Without positions no row can be taken.', ''];
  const at = `${example.lat.toFixed(4)}, ${example.lon.toFixed(4)} (latitude, longitude)`;
  const guessed = crsGuessed
    ? ` That is a guess (${mapping.crs}): look it up on a map; if it is wrong, give --crs.`
    : '';
  return [`The first row lies at ${at}.${guessed}`, ''];
}

function missingInWords(guesses: readonly FieldGuess[]): string[] {
  const has = (field: string): boolean => guesses.some((guess) => guess.field === field);
  if (has('spread_m') || has('spread_a_m')) return [];
  if (has('trunk_cm'))
    return ['No column holds crown spreads: they will be estimated from the trunks, and marked.', ''];
  return ['No column holds crown spreads or trunk diameters: no crown can be drawn from this inventory alone.', ''];
}

function listed(title: string, items: readonly string[]): string[] {
  if (items.length === 0) return [];
  const more = items.length - SHOWN;
  return [
    `${title}:`,
    ...items.slice(0, SHOWN).map((item) => `  ${item}`),
    ...(more > 0 ? [`  … and ${more} more`] : []),
    '',
  ];
}

function reportInWords(file: string, report: AdoptReport, { to }: AdoptOptions): string {
  const { summary, findings, files, fits, pairs } = report;
  const { rows, taken, mended, refused, spreads, sharedPositions } = summary;
  const told = findings.length > 0 ? [findingsReport(file, findings, { all: true }), ''] : [];
  if (files.length === 0) return [...told, 'Nothing was written.'].join('\n');
  return [
    ...told,
    `${rows} rows: ${taken} taken as they stand, ${mended} taken and mended, ${refused} refused.`,
    `Spreads: ${spreads.measured} measured, ${spreads.estimated} estimated, ${spreads.outlined} drawn as outlines.`,
    ...(spreads.estimated > 0 && fits.length === 0
      ? [`Only ${pairs} rows have both trunk and spread measured, too few for a fit of this project's own.`]
      : []),
    ...(sharedPositions > 0
      ? [`${sharedPositions} crowns stand on one point with another: their positions are probably those of addresses.`]
      : []),
    `Written to ${to}: ${files.join(', ')}`,
  ].join('\n');
}
