/** Scientific names as inventories spell them, brought to one spelling: `Genus epithet`, `Genus x epithet`, the cultivar apart. */
import { editDistance, isMissing } from '@crownfall/survey';
import { knownEpithets } from './known-species.ts';

export interface SpeciesName {
  /** Null when the cell names no species that can be used. */
  readonly host: string | null;
  readonly cultivar?: string;
  /** What was done beyond passing over blanks; absent when the name was right as it stood. */
  readonly mend?: 'spelling' | 'form';
  /** Why there is no host, or no tree at all. */
  readonly without?: 'unknown' | 'several' | 'no tree' | 'no name';
}

const NO_TREE = /\b(?:vacant|stump|planting (?:site|space)|empty|removed|no tree|dead tree removed)\b/i;
const UNKNOWN = /^(?:unknown|unidentified|undetermined|tbd|other|n\/?a|not known|unsure|\?+)\b/i;
const SEVERAL = /\s(?:&|\+|and|und|y)\s|[A-Za-z]\/[A-Za-z]/;
const RANKS = /^(?:subsp|ssp|var|subvar|f|forma|fo)\.?$/i;
const GENUS_ONLY = /^(?:sp|spp|species)\.?$/i;

/** Reads names of one inventory. */
export interface SpeciesReader {
  read(raw: unknown): SpeciesName;
}

/**
 * A reader that knows common street trees and the names that come often in the inventory itself; `chosen` are the names a
 * person decided on. Each name is worked out once. A name near to exactly one known name (one letter in short words, two in
 * long ones) is taken for it; all others are left as they are.
 * @example speciesReader([], {}).read('Allianthus  altissima') // { host: 'Ailanthus altissima', mend: 'spelling' }
 */
export function speciesReader(all: Iterable<unknown>, chosen: Readonly<Record<string, string>>): SpeciesReader {
  const known = knownEpithets();
  learn(known, all);
  const cache = new Map<string, SpeciesName>();
  return {
    read(raw) {
      if (isMissing(raw)) return { host: null, without: 'no name' };
      const text = String(raw);
      const found = cache.get(text) ?? nameIn(text, known, chosen);
      cache.set(text, found);
      return found;
    },
  };
}

function nameIn(text: string, known: Map<string, Set<string>>, chosen: Readonly<Record<string, string>>): SpeciesName {
  const bare = text.trim().replace(/\s+/g, ' ');
  for (const name of [text, bare]) {
    if (!Object.hasOwn(chosen, name)) continue;
    const host = chosen[name].trim();
    return host === '' ? { host: null, without: 'unknown' } : { host, ...(host === bare ? {} : { mend: 'spelling' }) };
  }
  if (NO_TREE.test(bare)) return { host: null, without: 'no tree' };
  if (UNKNOWN.test(bare)) return { host: null, without: 'unknown' };
  if (SEVERAL.test(bare.replace(/\([^)]*\)/g, ''))) return { host: null, without: 'several' };
  const { words, cultivar } = partsOf(bare);
  if (words.length === 0 || !/^[A-Za-zÀ-ÿ-]{3,}$/.test(words[0])) return { host: null, without: 'unknown' };
  const formed = formedName(words);
  const host = spelled(formed, known);
  const whole = cultivar === undefined ? host : `${host} '${cultivar}'`;
  const mend = host !== formed ? 'spelling' : whole !== bare ? 'form' : undefined;
  return { host, ...(cultivar === undefined ? {} : { cultivar }), ...(mend ? { mend } : {}) };
}

/** The words of the name itself; the cultivar stands in quotes, a note or a cross's parents in parentheses. */
function partsOf(text: string): { words: string[]; cultivar?: string } {
  const quoted = /['‘’"“”`]([^'‘’"“”`]{2,})['‘’"“”`]/.exec(text);
  const bare = text.replace(quoted?.[0] ?? '\u0000', ' ').replace(/\([^)]*\)?/g, ' ');
  const words = bare
    .replaceAll('×', ' x ')
    .replace(/\b(?:PVR|PBR|cv\.?)\b|[®™,]/g, ' ')
    .trim()
    .split(/\s+/);
  const cultivar = quoted?.[1].trim();
  return { words: words.filter((word) => word !== ''), ...(cultivar ? { cultivar } : {}) };
}

function formedName([genus, ...rest]: readonly string[]): string {
  const out = [genus[0].toUpperCase() + genus.slice(1).toLowerCase()];
  for (let i = 0; i < rest.length && out.length < 6; i++) {
    const word = rest[i];
    if (GENUS_ONLY.test(word)) break;
    if (/^x$/i.test(word)) out.push('x');
    else if (RANKS.test(word) && rest[i + 1] !== undefined) out.push(rankOf(word), rest[++i].toLowerCase());
    // A second capital is an author or a cultivar without its quotes; it is no part of the species.
    else if (out.length >= 2 && out.at(-1) !== 'x') break;
    else out.push(word.toLowerCase());
  }
  return out.join(' ');
}

function rankOf(word: string): string {
  const bare = word.toLowerCase().replace('.', '');
  return bare === 'ssp' ? 'subsp.' : bare === 'forma' || bare === 'fo' ? 'f.' : `${bare}.`;
}

function spelled(name: string, known: Map<string, Set<string>>): string {
  const words = name.split(' ');
  const genus = known.has(words[0]) ? words[0] : (nearest(words[0], known.keys()) ?? genusByEpithet(words, known));
  if (genus === undefined) return name;
  const at = words[1] === 'x' ? 2 : 1;
  const epithets = known.get(genus);
  const epithet = words[at];
  if (epithet !== undefined && epithets && !epithets.has(epithet)) words[at] = nearest(epithet, epithets) ?? epithet;
  return [genus, ...words.slice(1)].join(' ');
}

/** A genus further off than its letters allow is still meant when its epithet is right: `Allianthus altissima`. */
function genusByEpithet([genus, epithet]: readonly string[], known: Map<string, Set<string>>): string | undefined {
  const having = [...known].filter(([, epithets]) => epithets.has(epithet)).map(([name]) => name);
  const near = having.filter((name) => editDistance(name.toLowerCase(), genus.toLowerCase()) <= 3);
  return near.length === 1 ? near[0] : undefined;
}

/** The one known word within reach; two at the same distance leave it undecided. */
function nearest(word: string, known: Iterable<string>): string | undefined {
  const reach = word.length >= 8 ? 2 : word.length >= 5 ? 1 : 0;
  let best: string | undefined;
  let least = reach + 1;
  let tie = false;
  for (const other of known) {
    if (Math.abs(other.length - word.length) > reach) continue;
    const distance = editDistance(other.toLowerCase(), word.toLowerCase());
    if (distance === least) tie = true;
    if (distance >= least) continue;
    least = distance;
    best = other;
    tie = false;
  }
  return tie ? undefined : best;
}

/** Rows with the same name that make it the inventory's own usage rather than a slip. */
const OWN_USAGE = 10;

function learn(known: Map<string, Set<string>>, all: Iterable<unknown>): void {
  const counts = new Map<string, number>();
  for (const raw of all) {
    if (
      typeof raw !== 'string' ||
      isMissing(raw) ||
      SEVERAL.test(raw) ||
      NO_TREE.test(raw) ||
      UNKNOWN.test(raw.trim())
    ) {
      continue;
    }
    const { words } = partsOf(raw.trim());
    if (words.length < 1) continue;
    const name = formedName(words)
      .split(' ')
      .filter((word) => word !== 'x')
      .slice(0, 2)
      .join(' ');
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  for (const [name, count] of counts) {
    const [genus, epithet] = name.split(' ');
    if (count < OWN_USAGE || /^(?:.{0,2}|.*\d.*)$/.test(genus)) continue;
    // A frequent slip is still a slip when it lies next to a known name.
    if (!known.has(genus) && nearest(genus, known.keys()) !== undefined) continue;
    const epithets = known.get(genus) ?? new Set<string>();
    known.set(genus, epithets);
    if (epithet !== undefined && nearest(epithet, epithets) === undefined) epithets.add(epithet);
  }
}
