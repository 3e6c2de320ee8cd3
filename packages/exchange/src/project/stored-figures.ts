/**
 * Figures that commands fit and keep beside `project.json`: `calibration.json` (the dose coefficient) and `raters.json` (how
 * raters read). They are laid under the project's own settings: what a person wrote in project.json always counts more.
 */
import type { ProjectCalibration } from '@crownfall/assessment';
import type { Finding } from '@crownfall/geometry';
import { finding, type ProjectInput, type RaterSettings, readSettings, type Settings } from '@crownfall/survey';
import { parseJson } from '../json/parse-json.ts';

export const CALIBRATION_FILE = 'calibration.json';
export const RATERS_FILE = 'raters.json';

/** Settings with stored figures laid under them, and what a person should know about it. */
export interface StoredFigures {
  readonly settings: ProjectInput['settings'];
  readonly findings: readonly Finding[];
}

/** Parts of the project on which a fitted coefficient rests; other layers may change without making it stale. */
const LAYERS_BEHIND = ['crowns', 'ratings', 'quadrats'] as const;

/** The text of `calibration.json`, from a calibration that succeeded; a RangeError for one that did not. */
export function calibrationText(
  { calibration, season, asOf, settings }: ProjectCalibration,
  input: Pick<ProjectInput, 'layers' | 'sources'>,
): string {
  if (calibration === null) throw new RangeError('calibration: expected a fitted coefficient, got none');
  const { doseCoefficient, logStandardError, residualFreedom, interval, dispersion, quadrats } = calibration;
  const record = {
    about: 'Written by crownfall calibrate and read by every command. Remove it to go back to the assumed coefficient.',
    dose_coefficient: doseCoefficient,
    dose_coefficient_log_sd: logStandardError,
    dose_coefficient_freedom: residualFreedom,
    interval: [interval.lower, interval.upper],
    confidence: interval.confidence,
    dispersion,
    quadrats: quadrats.length,
    season,
    as_of: asOf,
    rests_on: { files: filesBehind(input), settings: settingsBehind(settings) },
  };
  return `${JSON.stringify(record, null, 2)}\n`;
}

/** The text of `raters.json`. `from` says what the biases were held against. */
export function ratersText(raters: Settings['raters'], from: 'known-answers' | 'mean-of-raters'): string {
  const about = 'Written by crownfall raters and read by every command. Remove it to leave ratings as they are.';
  return `${JSON.stringify({ about, biases_against: from, raters }, null, 2)}\n`;
}

/** Lays a stored calibration under the settings. */
export function withCalibration(bytes: Uint8Array, input: ProjectInput): StoredFigures {
  const stored = calibrationOf(parseJson(bytes).value);
  const { settings } = input;
  if (stored === null) return { settings, findings: [unreadable(CALIBRATION_FILE)] };
  if (settings.dose_coefficient !== undefined) return { settings, findings: [overridden('dose_coefficient')] };
  const uncertainty = {
    dose_coefficient_log_sd: stored.logSd,
    dose_coefficient_freedom: stored.freedom,
    ...(isObject(settings.uncertainty) ? settings.uncertainty : {}),
  };
  const fitted = { ...settings, dose_coefficient: stored.k, calibrated: true, uncertainty };
  const changed = changedSince(stored.restsOn, input);
  const stale = changed.length === 0 ? [] : [staleFinding(changed)];
  return { settings: fitted, findings: stale };
}

/** Lays stored readings of raters under the settings; a rater listed in project.json keeps what is listed there. */
export function withRaters(bytes: Uint8Array, { settings }: Pick<ProjectInput, 'settings'>): StoredFigures {
  const value = parseJson(bytes).value;
  const stored = isObject(value) && isObject(value.raters) ? value.raters : null;
  if (stored === null || !Object.values(stored).every(isRater)) {
    return { settings, findings: [unreadable(RATERS_FILE)] };
  }
  const own = isObject(settings.raters) ? settings.raters : {};
  return { settings: { ...settings, raters: { ...stored, ...own } }, findings: [] };
}

interface StoredCalibration {
  readonly k: number;
  readonly logSd: number;
  readonly freedom: number;
  readonly restsOn: unknown;
}

function calibrationOf(value: unknown): StoredCalibration | null {
  if (!isObject(value)) return null;
  const k = value.dose_coefficient;
  const logSd = value.dose_coefficient_log_sd;
  const freedom = value.dose_coefficient_freedom;
  const usable = isAmount(k) && k > 0 && isAmount(logSd) && isAmount(freedom);
  return usable ? { k, logSd, freedom, restsOn: value.rests_on } : null;
}

function isRater(value: unknown): value is RaterSettings {
  return (
    isObject(value) && Number.isFinite(value.bias_pct) && isAmount(value.bias_se_pct) && isAmount(value.error_sd_pct)
  );
}

function isAmount(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value) && value >= 0;
}

/** Names of the files and settings that are no longer as they were when k was fitted. */
function changedSince(restsOn: unknown, input: ProjectInput): string[] {
  if (!isObject(restsOn)) return [];
  const files = isObject(restsOn.files) ? restsOn.files : {};
  const now = filesBehind(input);
  const names = new Set([...Object.keys(files), ...Object.keys(now)]);
  const changedFiles = [...names].filter((name) => files[name] !== now[name]);
  const before = isObject(restsOn.settings) ? restsOn.settings : {};
  const settings = settingsBehind(readSettings(input.settings).settings);
  const changedSettings = Object.entries(settings)
    .filter(([name, value]) => JSON.stringify(before[name]) !== JSON.stringify(value))
    .map(([name]) => name);
  return [...changedFiles.sort(), ...changedSettings];
}

function filesBehind({ layers, sources }: Pick<ProjectInput, 'layers' | 'sources'>): Record<string, string> {
  const names = LAYERS_BEHIND.flatMap((name) => layers[name]?.file ?? []);
  return Object.fromEntries(
    sources.filter(({ file }) => names.includes(file)).map(({ file, sha256 }) => [file, sha256]),
  );
}

function settingsBehind(settings: Settings) {
  const { drift_rings, wind, cause_factor, severity_from, raters } = settings;
  return { drift_rings, wind, cause_factor, severity_from, raters };
}

function unreadable(file: string): Finding {
  return finding('stored-figures-unreadable', 'warning/left_out', { file }, {});
}

function overridden(setting: string): Finding {
  return finding('stored-figures-overridden', 'note/kept', { file: CALIBRATION_FILE }, { setting });
}

function staleFinding(changed: readonly string[]): Finding {
  return finding('calibration-stale', 'warning/kept', { file: CALIBRATION_FILE }, { changed: changed.join(', ') });
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
