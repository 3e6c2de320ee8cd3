/** The screen in English: the tour and the keys. */

export type HelpWords = typeof HELP_EN;

export const HELP_EN = {
  tour: {
    title: 'A short look round',
    next: 'Next',
    back: 'Back',
    done: 'Start working',
    skip: 'Skip',
    step: (n: number, of: number) => `${n} of ${of}`,
    steps: [
      {
        title: 'One map, three benches',
        text: 'This is an invented town. Brown pavement is expected to show stain under crowns that drop something; hatching marks the worst. “Weigh” orders the blocks, “Outline” corrects crowns and rates them, “Plan” finds what to do with the money there is.',
      },
      {
        title: 'Every rank explains itself',
        text: 'Open a block: its bars say what each criterion gave, in square metres, complaints, per cent, and what would have to change for another block to come first.',
      },
      {
        title: 'Move a weight',
        text: 'Under “Weights and levels” the ranking follows your hand. Save a scenario, compare it with another, export exactly what you see.',
      },
      {
        title: 'Draw and watch the rank',
        text: 'On the bench “Outline”, choose a crown and drag a point: its area, its pavement, the block’s stain and rank change as you move.',
      },
      {
        title: 'Nothing is lost',
        text: 'Every change is kept in this browser at once, survives a crash, and can be undone with Ctrl+Z. Export the layers to hand them on.',
      },
    ],
  },
  keys: {
    title: 'Keys',
    rows: [
      ['Ctrl+Z / Ctrl+Shift+Z', 'undo, redo'],
      ['1–9, 0', 'browned share: 4 is 40 %, 4 5 is 45 %, 1 0 0 is all'],
      ['B · D', 'digits go to browned, to defoliated'],
      ['G · C · S', 'gall load, cause, how sure: each press the next'],
      ['E', 'what was seen'],
      ['Enter', 'save the rating, go to the next unrated tree'],
      ['N · P', 'next, previous unrated tree'],
      ['O', 'correct the outline of the chosen crown'],
      ['T', 'its outline from the picture; of a new crown when none is chosen'],
      ['I', 'browned share from the picture; once more takes it'],
      ['Arrows, Enter, F, Esc', 'drawing by keyboard, with the map in focus'],
    ],
  },
};
