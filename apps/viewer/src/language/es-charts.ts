/** The charts in Spanish; loaded with them. */
import type { ChartWords } from './en-charts.ts';

export const CHARTS_ES: ChartWords = {
  stained: 'pavimento manchado',
  spread: (half: number, all: number) => `${half} de ${all} manzanas reúnen la mitad de la mancha`,
  spreadAbout: 'Parte del pavimento manchado en las manzanas más manchadas, sumada desde la mayor.',
  spreadAcross: 'manzanas, la más manchada primero',
  spreadUp: 'parte de la mancha, %',
  change: (then: string, now: string) => `Manzanas que más cambiaron, ${then} a ${now}`,
  changeAbout: (count: number) => `${count} manzanas; hueco antes, lleno ahora.`,
  changeNote: (then: string, now: string) => `Hueco: ${then}; lleno: ${now}. Con las copas y el pavimento de hoy.`,
  fit: (count: number, k: string) => `${count} parcelas medidas frente al ajuste, ${k}`,
  k: (k: string, lower: string, upper: string) => `k = ${k} (rango del 95 %: ${lower} a ${upper})`,
  fitAbout: 'Cada punto es un cuadrante; los puntos sobre la línea se predicen con exactitud.',
  fitted: 'parte manchada ajustada, %',
  observed: 'parte manchada observada, %',
  asFitted: 'según el ajuste',
  quadrat: 'cuadrante',
  noFit: (count: number) =>
    `${count} cuadrantes medidos esta temporada: muy pocos bajo copas calificadas para ajustar el coeficiente. Mida parcelas en el pavimento bajo copas calificadas.`,
};
