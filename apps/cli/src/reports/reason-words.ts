/** Why a statistic is undefined, in a language. */
import { reasonInWords, type UndefinedReason } from '@crownfall/statistics';
import type { Language } from '@crownfall/survey';

const ES: Readonly<Record<UndefinedReason, string>> = {
  'no-observations': 'no hay observaciones',
  'too-few-observations': 'hay menos observaciones de las que pide el método',
  'one-rater': 'solo juzgó un evaluador, así que no hay con quién coincidir',
  'one-subject': 'solo un árbol fue juzgado por más de un evaluador',
  'no-variation': 'todos los valores son iguales, así que no hay nada que comparar',
  'no-variance': 'la varianza total se estima en cero o menos, así que no puede decirse ninguna parte de ella',
  'no-weight': 'todos los pesos son cero',
  'no-links': 'ninguna unidad tiene vecinos',
  'all-linked': 'la unidad es vecina de todas las demás, así que no queda con qué compararla',
  'zero-control-before': 'en el testigo sin tratar no se contó nada antes del tratamiento',
  'zero-control-after': 'en el testigo sin tratar no se contó nada después del tratamiento',
  'zero-treated-before': 'en el grupo tratado no se contó nada antes del tratamiento',
  'control-all-dead': 'en el testigo sin tratar no sobrevivió nada, así que no puede verse ningún efecto',
  'opposed-directions': 'las direcciones se anulan entre sí y no tienen media',
  separation:
    'un término, o una suma de términos, separa los resultados por completo, y su estimación se va al infinito',
  'collinear-terms': 'un término es suma de los demás, así que no pueden separarse',
  'not-converged': 'el ajuste no se asentó',
  'no-residual-freedom': 'hay tantos términos como observaciones, así que no queda dispersión que medir',
  'not-whole-counts': 'la verosimilitud pide recuentos enteros de éxitos y de ensayos',
  'mostly-undefined': 'el estadístico no está definido en demasiados remuestreos',
};

/** As the rest of a sentence: `there are no observations`. */
export function undefinedWords(reason: UndefinedReason, language: Language): string {
  return language === 'en' ? reasonInWords(reason) : ES[reason];
}
