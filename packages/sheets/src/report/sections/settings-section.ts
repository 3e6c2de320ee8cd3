/** Every parameter the report rests on, with its unit and where it comes from. */
import { actionName, CRITERIA, DEFAULT_SETTINGS, type Settings } from '@crownfall/survey';
import { areaNumber, grouped, lengthText, percentText } from '../../quantities.ts';
import type { Part, Table } from '../content.ts';
import { moneyText, PLAN_WORDS } from '../plan-reading.ts';
import type { Reading } from '../reading.ts';

/** Label, names in project.json, value in words. */
type Row = readonly [label: string, names: readonly string[], value: string];

export function settingsSection(reading: Reading): readonly Part[] {
  const { words } = reading;
  return [
    { part: 'heading', level: 2, text: words.settings.title },
    { part: 'paragraph', text: [words.settings.intro] },
    parameterTable(reading),
    weightTable(reading),
  ];
}

function parameterTable(reading: Reading): Table {
  const { settings: used } = reading.assessment.run;
  const { settings: words } = reading.words;
  const rows = [
    ...stainRows(reading, used),
    ...rangeRows(reading, used),
    ...orderRows(reading, used),
    ...planRows(reading, used),
  ];
  return {
    part: 'table',
    caption: words.title,
    captionHidden: true,
    columns: [
      { title: words.parameter, align: 'left', weight: 3.2 },
      { title: 'project.json', align: 'left', weight: 2.2 },
      { title: words.value, align: 'left', weight: 3.2 },
      { title: words.origin, align: 'left', weight: 1 },
    ],
    rows: rows.map(([label, names, value]) => [[label], [names.join(', ')], [value], [originOf(names, used, reading)]]),
  };
}

function stainRows({ words, units }: Reading, used: Settings): readonly Row[] {
  const { names, ring, none, towards, severities, causes, days } = words.settings;
  const rings = used.drift_rings.map(({ to_m, share }) => ring(lengthText(to_m, units), percentText(share)));
  const stains = (['frass', 'honeydew', 'fruit', 'leaf_litter'] as const).map(
    (cause) => `${causes[cause]} ${grouped(used.cause_factor[cause], 2)}`,
  );
  const { distance_m, towards_deg } = used.wind;
  return [
    [names.k, ['dose_coefficient'], grouped(used.dose_coefficient, 2)],
    [names.rings, ['drift_rings'], rings.join(', ') || none],
    [names.wind, ['wind'], distance_m === 0 ? none : towards(lengthText(distance_m, units), grouped(towards_deg))],
    [names.causes, ['cause_factor'], stains.join(', ')],
    [names.severityFrom, ['severity_from'], severities[used.severity_from]],
    [names.visit, ['visit_window_days'], days(grouped(used.visit_window_days))],
    [names.chord, ['chord_tolerance_m'], `${grouped(used.chord_tolerance_m * 100, 1)}\u00a0cm`],
  ];
}

function rangeRows({ words, units }: Reading, { uncertainty: used, raters }: Settings): readonly Row[] {
  const { names, sd, ofCrown, none } = words.settings;
  const rater = (pct: number) => `${grouped(pct, 1)}\u00a0${ofCrown} ${sd}`;
  return [
    [names.kSpread, ['uncertainty.dose_coefficient_log_sd'], grouped(used.dose_coefficient_log_sd, 2)],
    [names.raterBias, ['uncertainty.rater_bias_sd_pct'], rater(used.rater_bias_sd_pct)],
    [names.raterError, ['uncertainty.rater_error_sd_pct'], rater(used.rater_error_sd_pct)],
    [names.ringSpread, ['uncertainty.ring_share_spread'], percentText(used.ring_share_spread)],
    [names.outline, ['uncertainty.outline_sd_m'], `${lengthText(used.outline_sd_m, units)} ${sd}`],
    [names.raters, ['raters'], Object.keys(raters).join(', ') || none],
  ];
}

function orderRows({ words, units }: Reading, { priority, bloom_stale_days }: Settings): readonly Row[] {
  const { names, days, blocks } = words.settings;
  const visible = Object.entries(priority.visibility).map(
    ([kind, share]) => `${words.kindNames[kind as keyof typeof priority.visibility]} ${grouped(share, 1)}`,
  );
  const { low, medium, high } = priority.foot_traffic_value;
  const bloom = Object.entries(priority.bloom_state_value).map(
    ([state, value]) => `${words.bloomStates[state as keyof typeof priority.bloom_state_value]} ${grouped(value, 1)}`,
  );
  return [
    [names.visibility, ['priority.visibility'], visible.join(', ')],
    [names.traffic, ['priority.foot_traffic_value'], [low, medium, high].map((one) => grouped(one, 1)).join(', ')],
    [names.bloom, ['priority.bloom_state_value'], bloom.join(', ')],
    [names.bloomStale, ['bloom_stale_days'], days(grouped(bloom_stale_days))],
    [names.complaintDistance, ['priority.complaint_distance_m'], lengthText(priority.complaint_distance_m, units)],
    [names.complaintHalf, ['priority.complaint_half_life_days'], days(grouped(priority.complaint_half_life_days))],
    [names.sites, ['priority.site_distance_m'], lengthText(priority.site_distance_m, units)],
    [names.topN, ['priority.top_n'], blocks(grouped(priority.top_n))],
  ];
}

/** What the plan rests on; the price list is always the user's. */
function planRows({ plan, words, language, units }: Reading, { plan: used }: Settings): readonly Row[] {
  if (plan === undefined) return [];
  const { settingNames: names, price, hoursText } = PLAN_WORDS[language];
  const { causes, days, none } = words.settings;
  const prices = used.prices.map(({ action, set_up, per_tree, per_m2 }) =>
    price(
      actionName(action, language),
      moneyText(set_up, used.currency),
      moneyText(per_tree, used.currency, 2),
      moneyText(per_m2, used.currency, 2),
    ),
  );
  const keep = (['water', 'drain', 'well'] as const).flatMap((kind) => {
    const keepM = used.keep_off_m[kind];
    return keepM === null ? [] : [`${PLAN_WORDS[language].kinds[kind]} ${lengthText(keepM, units)}`];
  });
  return [
    [names.treatLowers, ['plan.treat_lowers'], percentText(used.treat_lowers)],
    [names.treatCauses, ['plan.treat_causes'], used.treat_causes.map((cause) => causes[cause]).join(', ')],
    [names.cleanRemoves, ['plan.clean_removes'], percentText(used.clean_removes)],
    [names.cleanKinds, ['plan.clean_kinds'], used.clean_kinds.map((kind) => words.kindNames[kind]).join(', ')],
    [names.fade, ['plan.fade_half_life_days'], days(grouped(used.fade_half_life_days))],
    [names.refoliate, ['plan.refoliate_days'], days(grouped(used.refoliate_days))],
    [names.hours, ['plan.crew_hours_per_day'], hoursText(grouped(used.crew_hours_per_day, 1))],
    [names.checks, ['plan.check_days'], days(grouped(used.check_days))],
    [names.keepOff, ['plan.keep_off_m'], keep.join(', ') || none],
    [names.prices, ['plan.prices'], prices.join('; ') || none],
  ];
}

/** Set where the project differs from the default; the fitted k and its spread are neither. */
function originOf(names: readonly string[], used: Settings, { words }: Reading): string {
  const { assumed, set, fitted } = words.settings;
  const atDefault = names.every((name) => same(at(used, name), at(DEFAULT_SETTINGS, name)));
  const aboutK = names.some((name) => name.includes('dose_coefficient'));
  if (aboutK && used.calibrated) return fitted;
  return atDefault ? assumed : set;
}

function at(settings: Settings, name: string): unknown {
  return name.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], settings);
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function weightTable({ words, units, assessment }: Reading): Table {
  const { priority } = assessment.run.settings;
  const sum = CRITERIA.reduce((total, criterion) => total + priority.weights[criterion], 0);
  const { settings } = words;
  const level = (criterion: (typeof CRITERIA)[number], value: number): string => {
    if (criterion !== 'stained')
      return `${grouped(value, value % 1 === 0 ? 0 : 1)}\u00a0${settings.levelUnits[criterion]}`;
    return `${areaNumber(value, units)}\u00a0${units === 'us' ? 'ft²' : 'm²'}`;
  };
  return {
    part: 'table',
    caption: settings.weights,
    columns: [
      { title: settings.criterion, align: 'left', weight: 3 },
      { title: settings.weight, align: 'right', weight: 1 },
      { title: settings.levels, align: 'left', weight: 3 },
    ],
    rows: CRITERIA.map((criterion) => [
      [words.criteria[criterion]],
      [percentText(sum === 0 ? 0 : priority.weights[criterion] / sum)],
      [`${level(criterion, priority.levels[criterion].none)}, ${level(criterion, priority.levels[criterion].full)}`],
    ]),
  };
}
