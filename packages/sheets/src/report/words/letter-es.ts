/** The words of the letter about one block, in Spanish. */
import type { LetterWords } from './letter-en.ts';

export const LETTER_ES: LetterWords = {
  subject: (block) => `Pavimento oscuro en ${block}`,
  dear: (name) => `Estimado/a ${name}:`,
  dearAll: 'Hola:',
  thanks: (about) =>
    about === null
      ? 'Gracias por escribirnos sobre el pavimento de este lugar. Esto es lo que hallamos y lo que sigue.'
      : `Gracias por escribirnos sobre ${about}. Esto es lo que hallamos y lo que sigue.`,
  found: 'Qué hallamos',
  trees: (trees, rated) =>
    rated === trees
      ? `En esta manzana ${treesText(trees)}; todos se revisaron esta temporada. `
      : `En esta manzana ${treesText(trees)}; ${rated} de ellos se revisaron esta temporada. `,
  noTrees: 'En esta manzana no hay ningún árbol; las copas de árboles cercanos pueden llegar hasta ella. ',
  causes: {
    none: 'En ninguno de ellos hallamos nada que manche el pavimento. ',
    found: (count, cause) =>
      count === 1 ? `En uno de ellos hallamos ${cause}. ` : `En ${count} de ellos hallamos ${cause}. `,
  },
  causeWords: {
    frass: 'larvas de insectos en las flores, cuyos excrementos caen y oscurecen el pavimento',
    honeydew: 'insectos que chupan savia, cuya melaza pegajosa cría un moho oscuro',
    fruit: 'frutos que caen y manchan',
    leaf_litter: 'hojas que caen y manchan al pudrirse',
    none: 'nada que manche',
    unknown: 'daños de causa desconocida',
  },
  stained: {
    before: 'Esperamos que unos ',
    of: ' de sus ',
    range: ' de pavimento muestren manchas, lo más probable ',
    end: '. ',
  },
  stainedNoRange: ' de pavimento muestren manchas. ',
  nearby: (share) => `Cerca del ${share} de ello viene de árboles de manzanas vecinas. `,
  uncalibrated: 'Estas cifras se estiman a partir de los árboles; todavía no se han comprobado midiendo el pavimento. ',
  unrated: 'Aún no podemos decir si los árboles que no se revisaron manchan algo. ',
  other:
    'El pavimento se oscurece también por causas ajenas a los árboles, como el óxido del agua de riego o el aceite. Donde no se halló causa en un árbol, no decimos que fuera el árbol.',
  planned: 'Qué está previsto',
  actions: {
    leave: 'No hay trabajos previstos en esta manzana esta temporada.',
    inspect: 'Se inspeccionarán los árboles que no se revisaron',
    clean: 'Se limpiará el pavimento',
    treat: 'Las flores de algunos árboles podrán tratarse mientras estén abiertas',
    treat_and_clean:
      'Las flores de algunos árboles podrán tratarse mientras estén abiertas, y se limpiará el pavimento',
    replace: 'Se sustituirá un árbol',
  },
  week: (day) => `, en la semana del ${day}.`,
  noWeek: '.',
  treatment:
    'Antes de cualquier tratamiento un aplicador con licencia sigue la etiqueta del producto y las normas locales y mira si hay abejas en las flores; mientras las haya, no se rocía nada. El agua y los sumideros se mantienen libres, y se ponen avisos donde se exija.',
  noPlan: 'Todavía no se ha hecho un plan para esta temporada.',
  why: (rank, blocks) =>
    `Por necesidad esta manzana es la número ${rank} de ${blocks}; el dinero y las cuadrillas van primero adonde más ayudan.`,
  leave: {
    refoliates: (day) =>
      `Árboles como estos echan hojas nuevas por sí solos, aquí hacia el ${day}. La mancha que no se renueva se aclara: `,
    fades: (day) => ` pueden verse aún el ${day} si no cae nada más.`,
  },
  not: 'Qué no está previsto y por qué',
  notAllowed: (action, why) => `${capital(action)}: por ahora no. ${why}.`,
  notChosen: (action) => `${capital(action)}: posible, pero el mismo dinero y tiempo ayudan más en otro lugar.`,
  ask: 'A quién preguntar',
  figures: (day) => (day === null ? '' : `Cifras a fecha de ${day}.`),
};

function treesText(trees: number): string {
  return trees === 1 ? 'hay un árbol de calle' : `hay ${trees} árboles de calle`;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);
