/** The words of a plan: actions, reasons that forbid one, cautions, in two languages. One catalogue for screen, sheet and print. */
import type { Action } from '../plan-settings.ts';
import { fill } from './describe-finding.ts';
import type { Language, Words } from './words.ts';

/** Why an action is not offered. */
export const REASON_CODES = [
  'price-missing',
  'nothing-stained',
  'no-tree',
  'all-rated',
  'cause-without-evidence',
  'window-not-open',
  'pollinator-check-missing',
  'bees-seen',
  'water-not-mapped',
  'keep-off-not-stated',
  'water-near',
  'wind-missing',
  'wind-above-limit',
  'rain-missing',
  'rain-above-limit',
  'licence-missing',
] as const;
export type ReasonCode = (typeof REASON_CODES)[number];

/** A rule that forbids an action in a block, with the facts that made it speak. */
export interface Reason {
  readonly code: ReasonCode;
  readonly facts: Readonly<Record<string, string | number>>;
}

/** What bounds a plan; where constraints clash they are told by these. */
export type Constraint =
  | { readonly kind: 'one-per-block'; readonly blockId: string }
  | { readonly kind: 'budget'; readonly money: number }
  /** Crew hours of what must be done by the end of a day; null: of everything. */
  | { readonly kind: 'crew'; readonly until: string | null; readonly hours: number }
  | { readonly kind: 'must-do'; readonly blockId: string; readonly action: Action | 'any' }
  | { readonly kind: 'district'; readonly name: string };

/** A block whose last treatment had the mode of action of the product chosen now. */
export interface Rotation {
  readonly blockId: string;
  readonly product: string;
  readonly group: string;
  readonly last: { readonly on: string; readonly product: string };
  readonly since: 'this-season' | 'last-season';
}

/** What must be read wherever treatment is mentioned. */
export const CAUTION_CODES = [
  'label-governs',
  'licensed-only',
  'look-for-bees',
  'keep-off-water',
  'post-notices',
  'no-dose',
] as const;
export type CautionCode = (typeof CAUTION_CODES)[number];

interface PlanCatalogue {
  readonly actions: Readonly<Record<Action, string>>;
  readonly reasons: Readonly<Record<ReasonCode, Words>>;
  readonly cautions: Readonly<Record<CautionCode, string>>;
  /** All of them in one line, for the rows of a table. */
  readonly caution: string;
  readonly constraints: Readonly<Record<Constraint['kind'], string>>;
  readonly rotation: string;
  /** Facts that are words of the program. */
  readonly terms: Readonly<Record<string, string>>;
}

const EN: PlanCatalogue = {
  actions: {
    leave: 'leave alone',
    inspect: 'inspect',
    clean: 'clean the pavement',
    treat: 'treat in bloom',
    treat_and_clean: 'treat in bloom and clean',
    replace: 'replace one tree',
  },
  reasons: {
    'price-missing': {
      what: 'The price list has no entry for {action}',
      remedy: 'Add it under plan.prices in the settings.',
    },
    'nothing-stained': {
      what: 'No stain is expected on pavement that is cleaned',
      remedy: 'Nothing to do, or add kinds of pavement under plan.clean_kinds.',
    },
    'no-tree': { what: 'No tree stands in this block', remedy: 'Look at the blocks whose crowns reach into it.' },
    'all-rated': { what: 'Every tree of the block is rated', remedy: 'Nothing to do until the next visit.' },
    'cause-without-evidence': {
      what: 'No tree of the block has a cause found in its crown that this action would help against',
      remedy:
        'Inspect the crowns and record the cause with its evidence. A stain without one must not be blamed on a tree.',
    },
    'window-not-open': {
      what: 'The bloom window is not open: {state}[, last seen {seen_on}]',
      remedy: 'Record the growth stage. When the window is closed, clean, plan for the next bloom, or leave it alone.',
    },
    'pollinator-check-missing': {
      what: 'Nobody has looked for bees at the flowers[ since {seen_on}]; a check may be {days} d old',
      remedy: 'Look for bees at the flowers and record bees_at_flowers: yes or no.',
    },
    'bees-seen': {
      what: 'Bees were at the flowers on {seen_on}',
      remedy: 'Do not treat while bees visit. Look again, and follow the label and the local code.',
    },
    'water-not-mapped': {
      what: 'Water, drains and wells are not mapped, so no distance can be told',
      remedy: 'Add the water layer.',
    },
    'keep-off-not-stated': {
      what: 'The distance to keep from {kind} is not stated',
      remedy: 'Type the distance of the label and the local code under plan.keep_off_m.',
    },
    'water-near': {
      what: 'Every tree that could be treated is too near to water or a drain: the nearest is {distance_m} m from {kind}, {keep_off_m} m are to be kept',
      remedy: 'Do not treat here. Clean, or leave it alone.',
    },
    'wind-missing': {
      what: 'The wind is not filled in for {on}',
      remedy: 'Read the wind on the spot and fill it in before treating.',
    },
    'wind-above-limit': {
      what: 'The wind is {got} m/s; the limit stated from the label is {limit} m/s',
      remedy: 'Wait for less wind.',
    },
    'rain-missing': {
      what: 'The rain is not filled in for {on}',
      remedy: 'Read the forecast of rain and fill it in before treating.',
    },
    'rain-above-limit': {
      what: 'Rain of {got} mm is expected; the limit stated from the label is {limit} mm',
      remedy: 'Wait for drier weather.',
    },
    'licence-missing': {
      what: 'No licensed applicator is named',
      remedy: 'Type name and licence of the person who treats under plan.applicator.',
    },
  },
  cautions: {
    'label-governs':
      'The product label and the local code govern; where they say otherwise than this plan, follow them.',
    'licensed-only': 'Only a licensed applicator treats.',
    'look-for-bees': 'Look for bees at the flowers right before any treatment; while they visit, do not treat.',
    'keep-off-water': 'Keep insecticides off water, drains and wells.',
    'post-notices': 'Post notices and tell neighbours where the local code asks for it.',
    'no-dose': 'This plan computes and suggests no dose. A rate shown here was typed from a label by the person named.',
  },
  caution:
    'The product label and the local code govern. Only a licensed applicator treats. Look for bees first, keep off water, drains and wells, post notices. No dose is computed.',
  constraints: {
    'one-per-block': 'one action at most in block {blockId}',
    budget: 'the budget of {money} {currency}',
    crew: 'the crew: {hours} h[ until {until}]',
    'must-do': 'block {blockId} must be done ({action})',
    district: 'the floor for district {name}',
  },
  rotation:
    '{blocks}: {product} has the mode-of-action group {group}, as had {last} on {on} ({since}). Change the group between seasons and generations; the label and local advice decide.',
  terms: {
    any: 'any action that takes stain off',
    water: 'water',
    drain: 'a drain',
    well: 'a well',
    before: 'not in flower yet',
    open: 'open',
    closing: 'closing',
    closed: 'closed',
    'this-season': 'this season',
    'last-season': 'last season',
    unknown: 'not observed lately',
  },
};

const ES: PlanCatalogue = {
  actions: {
    leave: 'dejar como está',
    inspect: 'inspeccionar',
    clean: 'limpiar el pavimento',
    treat: 'tratar en floración',
    treat_and_clean: 'tratar en floración y limpiar',
    replace: 'sustituir un árbol',
  },
  reasons: {
    'price-missing': {
      what: 'La lista de precios no tiene entrada para {action}',
      remedy: 'Añádala en plan.prices de los ajustes.',
    },
    'nothing-stained': {
      what: 'No se espera mancha en pavimento que se limpie',
      remedy: 'No hay nada que hacer, o añada tipos de pavimento en plan.clean_kinds.',
    },
    'no-tree': {
      what: 'No hay ningún árbol en esta manzana',
      remedy: 'Mire las manzanas cuyas copas llegan hasta ella.',
    },
    'all-rated': {
      what: 'Todos los árboles de la manzana están evaluados',
      remedy: 'No hay nada que hacer hasta la próxima visita.',
    },
    'cause-without-evidence': {
      what: 'Ningún árbol de la manzana tiene en su copa una causa comprobada contra la que sirva esta acción',
      remedy:
        'Inspeccione las copas y anote la causa con su evidencia. Una mancha sin causa no debe atribuirse a un árbol.',
    },
    'window-not-open': {
      what: 'La ventana de floración no está abierta: {state}[, vista por última vez el {seen_on}]',
      remedy:
        'Anote el estadio de desarrollo. Si la ventana está cerrada, limpie, prevea la próxima floración o déjelo como está.',
    },
    'pollinator-check-missing': {
      what: 'Nadie ha mirado si hay abejas en las flores[ desde el {seen_on}]; la revisión puede tener {days} d',
      remedy: 'Mire si hay abejas en las flores y anote bees_at_flowers: yes o no.',
    },
    'bees-seen': {
      what: 'Había abejas en las flores el {seen_on}',
      remedy: 'No trate mientras haya abejas. Vuelva a mirar y siga la etiqueta y la norma local.',
    },
    'water-not-mapped': {
      what: 'No hay agua, sumideros ni pozos en el mapa, así que no se conoce ninguna distancia',
      remedy: 'Añada la capa water.',
    },
    'keep-off-not-stated': {
      what: 'No consta la distancia que hay que guardar de {kind}',
      remedy: 'Escriba en plan.keep_off_m la distancia de la etiqueta y de la norma local.',
    },
    'water-near': {
      what: 'Todos los árboles que podrían tratarse están demasiado cerca de agua o de un sumidero: el más cercano está a {distance_m} m de {kind} y hay que guardar {keep_off_m} m',
      remedy: 'No trate aquí. Limpie o déjelo como está.',
    },
    'wind-missing': {
      what: 'Falta anotar el viento del {on}',
      remedy: 'Mida el viento en el lugar y anótelo antes de tratar.',
    },
    'wind-above-limit': {
      what: 'El viento es de {got} m/s; el límite tomado de la etiqueta es {limit} m/s',
      remedy: 'Espere a que amaine.',
    },
    'rain-missing': {
      what: 'Falta anotar la lluvia del {on}',
      remedy: 'Consulte la previsión de lluvia y anótela antes de tratar.',
    },
    'rain-above-limit': {
      what: 'Se esperan {got} mm de lluvia; el límite tomado de la etiqueta es {limit} mm',
      remedy: 'Espere a un tiempo más seco.',
    },
    'licence-missing': {
      what: 'No consta ningún aplicador con licencia',
      remedy: 'Escriba en plan.applicator el nombre y la licencia de quien trata.',
    },
  },
  cautions: {
    'label-governs': 'Rigen la etiqueta del producto y la norma local; si dicen otra cosa que este plan, sígalas.',
    'licensed-only': 'Solo trata un aplicador con licencia.',
    'look-for-bees': 'Mire si hay abejas en las flores justo antes de tratar; mientras las haya, no trate.',
    'keep-off-water': 'Mantenga los insecticidas lejos del agua, los sumideros y los pozos.',
    'post-notices': 'Ponga avisos e informe a los vecinos donde la norma local lo pida.',
    'no-dose':
      'Este plan no calcula ni propone ninguna dosis. La que aparezca la copió de una etiqueta la persona nombrada.',
  },
  caution:
    'Rigen la etiqueta del producto y la norma local. Solo trata un aplicador con licencia. Mire antes si hay abejas, lejos de agua, sumideros y pozos, ponga avisos. No se calcula ninguna dosis.',
  constraints: {
    'one-per-block': 'como mucho una acción en la manzana {blockId}',
    budget: 'el presupuesto de {money} {currency}',
    crew: 'la cuadrilla: {hours} h[ hasta el {until}]',
    'must-do': 'la manzana {blockId} es obligatoria ({action})',
    district: 'el mínimo para el distrito {name}',
  },
  rotation:
    '{blocks}: {product} tiene el grupo de modo de acción {group}, igual que {last} el {on} ({since}). Cambie de grupo entre temporadas y generaciones; deciden la etiqueta y el consejo local.',
  terms: {
    any: 'cualquier acción que quite mancha',
    water: 'agua',
    drain: 'un sumidero',
    well: 'un pozo',
    before: 'aún sin flor',
    open: 'abierta',
    closing: 'cerrándose',
    closed: 'cerrada',
    'this-season': 'esta temporada',
    'last-season': 'la temporada pasada',
    unknown: 'sin observar últimamente',
  },
};

const CATALOGUE: Readonly<Record<Language, PlanCatalogue>> = { en: EN, es: ES };

/**
 * The name of an action in a language.
 * @example actionName('treat', 'en') // 'treat in bloom'
 */
export function actionName(action: Action, language: Language): string {
  return CATALOGUE[language].actions[action];
}

/**
 * What forbids an action and what to do about it, in a language; the same words on screen, sheet and in print.
 * @example describeReason({ code: 'bees-seen', facts: { seen_on: '2026-05-19' } }, 'en').what // 'Bees were at the flowers on 2026-05-19'
 */
export function describeReason({ code, facts }: Reason, language: Language): Words {
  const catalogue = CATALOGUE[language];
  const spoken = new Map(
    Object.entries(facts).map(([name, value]) => [name, spokenFact(name, value, language)] as const),
  );
  const { what, remedy } = catalogue.reasons[code];
  return { what: fill(what, spoken), remedy: fill(remedy, spoken) };
}

/**
 * A constraint in a language, as part of a sentence; money in the currency of the price list.
 * @example describeConstraint({ kind: 'must-do', blockId: 'B07', action: 'treat' }, 'USD', 'en') // 'block B07 must be done (treat in bloom)'
 */
export function describeConstraint(constraint: Constraint, currency: string, language: Language): string {
  const facts = Object.entries(constraint).filter(([, value]) => value !== null) as [string, string | number][];
  const rounded = facts.map(([name, value]): [string, string | number] =>
    typeof value === 'number' ? [name, Number(value.toFixed(1))] : [name, value],
  );
  const spoken = rounded.map(([name, value]) => [name, spokenFact(name, value, language)] as const);
  return fill(CATALOGUE[language].constraints[constraint.kind], new Map([...spoken, ['currency', currency]]));
}

/** All cautions that belong wherever treatment is mentioned, in order. */
export function treatmentCautions(language: Language): string[] {
  return CAUTION_CODES.map((code) => CATALOGUE[language].cautions[code]);
}

/**
 * The reminders to change the mode of action, in a language: one for all blocks that had the same product on the same day. Days
 * as `dayText` writes them, else ISO.
 * @example rotationReminders(notes, 'en') // ['B13, B28: P has the mode-of-action group X1, as had P on 2025-05-16 (last season). …']
 */
export function rotationReminders(
  notes: readonly Rotation[],
  language: Language,
  dayText = (iso: string): string => iso,
): string[] {
  const { rotation, terms } = CATALOGUE[language];
  const alike = new Map<string, Rotation[]>();
  for (const note of notes) {
    const key = JSON.stringify([note.product, note.group, note.last, note.since]);
    alike.set(key, [...(alike.get(key) ?? []), note]);
  }
  return [...alike.values()].map((group) => {
    const [{ product, group: mode, last, since }] = group;
    const blocks = group.map(({ blockId }) => blockId).join(', ');
    const facts = { blocks, product, group: mode, last: last.product, on: dayText(last.on), since: terms[since] };
    return fill(rotation, new Map(Object.entries(facts)));
  });
}

/** The cautions in one line, for each row of a table that names a treatment. */
export function briefCaution(language: Language): string {
  return CATALOGUE[language].caution;
}

function spokenFact(name: string, value: string | number, language: Language): string {
  if (typeof value === 'number') return language === 'es' ? String(value).replace('.', ',') : String(value);
  if (name === 'action' && value !== 'any') return CATALOGUE[language].actions[value as Action] ?? value;
  return CATALOGUE[language].terms[value] ?? value;
}
