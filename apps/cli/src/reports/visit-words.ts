/** The words of a day's report. */
import type { VisitFinds } from '@crownfall/survey';

interface DayCounts {
  readonly visits: number;
  readonly rated: number;
  readonly quadrats: number;
  readonly notFound: number;
  readonly newTrees: number;
  readonly otherHost: number;
  readonly treated: number;
  readonly photos: number;
}

interface ChangeWords {
  readonly before: string;
  readonly after: string;
  readonly ratedBefore: number;
  readonly ratedAfter: number;
  readonly rankBefore: number;
  readonly rankAfter: number;
}

export interface VisitWords {
  readonly title: (town: string, day: string | null) => string;
  readonly about: (visits: number, who: string) => string;
  readonly counts: (counts: DayCounts) => string;
  readonly bees: (places: string) => string;
  readonly town: (before: string, after: string) => string;
  readonly block: (name: string, change: ChangeWords) => string;
  readonly conflicts: (count: number) => string;
  readonly columns: readonly string[];
  readonly found: (finds: VisitFinds) => string;
  readonly basis: string;
}

/** Parts that count nothing are not named. */
const listed = (parts: readonly (readonly [number, string])[]): string =>
  parts
    .filter(([count]) => count > 0)
    .map(([count, what]) => `${what}: ${count}`)
    .join(', ');

const joined = (parts: readonly (string | false | null | undefined)[]): string => parts.filter(Boolean).join('; ');

const given = (value: unknown): string => (value === undefined || value === null ? '' : String(value));

export const VISIT_WORDS: Readonly<Record<'en' | 'es', VisitWords>> = {
  en: {
    title: (town, day) => (day === null ? `${town}: no visits` : `${town}: visits of ${day}`),
    about: (visits, who) => (visits === 0 ? 'No visits.' : `By ${who}.`),
    counts: ({ visits, rated, quadrats, notFound, newTrees, otherHost, treated, photos }) =>
      `${
        listed([
          [visits, 'Visits'],
          [rated, 'ratings'],
          [quadrats, 'quadrats'],
          [treated, 'treated'],
          [notFound, 'trees not found'],
          [newTrees, 'new trees'],
          [otherHost, 'other host than recorded'],
          [photos, 'photos'],
        ]) || 'No visits'
      }.`,
    bees: (places) => `Bees at the flowers: ${places}.`,
    town: (before, after) => `Stained area of the town: ${before} before the day's visits, ${after} with them.`,
    block: (name, { before, after, ratedBefore, ratedAfter, rankBefore, rankAfter }) =>
      `${name}: stained ${before} before, ${after} after; trees rated ${ratedBefore} → ${ratedAfter}; rank ${rankBefore} → ${rankAfter}.`,
    conflicts: (count) => `Edits that wait for a decision: ${count}.`,
    columns: ['place', 'who', 'did', 'found', 'note'],
    found: ({ ratings, quadrats, bloom, photos, notFound, newTree, wrongSpecies }) =>
      joined([
        notFound && 'tree not found',
        newTree && `new tree ${given(newTree.host)}`.trim(),
        wrongSpecies && `is ${wrongSpecies}`,
        ...ratings.map(
          (row) =>
            `browned ${given(row.browned_pct ?? row.class) || '–'}${row.browned_pct === undefined ? '' : ' %'}, cause ${given(row.cause) || 'unknown'}`,
        ),
        ...quadrats.map((row) => `quadrat ${given(row.stained_pct)} % stained`),
        ...bloom.map((row) => `BBCH ${given(row.bbch)}, bees ${given(row.bees_at_flowers) || 'unknown'}`),
        photos.length > 0 && `photos: ${photos.length}`,
      ]),
    basis: 'Figures are as of the end of the day, reckoned with and without its visits, all else equal.',
  },
  es: {
    title: (town, day) => (day === null ? `${town}: sin visitas` : `${town}: visitas del ${day}`),
    about: (visits, who) => (visits === 0 ? 'Sin visitas.' : `Por ${who}.`),
    counts: ({ visits, rated, quadrats, notFound, newTrees, otherHost, treated, photos }) =>
      `${
        listed([
          [visits, 'Visitas'],
          [rated, 'evaluaciones'],
          [quadrats, 'cuadrantes'],
          [treated, 'tratados'],
          [notFound, 'árboles no encontrados'],
          [newTrees, 'árboles nuevos'],
          [otherHost, 'hospedante distinto del registrado'],
          [photos, 'fotos'],
        ]) || 'Sin visitas'
      }.`,
    bees: (places) => `Abejas en las flores: ${places}.`,
    town: (before, after) =>
      `Superficie manchada de la ciudad: ${before} antes de las visitas del día, ${after} con ellas.`,
    block: (name, { before, after, ratedBefore, ratedAfter, rankBefore, rankAfter }) =>
      `${name}: superficie manchada ${before} antes, ${after} después; árboles evaluados ${ratedBefore} → ${ratedAfter}; puesto ${rankBefore} → ${rankAfter}.`,
    conflicts: (count) => `Cambios que esperan una decisión: ${count}.`,
    columns: ['lugar', 'quién', 'hizo', 'hallado', 'nota'],
    found: ({ ratings, quadrats, bloom, photos, notFound, newTree, wrongSpecies }) =>
      joined([
        notFound && 'árbol no encontrado',
        newTree && `árbol nuevo ${given(newTree.host)}`.trim(),
        wrongSpecies && `es ${wrongSpecies}`,
        ...ratings.map(
          (row) =>
            `pardeado ${given(row.browned_pct ?? row.class) || '–'}${row.browned_pct === undefined ? '' : ' %'}, causa ${given(row.cause) || 'desconocida'}`,
        ),
        ...quadrats.map((row) => `cuadrante ${given(row.stained_pct)} % manchado`),
        ...bloom.map((row) => `BBCH ${given(row.bbch)}, abejas ${given(row.bees_at_flowers) || 'no se sabe'}`),
        photos.length > 0 && `fotos: ${photos.length}`,
      ]),
    basis: 'Las cifras son al final del día, calculadas con y sin sus visitas, con todo lo demás igual.',
  },
};
