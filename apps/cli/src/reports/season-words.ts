/** The words of a season's follow-up, in two languages. */
import type { EfficacyMethod, NoEfficacy } from '@crownfall/assessment';
import type { Language } from '@crownfall/survey';

export const METHOD_NAMES: Readonly<Record<EfficacyMethod, string>> = {
  'henderson-tilton': 'Henderson–Tilton',
  abbott: 'Abbott',
  'sun-shepard': 'Sun–Shepard',
  'schneider-orelli': 'Schneider-Orelli',
};

type OwnReason = 'no-treated' | 'no-untreated' | 'unlike-before' | 'untreated-grew' | 'treated-grew';

const EN = {
  title: (town: string, before: string, after: string) => `${town} – ${before} to ${after}`,
  stained: (fell: boolean, before: string, after: string, range: string) =>
    `Pavement expected to show stain ${fell ? 'fell' : 'rose'} from ${before} to ${after}${range}.`,
  range: (lower: string, upper: string, sure: boolean) =>
    ` (80 % range of the change ${lower} to ${upper} m²${sure ? '' : ', so the direction is not sure'})`,
  severity: (trees: string, before: string, after: string) =>
    `On ${trees} trees rated on both days the mean severity with a staining cause went from ${before} to ${after}.`,
  noSeverity: 'No tree was rated on both days, so crowns cannot be compared one by one.',
  spots: (hot: number, cold: number, metres: string) =>
    `${hot} trees stand where severe crowns gather, ${cold} where sound ones do (neighbours within ${metres} m, at most 5 % of them by chance).`,
  spotsNone: (metres: string) =>
    `Severe crowns gather nowhere more than chance would have it (neighbours within ${metres} m).`,
  spotsUntold: (why: string) => `Hot spots cannot be told, as ${why}.`,
  uncalibrated: 'Uncalibrated: compare the days and the blocks; do not quote single figures.',
  columns: {
    block: 'block',
    before: 'stained before, m²',
    after: 'after',
    change: 'change',
    range: '80 % range',
    trees: 'trees followed',
    severity: 'severity before → after',
  },
  to: 'to',
  noBlock: 'in no block',
  more: (count: number) => `… and ${count} more blocks that changed less`,
  noTreated: 'No trees were given as treated (--treated FILE.csv), so no efficacy is reckoned.',
  treated: 'Treated',
  untreated: 'Untreated',
  group: (label: string, trees: number, severity: string, affected: string) =>
    `${label}: ${trees} trees, severity ${severity}, affected ${affected}.`,
  notGiven: (why: string) => `not given: ${why}.`,
  efficacy: (share: string, lower: string, upper: string, proved: boolean) =>
    `${share} less than untreated (95 % interval ${lower} to ${upper}${proved ? '' : ', so no effect is proved'}).`,
  resampled: (what: string) => `Intervals over resampled ${what}.`,
  resampledOf: { trees: 'trees', blocks: 'blocks' },
  notFollowed: (trees: string) => `Not rated on both days, so left out: ${trees}.`,
  whyNot: {
    'no-treated': 'no treated tree was rated on both days',
    'no-untreated': 'no untreated tree was rated on both days',
    'unlike-before': 'the groups were unlike before the treatment, which this formula does not allow for',
    'untreated-grew': 'severity rose in the untreated group, and this formula needs a decline',
    'treated-grew': 'severity rose in the treated group, and this formula needs a decline',
  } satisfies Record<OwnReason, string> as Readonly<Partial<Record<NoEfficacy, string>>>,
  written: (folder: string) => `Written to ${folder}: season.html and its charts.`,
  blocksChart: {
    title: 'Stained pavement by block, before and after',
    about: (count: number, town: string, before: string, after: string) =>
      `${count} blocks of ${town} that changed most; hollow ${before}, filled ${after}.`,
    note: (town: string, before: string, after: string) =>
      `${town}. Hollow: ${before}; filled: ${after}. Blocks that changed most.`,
    across: 'pavement expected to show stain, m²',
    caption: 'Blocks that changed most: the hollow dot is before, the filled one after.',
  },
  efficacyChart: {
    title: 'How much less severe than untreated',
    about: (treated: number, untreated: number) =>
      `Efficacy by four formulas with 95 % intervals, ${treated} treated and ${untreated} untreated trees.`,
    note: (town: string) => `${town}. Bars: 95 % of resamples. 0: no effect; 100 %: nothing left.`,
    across: 'efficacy, %',
    caption: 'If a bar reaches 0, the trees followed do not prove an effect.',
  },
  spotMap: {
    title: 'Where severe crowns gather',
    about: (town: string, day: string) =>
      `Rated trees of ${town} on ${day}; hot spots round and red, cold spots square and blue.`,
    note: (town: string, day: string, metres: string) =>
      `${town}, ${day}. Neighbours within ${metres} m; at most 5 % of the spots by chance.`,
    words: { hot: 'hot spot', cold: 'cold spot', none: 'as by chance' },
    caption: 'Hot spots: trees whose surroundings are more severe than chance explains. North is up.',
  },
  page: {
    title: (town: string) => `What changed: ${town}`,
    about: (before: string, after: string) => `${before} to ${after}`,
    columns: ['block', 'before, m²', 'after, m²', 'change, m²'],
    calibrated: 'Stained areas are expectations from rated crowns, calibrated on measured plots of pavement.',
    uncalibrated:
      'Stained areas are expectations from rated crowns; they are not calibrated on measured plots, so compare them and do not quote single ones.',
    sameGround: 'Both days are reckoned over the crowns and the pavement as they are recorded today.',
    draws: (draws: string) => `Ranges of change come from ${draws} random draws over what is not known.`,
    noLot:
      'Trees were not assigned to treatment by lot unless your records say so: what treated and untreated trees differ in besides the treatment is in these figures too.',
  },
};

export type SeasonWords = typeof EN;

const ES: SeasonWords = {
  title: (town, before, after) => `${town} – ${before} a ${after}`,
  stained: (fell, before, after, range) =>
    `El pavimento que se espera manchado ${fell ? 'bajó' : 'subió'} de ${before} a ${after}${range}.`,
  range: (lower, upper, sure) =>
    ` (rango del 80 % del cambio: ${lower} a ${upper} m²${sure ? '' : ', así que el sentido no es seguro'})`,
  severity: (trees, before, after) =>
    `En ${trees} árboles evaluados los dos días, la severidad media con causa de mancha pasó de ${before} a ${after}.`,
  noSeverity: 'Ningún árbol fue evaluado los dos días, así que las copas no pueden compararse una a una.',
  spots: (hot, cold, metres) =>
    `${hot} árboles están donde se juntan copas graves y ${cold} donde se juntan sanas (vecinos a menos de ${metres} m, a lo sumo el 5 % por azar).`,
  spotsNone: (metres) =>
    `Las copas graves no se juntan en ningún sitio más que por azar (vecinos a menos de ${metres} m).`,
  spotsUntold: (why) => `No pueden decirse focos, porque ${why}.`,
  uncalibrated: 'Sin calibrar: compare los días y las manzanas; no cite cifras sueltas.',
  columns: {
    block: 'manzana',
    before: 'manchado antes, m²',
    after: 'después',
    change: 'cambio',
    range: 'rango 80 %',
    trees: 'árboles seguidos',
    severity: 'severidad antes → después',
  },
  to: 'a',
  noBlock: 'en ninguna manzana',
  more: (count) => `… y otras ${count} manzanas que cambiaron menos`,
  noTreated: 'No se dieron árboles tratados (--treated ARCHIVO.csv), así que no se calcula eficacia.',
  treated: 'Tratados',
  untreated: 'Sin tratar',
  group: (label, trees, severity, affected) =>
    `${label}: ${trees} árboles, severidad ${severity}, afectados ${affected}.`,
  notGiven: (why) => `no se da: ${why}.`,
  efficacy: (share, lower, upper, proved) =>
    `${share} menos que sin tratar (intervalo del 95 %: ${lower} a ${upper}${proved ? '' : ', así que no se prueba ningún efecto'}).`,
  resampled: (what) => `Intervalos por remuestreo de ${what}.`,
  resampledOf: { trees: 'árboles', blocks: 'manzanas' },
  notFollowed: (trees) => `No evaluados los dos días, así que quedan fuera: ${trees}.`,
  whyNot: {
    'no-treated': 'ningún árbol tratado fue evaluado los dos días',
    'no-untreated': 'ningún árbol sin tratar fue evaluado los dos días',
    'unlike-before': 'los grupos eran distintos antes del tratamiento, y esta fórmula no lo permite',
    'untreated-grew': 'la severidad subió en el grupo sin tratar, y esta fórmula pide un descenso',
    'treated-grew': 'la severidad subió en el grupo tratado, y esta fórmula pide un descenso',
  },
  written: (folder) => `Escrito en ${folder}: season.html y sus gráficos.`,
  blocksChart: {
    title: 'Pavimento manchado por manzana, antes y después',
    about: (count, town, before, after) =>
      `${count} manzanas de ${town} que más cambiaron; hueco ${before}, lleno ${after}.`,
    note: (town, before, after) => `${town}. Hueco: ${before}; lleno: ${after}. Manzanas que más cambiaron.`,
    across: 'pavimento que se espera manchado, m²',
    caption: 'Manzanas que más cambiaron: el punto hueco es antes, el lleno después.',
  },
  efficacyChart: {
    title: 'Cuánto menos grave que sin tratar',
    about: (treated, untreated) =>
      `Eficacia por cuatro fórmulas con intervalos del 95 %, ${treated} árboles tratados y ${untreated} sin tratar.`,
    note: (town) => `${town}. Barras: 95 % de los remuestreos. 0: ningún efecto; 100 %: no queda nada.`,
    across: 'eficacia, %',
    caption: 'Si una barra llega a 0, los árboles seguidos no prueban ningún efecto.',
  },
  spotMap: {
    title: 'Dónde se juntan copas graves',
    about: (town, day) =>
      `Árboles evaluados de ${town} el ${day}; focos graves redondos y rojos, focos sanos cuadrados y azules.`,
    note: (town, day, metres) =>
      `${town}, ${day}. Vecinos a menos de ${metres} m; a lo sumo el 5 % de los focos por azar.`,
    words: { hot: 'foco grave', cold: 'foco sano', none: 'como por azar' },
    caption: 'Focos graves: árboles cuyo entorno es más grave de lo que explica el azar. El norte está arriba.',
  },
  page: {
    title: (town) => `Qué cambió: ${town}`,
    about: (before, after) => `${before} a ${after}`,
    columns: ['manzana', 'antes, m²', 'después, m²', 'cambio, m²'],
    calibrated:
      'Las áreas manchadas son expectativas de copas evaluadas, calibradas con parcelas medidas del pavimento.',
    uncalibrated:
      'Las áreas manchadas son expectativas de copas evaluadas; no están calibradas con parcelas medidas, así que compárelas y no cite ninguna suelta.',
    sameGround: 'Los dos días se calculan sobre las copas y el pavimento tal como constan hoy.',
    draws: (draws) => `Los rangos del cambio salen de ${draws} sorteos aleatorios sobre lo que no se conoce.`,
    noLot:
      'Los árboles no se asignaron al tratamiento por sorteo, salvo que sus registros lo digan: aquello en que tratados y no tratados se distinguen además del tratamiento también está en estas cifras.',
  },
};

export const SEASON_WORDS: Readonly<Record<Language, SeasonWords>> = { en: EN, es: ES };
