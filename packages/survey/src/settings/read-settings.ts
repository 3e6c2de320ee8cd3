/** Settings as a project writes them, laid over the defaults: every name and value is checked, none is taken on trust. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import { nearestWord } from '../findings/nearest-word.ts';
import { isIsoDay } from '../reading/date-text.ts';
import { limitsText, within } from '../reading/row-reader.ts';
import { PUBLISHED_SCALES } from '../scales/scales-of.ts';
import { DEFAULT_SETTINGS, type Settings } from '../settings.ts';
import { crossChecks } from './cross-checks.ts';
import { settingPlace } from './setting-place.ts';
import { settingsSchema } from './settings-schema.ts';

/** The parts of JSON Schema that the settings use. */
interface Rule {
  readonly type?: string;
  readonly format?: string;
  readonly pattern?: string;
  readonly required?: readonly string[];
  readonly enum?: readonly string[];
  readonly anyOf?: readonly Rule[];
  readonly properties?: Readonly<Record<string, Rule>>;
  readonly patternProperties?: Readonly<Record<string, Rule>>;
  readonly items?: Rule;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly 'x-unit'?: string;
}

export interface SettingsReading {
  readonly settings: Settings;
  readonly findings: readonly Finding[];
}

/**
 * Lays `raw` over the defaults, part by part. An unknown name is left out with the nearest valid one; a value of the wrong
 * type or out of range gives way to the default. Lists and class tables replace the default as a whole.
 * @example readSettings({ dose_coefficient: -1 }).settings.dose_coefficient // 1, with finding setting-out-of-range
 */
export function readSettings(raw: Readonly<Record<string, unknown>>): SettingsReading {
  const findings: Finding[] = [];
  const rule = settingsSchema as unknown as Rule;
  const merged = merge({ raw, fallback: DEFAULT_SETTINGS, rule, path: [] }, findings) as Settings;
  return { settings: crossChecks(merged, findings), findings };
}

interface Step {
  readonly raw: unknown;
  readonly fallback: unknown;
  readonly rule: Rule;
  readonly path: readonly string[];
}

function merge(step: Step, findings: Finding[]): unknown {
  const { raw, fallback, rule, path } = step;
  if (raw === undefined) return fallback;
  if (rule.properties !== undefined && isObject(raw)) return mergeObject(step, raw, findings);
  if (isUsable(raw, rule)) return withoutPublishedNames(raw, path, findings);
  const facts = { got: shown(raw), expected: expectedText(rule), used: shown(fallback) };
  findings.push(finding('setting-out-of-range', 'warning/assumed', settingPlace(path), facts));
  return fallback;
}

function mergeObject(step: Step, raw: Readonly<Record<string, unknown>>, findings: Finding[]): unknown {
  const properties = step.rule.properties ?? {};
  const names = Object.keys(properties);
  for (const name of Object.keys(raw)) {
    if (names.includes(name)) continue;
    const facts = { valid: names.join(', '), nearest: nearestWord(name, names) };
    findings.push(finding('setting-unknown', 'warning/left_out', settingPlace([...step.path, name]), facts));
  }
  const fallback = step.fallback as Readonly<Record<string, unknown>>;
  const merged = names.map((name) => {
    const inner = { raw: raw[name], fallback: fallback[name], rule: properties[name], path: [...step.path, name] };
    return [name, merge(inner, findings)];
  });
  return Object.fromEntries(merged);
}

/** A class table under a published scale's name is left out: that name must mean the published scale. */
function withoutPublishedNames(value: unknown, path: readonly string[], findings: Finding[]): unknown {
  if (path.length !== 1 || path[0] !== 'scales') return value;
  const taken = [...PUBLISHED_SCALES.map((scale) => scale.name), 'percent'];
  const entries = Object.entries(value as object).filter(([name]) => {
    const free = !taken.includes(name.toLowerCase());
    const facts = { got: name, expected: `≠ ${taken.join(', ')}`, used: '–' };
    if (!free) findings.push(finding('setting-out-of-range', 'warning/left_out', settingPlace([...path, name]), facts));
    return free;
  });
  return Object.fromEntries(entries);
}

function isUsable(value: unknown, rule: Rule): boolean {
  if (rule.anyOf !== undefined) return rule.anyOf.some((inner) => isUsable(value, inner));
  if (rule.type === 'null') return value === null;
  if (rule.enum !== undefined) return typeof value === 'string' && rule.enum.includes(value);
  if (rule.type === 'boolean') return typeof value === 'boolean';
  if (rule.type === 'string') return typeof value === 'string' && isUsableText(value, rule);
  if (rule.type === 'number' || rule.type === 'integer') {
    return typeof value === 'number' && Number.isFinite(value) && within(value, rule);
  }
  if (rule.type === 'array') return isUsableList(value, rule);
  if (!isObject(value)) return false;
  if (rule.patternProperties !== undefined) {
    const [inner] = Object.values(rule.patternProperties);
    return Object.values(value).every((entry) => isUsable(entry, inner));
  }
  const properties = Object.entries(rule.properties ?? {});
  return properties.every(([name, inner]) => {
    const absent = value[name] === undefined && rule.required?.includes(name) !== true;
    return absent || isUsable(value[name], inner);
  });
}

function isUsableText(value: string, { format, pattern }: Rule): boolean {
  if (format === 'date' && !isIsoDay(value)) return false;
  return pattern === undefined || new RegExp(pattern).test(value);
}

function isUsableList(value: unknown, rule: Rule): boolean {
  if (!Array.isArray(value) || rule.items === undefined) return false;
  const { items, minItems = 0, maxItems = Infinity } = rule;
  return value.length >= minItems && value.length <= maxItems && value.every((entry) => isUsable(entry, items));
}

function expectedText(rule: Rule): string {
  if (rule.enum !== undefined) return rule.enum.join(', ');
  if (rule.anyOf !== undefined) return rule.anyOf.map(expectedText).join(', ');
  if (rule.type === 'null') return 'null';
  if (rule.format === 'date') return 'YYYY-MM-DD';
  if (rule.pattern !== undefined) return rule.pattern;
  if (rule.type === 'number' || rule.type === 'integer') return limitsText(rule, rule['x-unit'] ?? '').trim();
  if (rule.type === 'boolean') return 'true, false';
  if (rule.items !== undefined) return `[${expectedText(rule.items)}, …]`;
  const [pattern] = Object.values(rule.patternProperties ?? {});
  if (pattern !== undefined) return `{ "…": ${expectedText(pattern)} }`;
  if (rule.properties === undefined) return '"…"';
  const parts = Object.entries(rule.properties).map(([name, inner]) => `"${name}": ${expectedText(inner)}`);
  return `{ ${parts.join(', ')} }`;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function shown(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
