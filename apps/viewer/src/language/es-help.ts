/** The screen in Spanish: the tour and the keys. */
import type { HelpWords } from './en-help.ts';

export const HELP_ES: HelpWords = {
  tour: {
    title: 'Un breve recorrido',
    next: 'Siguiente',
    back: 'Atrás',
    done: 'Empezar a trabajar',
    skip: 'Saltar',
    step: (n, of) => `${n} de ${of}`,
    steps: [
      {
        title: 'Un mapa, tres mesas',
        text: 'Este pueblo es inventado. El pavimento pardo se espera manchado bajo copas que sueltan algo; el rayado marca lo peor. «Ponderar» ordena las manzanas, «Delinear» corrige copas y las evalúa, «Planear» busca qué hacer con el dinero que hay.',
      },
      {
        title: 'Cada puesto se explica',
        text: 'Abra una manzana: sus barras dicen qué dio cada criterio, en metros cuadrados, quejas, por ciento, y qué tendría que cambiar para que otra fuera la primera.',
      },
      {
        title: 'Mueva un peso',
        text: 'En «Pesos y niveles» el orden sigue a su mano. Guarde un escenario, compárelo con otro, exporte exactamente lo que ve.',
      },
      {
        title: 'Dibuje y mire el puesto',
        text: 'En la mesa «Delinear», elija una copa y arrastre un punto: su área, su pavimento, la mancha y el puesto de la manzana cambian al moverse.',
      },
      {
        title: 'Nada se pierde',
        text: 'Cada cambio se guarda al momento en este navegador, sobrevive a un fallo y se deshace con Ctrl+Z. Exporte las capas para entregarlas.',
      },
    ],
  },
  keys: {
    title: 'Teclas',
    rows: [
      ['Ctrl+Z / Ctrl+Mayús+Z', 'deshacer, rehacer'],
      ['1–9, 0', 'parte pardeada: 4 es 40 %, 4 5 es 45 %, 1 0 0 es todo'],
      ['B · D', 'las cifras van a pardeada, a defoliada'],
      ['G · C · S', 'agallas, causa, seguridad: cada vez la siguiente'],
      ['E', 'qué se vio'],
      ['Intro', 'guardar la evaluación e ir al siguiente árbol'],
      ['N · P', 'siguiente, anterior sin evaluar'],
      ['O', 'corregir el contorno de la copa elegida'],
      ['T', 'su contorno desde la imagen; de una copa nueva si no hay ninguna elegida'],
      ['I', 'parte pardeada según la imagen; otra vez la acepta'],
      ['Flechas, Intro, F, Esc', 'dibujar con el teclado, con el mapa enfocado'],
    ],
  },
};
