/** A first guess at what an inventory's columns are, with its reasons, for a person to confirm. Nothing is taken in by it. */
import { isMissing } from '@crownfall/survey';
import {
  DEFAULT_SPREAD_RULES,
  INVENTORY_FIELDS,
  type InventoryField,
  type InventoryMapping,
} from './inventory-mapping.ts';
import { readMeasure } from './measure-text.ts';
import { type SpeciesName, speciesReader } from './species-name.ts';

type Row = Readonly<Record<string, unknown>>;

/** What one of our fields is taken to be. */
export interface FieldGuess {
  readonly field: InventoryField;
  readonly column: string | readonly string[];
  readonly unit?: string;
  readonly confidence: 'high' | 'medium' | 'low';
  readonly reasons: readonly string[];
  /** A few cells as they stand. */
  readonly examples: readonly string[];
}

/** A name that would be mended: the person sees every one. */
export interface SpeciesMend {
  readonly from: string;
  readonly to: string;
  readonly rows: number;
}

export interface MappingGuess {
  readonly mapping: InventoryMapping;
  readonly guesses: readonly FieldGuess[];
  readonly mends: readonly SpeciesMend[];
  /** Names that are read as they stand although nothing near them is known, most frequent first. */
  readonly unknownNames: readonly { readonly name: string; readonly rows: number }[];
}

interface Column {
  readonly name: string;
  /** Its name in small words: `CRN_SPRD_FT` → `crn sprd ft`. */
  readonly words: string;
  /** Filled cells of the sample. */
  readonly cells: readonly unknown[];
  readonly filled: number;
}

/** Rows looked at to tell units and kinds; all rows are looked at for names. */
const SAMPLE_ROWS = 5000;

const NAMES: Readonly<Record<Exclude<InventoryField, 'tree_id' | 'host'>, RegExp>> = {
  cultivar: /\b(?:cultivar|variety|cv|sorte)\b/,
  height_m: /\b(?:height|tree ht|ht|hgt|hoehe|höhe|altura|hauteur)\b/,
  spread_a_m: /\b(?:spread|crown|canopy|sprd|crn)\b.*\b(?:1|a|ns|n s|max|north south)\b/,
  spread_b_m: /\b(?:spread|crown|canopy|sprd|crn)\b.*\b(?:2|b|ew|e w|min|east west)\b/,
  spread_m:
    /\b(?:spread|sprd)\b|\b(?:crown|canopy|crn|kronen?|copa)\b.*\b(?:dia|diam|diameter|width|wid|radius|durchmesser|diametro)\b|\b(?:dia|diam|diameter|width|radius)\b.*\b(?:crown|canopy|copa)\b|kronendurchmesser/,
  trunk_cm:
    /\b(?:dbh|dap|bhd|girth|circumference|gbh|caliper|calliper|stem|stammumfang|stammdurchmesser|trunk)\b|^(?:diameter|diam|dia)(?: (?:cm|mm|in|inch|inches))?$/,
};
const NOT_TRUNK = /\b(?:crown|canopy|spread|condition|damage|count|stems|number|grate)\b/;
const NOT_HEIGHT = /\b(?:clearance|base|lowest|limb)\b/;
const HOST_NAME = /\b(?:botanic\w*|scientific\w*|sci|latin\w*|species|taxon\w*|especie|baumart|art botan\w*|host)\b/;
const COMMON_NAME = /\b(?:common|english|vernacular|code|id)\b/;
const ID_NAMES = [
  /^tree id$|^tree (?:number|no|nr)$|^baum (?:id|nr)$/,
  /\btree\b.*\bid\b|\basset\b|\bstruct id\b|\bstructid\b/,
  /\bglobal ?id\b|\bunique ?id\b|\bfacility ?id\b/,
  /^id$|\bid\b|\bobjectid\b|^fid$|^gid$/,
];

/**
 * Guesses which column is which, and units, from names and values. Columns named like our own fields are taken first.
 * Rows without anything to tell by give an empty mapping.
 */
export function guessMapping(rows: readonly Row[]): MappingGuess {
  const columns = columnsOf(rows);
  const guesses: FieldGuess[] = [];
  const taken = new Set<string>();
  const take = (guess: FieldGuess | null): void => {
    if (!guess) return;
    guesses.push(guess);
    for (const name of [guess.column].flat()) taken.add(name);
  };
  const free = (): Column[] => columns.filter(({ name }) => !taken.has(name));
  take(hostGuess(free()));
  take(idGuess(free()));
  for (const field of ['spread_a_m', 'spread_b_m', 'spread_m', 'trunk_cm', 'height_m'] as const) {
    take(measureGuess(field, free()));
  }
  take(cultivarGuess(free()));
  const pair = ['spread_a_m', 'spread_b_m'].filter((field) => guesses.some((guess) => guess.field === field));
  const kept = pair.length === 1 ? guesses.filter(({ field }) => field !== pair[0]) : guesses;
  const mapping = mappingOf(kept);
  return { mapping, guesses: inOrder(kept), ...namesOf(rows, mapping) };
}

function inOrder(guesses: readonly FieldGuess[]): FieldGuess[] {
  return [...guesses].sort((a, b) => INVENTORY_FIELDS.indexOf(a.field) - INVENTORY_FIELDS.indexOf(b.field));
}

function columnsOf(rows: readonly Row[]): Column[] {
  const sample = rows.slice(0, SAMPLE_ROWS);
  const names = new Set(sample.flatMap((row) => Object.keys(row)));
  return [...names].map((name) => {
    const cells = sample.map((row) => row[name]).filter((cell) => !isMissing(cell));
    return { name, words: wordsOf(name), cells, filled: sample.length === 0 ? 0 : cells.length / sample.length };
  });
}

function wordsOf(name: string): string {
  return name
    .replace(/([a-zà-ÿ])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[^a-zà-ÿ0-9]+/g, ' ')
    .trim();
}

/** The column with the most cells that read as scientific names; its own name decides between equals. */
function hostGuess(columns: readonly Column[]): FieldGuess | null {
  const pair = genusAndEpithet(columns);
  if (pair) return pair;
  const scored = columns
    .filter(({ cells }) => cells.length > 0)
    .map((column) => ({
      column,
      share: shareOf(column.cells, isScientific),
      named: HOST_NAME.test(column.words) && !COMMON_NAME.test(column.words),
    }))
    .filter(({ share, named }) => share > 0.6 || (named && share > 0.2))
    .sort((a, b) => Number(b.named) - Number(a.named) || b.share - a.share);
  const [best] = scored;
  if (!best) return null;
  const reasons = [`${percent(best.share)} of its cells read as scientific names`];
  if (best.named) reasons.unshift(`it is named ${best.column.name}`);
  const confidence = best.named && best.share > 0.6 ? 'high' : best.share > 0.8 ? 'medium' : 'low';
  return { field: 'host', column: best.column.name, confidence, reasons, examples: examplesOf(best.column) };
}

function genusAndEpithet(columns: readonly Column[]): FieldGuess | null {
  const genus = columns.find(({ words }) => /^(?:genus|gattung|genero)$/.test(words));
  const epithet = columns.find(({ words }) => /^(?:species|epithet|art|especie)$/.test(words));
  if (!genus || !epithet || shareOf(epithet.cells, (cell) => /^[a-zà-ÿ.-]+$/.test(String(cell).trim())) < 0.6)
    return null;
  const reasons = [`${genus.name} and ${epithet.name} hold the two words of a name`];
  const examples = genus.cells.slice(0, 3).map(String);
  return { field: 'host', column: [genus.name, epithet.name], confidence: 'high', reasons, examples };
}

function isScientific(cell: unknown): boolean {
  return typeof cell === 'string' && /^[A-Z][a-zà-ÿ-]{2,}(?: x)? (?:[a-zà-ÿ-]{3,}|x|sp+\.?)\b/.test(cell.trim());
}

/** A column that is filled and hardly repeats itself; a name that says tree forgives more repeats than a mere `id`. */
function idGuess(columns: readonly Column[]): FieldGuess | null {
  for (const [rank, pattern] of ID_NAMES.entries()) {
    const least = rank < 2 ? 0.9 : 0.98;
    const column = columns.find(({ words, filled, cells }) => {
      return pattern.test(words) && filled >= least && distinctShare(cells) >= least;
    });
    if (!column) continue;
    const repeated = column.cells.length - new Set(column.cells.map(String)).size;
    const reasons = [
      `it is named ${column.name}`,
      repeated === 0 ? `its ${column.cells.length} cells are all different` : `${repeated} of its cells repeat another`,
    ];
    const confidence = rank < 2 ? 'high' : 'medium';
    return { field: 'tree_id', column: column.name, confidence, reasons, examples: examplesOf(column) };
  }
  return null;
}

function distinctShare(cells: readonly unknown[]): number {
  return cells.length === 0 ? 0 : new Set(cells.map(String)).size / cells.length;
}

function cultivarGuess(columns: readonly Column[]): FieldGuess | null {
  const column = columns.find(({ words, cells }) => NAMES.cultivar.test(words) && cells.length > 0);
  if (!column) return null;
  const reasons = [`it is named ${column.name}`];
  return { field: 'cultivar', column: column.name, confidence: 'medium', reasons, examples: examplesOf(column) };
}

function measureGuess(
  field: Exclude<InventoryField, 'tree_id' | 'host' | 'cultivar'>,
  columns: readonly Column[],
): FieldGuess | null {
  const named = columns.filter(({ words, name }) => name === field || NAMES[field].test(words));
  const fitting = named.filter(
    ({ words }) =>
      !(field === 'trunk_cm' && NOT_TRUNK.test(words)) && !(field === 'height_m' && NOT_HEIGHT.test(words)),
  );
  const measured = fitting
    .map((column) => ({ column, values: valuesOf(column.cells) }))
    .filter(({ column, values }) => values.length > 0 && values.length >= 0.5 * column.cells.length)
    .sort((a, b) => b.values.length - a.values.length);
  const [best] = measured;
  if (!best) return null;
  const { column, values } = best;
  const told = unitByName(field, column) ?? unitByCells(column.cells);
  const guessed = told ?? unitByValues(field, values);
  const reasons = [`it is named ${column.name}`, ...guessed.reasons];
  const confidence = told ? 'high' : guessed.confidence;
  return { field, column: column.name, unit: guessed.unit, confidence, reasons, examples: examplesOf(column) };
}

interface UnitGuess {
  readonly unit: string;
  readonly confidence: 'high' | 'medium' | 'low';
  readonly reasons: readonly string[];
}

const UNIT_WORDS: readonly (readonly [RegExp, string])[] = [
  [/\bmm\b|\bmillimet\w+/, 'mm'],
  [/\bcm\b|\bcentimet\w+/, 'cm'],
  [/\bin\b|\binch(?:es)?\b/, 'in'],
  [/\bft\b|\bfeet\b|\bfoot\b/, 'ft'],
  [/\bm\b|\bmet(?:re|er)s?\b/, 'm'],
];

function unitByName(field: string, { words, name }: Column): UnitGuess | null {
  const bare =
    name === field ? name.slice(name.lastIndexOf('_') + 1) : UNIT_WORDS.find(([word]) => word.test(words))?.[1];
  const around = field === 'trunk_cm' && /\b(?:girth|circumference|gbh|stammumfang|umfang)\b/.test(words);
  const half = field.startsWith('spread') && /\bradius\b/.test(words);
  if (bare === undefined && !around && !half) return null;
  const unit = `${bare ?? (around ? 'cm' : 'm')}${around ? '-girth' : half ? '-radius' : ''}`;
  return { unit, confidence: 'high', reasons: [`its name says ${unit}`] };
}

function unitByCells(cells: readonly unknown[]): UnitGuess | null {
  const tally = new Map<string, number>();
  for (const cell of cells) {
    const read = readMeasure(cell);
    const per = typeof read === 'object' ? read.centimetresPerUnit : undefined;
    const unit =
      per === 2.54 ? 'in' : per === 30.48 ? 'ft' : per === 1 ? 'cm' : per === 0.1 ? 'mm' : per === 100 ? 'm' : null;
    if (unit) tally.set(unit, (tally.get(unit) ?? 0) + 1);
  }
  const [most] = [...tally].sort((a, b) => b[1] - a[1]);
  if (!most || most[1] < 0.3 * cells.length) return null;
  return { unit: most[0], confidence: 'high', reasons: [`${most[1]} of its cells say ${most[0]}`] };
}

/**
 * Units by the size of the numbers. Limits are what trees along streets measure (common practice, no source): trunks mostly
 * 10–80 cm, hardly ever above 150 cm; heights and spreads mostly 3–20 m.
 */
function unitByValues(field: string, values: readonly number[]): UnitGuess {
  const sorted = [...values].sort((a, b) => a - b);
  const [middle, high] = [0.5, 0.98].map((share) => sorted[Math.floor(share * (sorted.length - 1))]);
  const reason = `half of its values are below ${round(middle)}, 98 % below ${round(high)}`;
  const say = (unit: string, confidence: 'medium' | 'low'): UnitGuess => ({
    unit,
    confidence,
    reasons: [`${reason}, as trees measured in ${unit}`],
  });
  if (field === 'trunk_cm') {
    if (middle > 110) return say('mm', 'medium');
    if (high < 3) return say('m', 'medium');
    if (high > 65) return say('cm', 'medium');
    return high > 45 || middle > 20 ? say('cm', 'low') : say('in', 'low');
  }
  const [limit, far] = field === 'height_m' ? [16, 45] : [13, 32];
  if (middle > limit || high > far) return say('ft', high > far ? 'medium' : 'low');
  return say('m', high < far / 2 ? 'medium' : 'low');
}

function valuesOf(cells: readonly unknown[]): number[] {
  return cells
    .flatMap((cell) => {
      const read = readMeasure(cell);
      return typeof read === 'object' ? [read.value] : read === 'zero' ? [0] : [];
    })
    .filter((value) => value > 0);
}

function mappingOf(guesses: readonly FieldGuess[]): InventoryMapping {
  const units = guesses.flatMap(({ field, unit }) => (unit === undefined ? [] : [[field, unit]]));
  return {
    fields: Object.fromEntries(inOrder(guesses).map(({ field, column }) => [field, column])),
    units: Object.fromEntries(units),
    species: {},
    spread: DEFAULT_SPREAD_RULES,
  };
}

/** The cell, or the cells put together, that a field is in. */
export function cellOf(row: Row, column: string | readonly string[] | undefined): unknown {
  if (column === undefined) return undefined;
  if (typeof column === 'string') return row[column];
  const parts = column.map((name) => row[name]).filter((part) => !isMissing(part));
  return parts.length === 0 ? undefined : parts.join(' ');
}

function namesOf(rows: readonly Row[], mapping: InventoryMapping): Pick<MappingGuess, 'mends' | 'unknownNames'> {
  const column = mapping.fields.host;
  if (column === undefined) return { mends: [], unknownNames: [] };
  const counts = new Map<string, number>();
  for (const row of rows) {
    const cell = cellOf(row, column);
    if (!isMissing(cell)) counts.set(String(cell), (counts.get(String(cell)) ?? 0) + 1);
  }
  const reader = speciesReader(allNames(rows, column), mapping.species);
  const read = [...counts].map(([from, count]) => ({ from, count, name: reader.read(from) }));
  const byCount = read.sort((a, b) => b.count - a.count || (a.from < b.from ? -1 : 1));
  const mended = byCount.filter(({ name }) => name.mend === 'spelling');
  const without = byCount.filter(({ name }) => name.host === null);
  return {
    mends: mended.map(({ from, name, count }) => ({ from, to: hostText(name), rows: count })),
    unknownNames: without.map(({ from, count }) => ({ name: from, rows: count })),
  };
}

export function* allNames(rows: readonly Row[], column: string | readonly string[] | undefined): Generator<unknown> {
  for (const row of rows) yield cellOf(row, column);
}

function hostText({ host, cultivar }: SpeciesName): string {
  return cultivar === undefined ? String(host) : `${host} '${cultivar}'`;
}

function shareOf(cells: readonly unknown[], holds: (cell: unknown) => boolean): number {
  return cells.length === 0 ? 0 : cells.filter(holds).length / cells.length;
}

function examplesOf({ cells }: Column): string[] {
  return [...new Set(cells.slice(0, 50).map(String))].slice(0, 4);
}

function percent(share: number): string {
  return `${Math.floor(100 * share)} %`;
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
