/** The words of the letter about one block, in English: plain, and no more than was found. */
import type { Action, Cause } from '@crownfall/survey';

export const LETTER_EN = {
  subject: (block: string) => `Dark pavement in ${block}`,
  dear: (name: string) => `Dear ${name},`,
  dearAll: 'Hello,',
  thanks: (about: string | null) =>
    about === null
      ? 'thank you for writing to us about the pavement here. This is what we found, and what happens next.'
      : `thank you for writing to us about ${about}. This is what we found, and what happens next.`,
  found: 'What we found',
  trees: (trees: number, rated: number) =>
    rated === trees
      ? `${treesText(trees)} in this block; all of them have been looked at this season. `
      : `${treesText(trees)} in this block; ${rated} of them have been looked at this season. `,
  noTrees: 'No tree stands in this block; crowns of trees nearby may reach over it. ',
  causes: {
    none: 'In none of them did we find anything that stains pavement. ',
    found: (count: number, cause: string) =>
      count === 1 ? `In one of them we found ${cause}. ` : `In ${count} of them we found ${cause}. `,
  },
  causeWords: {
    frass: 'insect larvae in the flowers, whose droppings fall and darken the pavement',
    honeydew: 'sap-sucking insects, whose sticky honeydew grows dark mould',
    fruit: 'fruit that falls and stains',
    leaf_litter: 'leaves that fall and stain as they rot',
    none: 'nothing that stains',
    unknown: 'damage of unknown cause',
  } satisfies Record<Cause, string>,
  stained: { before: 'We expect about ', of: ' of its ', range: ' of pavement to show stain, most likely ', end: '. ' },
  stainedNoRange: ' of pavement to show stain. ',
  nearby: (share: string) => `About ${share} of that comes from trees that stand in neighbouring blocks. `,
  uncalibrated:
    'These figures are estimates from the trees; they have not yet been checked by measuring the pavement. ',
  unrated: 'We cannot say yet whether the trees that were not looked at stain anything. ',
  other:
    'Pavement also darkens for reasons that have nothing to do with trees, such as rust from irrigation water or oil. Where no cause was found in a tree, we do not say it was the tree.',
  planned: 'What is planned',
  actions: {
    leave: 'No work is planned in this block this season.',
    inspect: 'The trees that were not looked at will be inspected',
    clean: 'The pavement will be cleaned',
    treat: 'The flowers of some trees may be treated while they are open',
    treat_and_clean: 'The flowers of some trees may be treated while they are open, and the pavement will be cleaned',
    replace: 'One tree will be replaced',
  } satisfies Record<Action, string>,
  week: (day: string) => `, in the week of ${day}.`,
  noWeek: '.',
  treatment:
    'Before any treatment a licensed applicator follows the product label and local codes and looks for bees at the flowers; while bees visit, nothing is sprayed. Water and drains are kept clear, and notices are posted where required.',
  noPlan: 'No plan has been made for this season yet.',
  why: (rank: number, blocks: number) =>
    `By need this block is number ${rank} of ${blocks}; money and crews go first where they help most.`,
  leave: {
    refoliates: (day: string) =>
      `Trees like these put out new leaves by themselves, here by about ${day}. Stain that is not renewed fades: `,
    fades: (day: string) => ` may still show on ${day} if nothing more falls.`,
  },
  not: 'What is not planned, and why',
  notAllowed: (action: string, why: string) => `${capital(action)}: not now. ${why}.`,
  notChosen: (action: string) => `${capital(action)}: possible, but the same money and time help more elsewhere.`,
  ask: 'Whom to ask',
  figures: (day: string | null) => (day === null ? '' : `Figures as of ${day}.`),
};

function treesText(trees: number): string {
  return trees === 1 ? 'One street tree stands' : `${trees} street trees stand`;
}

const capital = (text: string): string => text[0].toUpperCase() + text.slice(1);

export type LetterWords = typeof LETTER_EN;
