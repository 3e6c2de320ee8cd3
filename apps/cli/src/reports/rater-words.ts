/** The words of a rater check, in two languages. */
import type { Language } from '@crownfall/survey';

const EN = {
  title: (town: string, season: number, day: string) => `${town} – rater check – season ${season}, as of ${day}`,
  nobody: 'Nobody rated a tree this season.',
  rated: (trees: number, each: string, several: number) =>
    `${trees} trees rated (${each}); ${several} of them by more than one rater.`,
  oneRater: 'With one rater there is nothing to agree with: let a second one rate some of the same trees.',
  noneShared: 'No tree was rated by two raters within one visit, so agreement cannot be told.',
  classUntold: (why: string) => `Choice of class: not told, as ${why}.`,
  classes: (agreement: string, quadratic: string, linear: string | null) =>
    `Choice of class: ${agreement} (weighted kappa, quadratic ${quadratic}${linear === null ? '' : `, linear ${linear}`}).`,
  togetherFew: (raters: number, trees: number) =>
    `All ${raters} together: not told, as ${trees === 0 ? 'no tree' : 'only one tree'} was rated by all of them.`,
  togetherUntold: (raters: number, why: string) => `All ${raters} together: reliability not told, as ${why}.`,
  together: (raters: number, trees: number, how: string, coefficient: string) =>
    `All ${raters} together on ${trees} trees agree ${how} (intraclass correlation, form 2,1: ${coefficient}).`,
  againstKnown: 'Against known answers, in points at half severity (less towards 0 and 100 %):',
  againstMean:
    'Against the mean of the raters, in points at half severity (less towards 0 and 100 %); what all share cannot be seen:',
  biasUntold: (rater: string, why: string, readings: number) => `${rater}: not told, as ${why} (${readings} readings).`,
  bias: (rater: string, way: 'right' | 'high' | 'low', bias: string, se: string, error: string, readings: number) =>
    `${rater} reads ${{ right: 'about right', high: 'high', low: 'low' }[way]}: ${bias} ± ${se}, single ratings scatter by ${error} (${readings} readings).`,
  kept: (file: string) => `Kept in ${file} beside the project; every command now takes these biases off.`,
  chart: {
    title: (second: string, first: string, scale: string) => `${second} minus ${first}, ${scale}`,
    about: (trees: number, bias: string) => `${trees} trees rated by both; mean difference ${bias} points.`,
    note: (town: string, season: number) =>
      `${town}, season ${season}. Lines: mean difference and limits that hold 95 % of differences.`,
    across: 'mean of the two ratings, %',
    up: 'difference, points',
    mean: (bias: string) => `mean ${bias}`,
  },
  page: {
    title: (town: string) => `Do our raters mean the same? ${town}`,
    about: (season: number, day: string) => `Season ${season}, as of ${day}`,
    columns: ['rater', 'reads, points at half severity', '±', 'scatter of single ratings', 'readings'],
    untold: 'not told',
    points:
      'Points are percentage points of the crown. Words such as "well" and "moderately" are conventions for the coefficients of agreement, not laws.',
  },
  closeness: ['poorly', 'moderately', 'well', 'very closely'],
  kappaBelow: 'less often than by chance',
  kappa: [
    'slight agreement',
    'fair agreement',
    'moderate agreement',
    'substantial agreement',
    'almost perfect agreement',
  ],
  pair: {
    on: (trees: number, scale: string) => `on ${trees} ${trees === 1 ? 'tree' : 'trees'} (${scale})`,
    untold: (first: string, second: string, on: string, why: string) =>
      `${first} and ${second} ${on}: no difference can be told, as ${why}.`,
    agree: (on: string, how: string) => `${on} they agree ${how}`,
    agreeUntold: (on: string, why: string) => `${on} agreement cannot be told, as ${why}`,
    alike: (second: string, first: string) => `${second} and ${first} rate alike`,
    differ: (
      who: readonly [second: string, first: string],
      points: string,
      higher: boolean,
      range: string,
      chance: boolean,
    ) =>
      `${who[0]} rates ${points} points ${higher ? 'higher' : 'lower'} than ${who[1]} (95 % interval of the difference ${range}${chance ? ', which may be chance' : ''})`,
    to: 'to',
  },
};

export type RaterWords = typeof EN;

const ES: RaterWords = {
  title: (town, season, day) => `${town} – comparación de evaluadores – temporada ${season}, al ${day}`,
  nobody: 'Nadie evaluó un árbol esta temporada.',
  rated: (trees, each, several) => `${trees} árboles evaluados (${each}); ${several} de ellos por más de un evaluador.`,
  oneRater: 'Con un solo evaluador no hay con quién coincidir: que otro evalúe algunos de los mismos árboles.',
  noneShared: 'Ningún árbol fue evaluado por dos personas en una misma visita, así que no puede decirse si coinciden.',
  classUntold: (why) => `Elección de clase: no se dice, porque ${why}.`,
  classes: (agreement, quadratic, linear) =>
    `Elección de clase: ${agreement} (kappa ponderado, cuadrático ${quadratic}${linear === null ? '' : `, lineal ${linear}`}).`,
  togetherFew: (raters, trees) =>
    `Los ${raters} juntos: no se dice, porque ${trees === 0 ? 'ningún árbol fue evaluado' : 'solo un árbol fue evaluado'} por todos.`,
  togetherUntold: (raters, why) => `Los ${raters} juntos: no se dice la fiabilidad, porque ${why}.`,
  together: (raters, trees, how, coefficient) =>
    `Los ${raters} juntos, en ${trees} árboles, coinciden ${how} (correlación intraclase, forma 2,1: ${coefficient}).`,
  againstKnown: 'Frente a respuestas conocidas, en puntos a media severidad (menos hacia 0 y 100 %):',
  againstMean:
    'Frente a la media de los evaluadores, en puntos a media severidad (menos hacia 0 y 100 %); lo que todos comparten no se ve:',
  biasUntold: (rater, why, readings) => `${rater}: no se dice, porque ${why} (${readings} lecturas).`,
  bias: (rater, way, bias, se, error, readings) =>
    `${rater} lee ${{ right: 'más o menos bien', high: 'alto', low: 'bajo' }[way]}: ${bias} ± ${se}, lecturas sueltas dispersas en ${error} (${readings} lecturas).`,
  kept: (file) => `Guardado en ${file} junto al proyecto; desde ahora todos los comandos descuentan estos sesgos.`,
  chart: {
    title: (second, first, scale) => `${second} menos ${first}, ${scale}`,
    about: (trees, bias) => `${trees} árboles evaluados por ambos; diferencia media ${bias} puntos.`,
    note: (town, season) =>
      `${town}, temporada ${season}. Líneas: diferencia media y límites que abarcan el 95 % de las diferencias.`,
    across: 'media de las dos evaluaciones, %',
    up: 'diferencia, puntos',
    mean: (bias) => `media ${bias}`,
  },
  page: {
    title: (town) => `¿Quieren decir lo mismo nuestros evaluadores? ${town}`,
    about: (season, day) => `Temporada ${season}, al ${day}`,
    columns: ['evaluador', 'lee, puntos a media severidad', '±', 'dispersión de lecturas sueltas', 'lecturas'],
    untold: 'no se dice',
    points:
      'Los puntos son puntos porcentuales de la copa. Palabras como «bien» o «medianamente» son convenciones para los coeficientes de concordancia, no leyes.',
  },
  closeness: ['mal', 'medianamente', 'bien', 'muy de cerca'],
  kappaBelow: 'menos que por azar',
  kappa: [
    'concordancia leve',
    'concordancia aceptable',
    'concordancia moderada',
    'concordancia considerable',
    'concordancia casi perfecta',
  ],
  pair: {
    on: (trees, scale) => `en ${trees} ${trees === 1 ? 'árbol' : 'árboles'} (${scale})`,
    untold: (first, second, on, why) =>
      `${first} y ${second} ${on}: no puede decirse ninguna diferencia, porque ${why}.`,
    agree: (on, how) => `${on} coinciden ${how}`,
    agreeUntold: (on, why) => `${on} no puede decirse si coinciden, porque ${why}`,
    alike: (second, first) => `${second} y ${first} evalúan igual`,
    differ: ([second, first], points, higher, range, chance) =>
      `${second} evalúa ${points} puntos más ${higher ? 'alto' : 'bajo'} que ${first} (intervalo del 95 % de la diferencia: ${range}${chance ? ', que puede ser azar' : ''})`,
    to: 'a',
  },
};

export const RATER_WORDS: Readonly<Record<Language, RaterWords>> = { en: EN, es: ES };
