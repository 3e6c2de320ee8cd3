/** The screen in Spanish: what the aerial picture proposes and suggests. */
import type { ImageryWords } from './en-imagery.ts';

export const IMAGERY_ES: ImageryWords = {
  picture: {
    tool: 'Desde la imagen',
    trace: 'Contorno desde la imagen',
    how: 'Pulse el centro de una copa, o Intro en la cruz: la imagen propone su contorno.',
    looking: 'Mirando la imagen …',
    made: (sure) =>
      `Propuesto desde la imagen; seguridad: ${sure}. Compárelo con el borde de la copa y arrastre sus puntos.`,
    another: 'Pulse en otro lugar para otro.',
    refused: {
      outside: () => 'Sin contorno: la imagen no muestra este lugar.',
      'no-foliage': () => 'Sin contorno: no se ven hojas a menos de un metro de este punto.',
      taken: () => 'Sin contorno: este lugar está en una copa ya delineada. Elíjala para corregirla.',
      'too-small': (area) => `Sin contorno: lo que se distingue aquí mide menos de ${area(3)}.`,
      'too-large': (area) =>
        `Sin contorno: el verde sigue aquí sobre más de ${area(400)}, como en un césped o un matorral.`,
      'no-colours': () => 'Sin contorno: la imagen no tiene rojo, verde y azul; no se distinguen hojas en ella.',
    },
    failed: (why) => `No se pudo leer la imagen. ${why}`,
  },
  suggestion: {
    ask: 'Parte pardeada según la imagen',
    looking: (share) => `Mirando todas las copas de la imagen … ${share}`,
    found: (range) => ` de las hojas iluminadas se ven pardeadas${range}.`,
    range: (lower, upper) => ` (intervalo del 95 %: de ${lower} a ${upper})`,
    rests: (lit, shaded, notLeaf) =>
      `De ${lit} píxeles de hojas iluminadas; ${shaded} de la copa en sombra, ${notLeaf} sin hojas.`,
    take: 'Ponerla en el formulario',
    taken: 'Sugerido por la imagen. Mire la copa y corrija lo que no sea correcto: sus iniciales lo hacen evaluación.',
    leave: 'Sin la imagen',
    confirmedBy: 'Confirma (iniciales)',
    flownOn: 'Fecha del vuelo',
    flownMissing: 'Indique el día en que se tomó la imagen.',
    evidence: (lit, limit, saturation) =>
      `${lit} píxeles de hojas iluminadas vistas desde arriba; pardeadas por debajo de ${limit} (Otsu), hojas desde saturación ${saturation}`,
    flags: {
      'leaf-off': 'Pocas copas de la imagen están verdes: quizá se tomó sin hojas.',
      haze: 'La imagen tiene bruma: la parte puede no ser exacta.',
      overexposed: 'Hay zonas sobreexpuestas en la imagen: la parte puede no ser exacta.',
    },
    refused: {
      'too-coarse': (lit, needed) =>
        `Sin sugerencia: se ven ${lit} píxeles de hojas iluminadas y hacen falta ${needed}. La copa es demasiado pequeña o está demasiado en sombra para esta imagen.`,
      'no-data': () => 'Sin sugerencia: la imagen no tiene datos sobre la mitad de esta copa.',
      outside: () => 'Sin sugerencia: la imagen no muestra toda esta copa.',
      'no-pixels': () => 'Sin sugerencia: ninguna copa está entera en la imagen.',
      'one-kind': () =>
        'Sin sugerencia: todas las hojas de la imagen se parecen; no se distinguen las pardeadas de las sanas.',
      'leaf-off': () => 'Sin sugerencia: casi ninguna copa de la imagen está verde. ¿Se tomó sin hojas?',
      'no-colours': () => 'Sin sugerencia: la imagen no tiene rojo, verde y azul.',
    },
    failed: (why) => `No se pudo leer la imagen. ${why}`,
  },
};
