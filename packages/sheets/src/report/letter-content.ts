/** A letter about one block, for whoever complained: what was found, what is planned and when, what is not and why, whom to ask. */
import type { BlockResult, TreeResult } from '@crownfall/assessment';
import { actionName, CAUSES, type Cause, describeReason, type Language } from '@crownfall/survey';
import { areaText, dayText, percentText, type Units, withDays } from '../quantities.ts';
import type { PlannedBlock } from './any-plan.ts';
import type { Inline, Part, ReportContent, Run } from './content.ts';
import { blockRange, blockStained } from './figures.ts';
import { isTreated, PLAN_FILE } from './plan-reading.ts';
import { REPORT_WORDS, type Reading, type ReportInput } from './reading.ts';
import { blockName } from './sections/ranking-section.ts';
import { LETTER_EN, type LetterWords } from './words/letter-en.ts';
import { LETTER_ES } from './words/letter-es.ts';

const LETTER_WORDS: Readonly<Record<Language, LetterWords>> = { en: LETTER_EN, es: LETTER_ES };

export interface LetterOptions {
  readonly blockId: string;
  readonly language: Language;
  readonly units?: Units;
  /** Whom it is to. */
  readonly to?: string;
  /** What they wrote about, in the sentence "thank you for writing to us about …". */
  readonly about?: string;
  /** Who answers questions, and how to reach them; one line each. */
  readonly ask: readonly string[];
}

/**
 * The letter as content. Causes are named only where a person found them in a crown; unrated trees are blamed for nothing.
 * Without a plan it says that there is none.
 * @throws RangeError for an unknown block, with those that exist, or when nobody is named to ask.
 */
export function letterContent(input: ReportInput, options: LetterOptions): ReportContent {
  const { assessment } = input;
  const block = assessment.blocks.find(({ blockId }) => blockId === options.blockId);
  if (block === undefined) {
    const known = assessment.blocks.map(({ blockId }) => blockId).join(', ');
    throw new RangeError(`letter: expected the id of a block (${known}), got ${options.blockId}`);
  }
  if (options.ask.length === 0) throw new RangeError('letter: expected whom to ask, got nobody');
  const { language, units = assessment.units } = options;
  const reading: Reading = { ...input, language, units, words: REPORT_WORDS[language] };
  const words = LETTER_WORDS[language];
  const { asOf, calibrated } = assessment.run;
  const day = asOf === null ? null : dayText(asOf, language);
  const paragraph = (...text: Run): Part => ({ part: 'paragraph', text });
  const heading = (text: string): Part => ({ part: 'heading', level: 2, small: true, text });
  return {
    language,
    title: words.subject(block.name ?? block.blockId),
    about: [assessment.title, day].filter((text) => text !== null).join(' · '),
    running: [blockName(block), ...(calibrated ? [] : [reading.words.uncalibrated])].join(' · '),
    parts: [
      paragraph(options.to === undefined ? words.dearAll : words.dear(options.to)),
      paragraph(words.thanks(options.about ?? null)),
      heading(words.found),
      paragraph(...foundRun(reading, block, words)),
      paragraph(words.other),
      heading(words.planned),
      ...plannedParts(reading, block, words),
      ...notParts(reading, block, words),
      ...cautionParts(reading, block, words),
      heading(words.ask),
      ...options.ask.map((line) => paragraph(line)),
      { part: 'paragraph', text: [words.figures(day)], tone: 'quiet' },
    ],
  };
}

function foundRun(reading: Reading, block: BlockResult, words: LetterWords): Run {
  const { assessment, units } = reading;
  const own = assessment.trees.filter(({ blockId }) => blockId === block.blockId);
  const range = blockRange(block, units);
  const { stained } = words;
  const pavement: Inline = {
    figure: areaText(block.pavementM2, units),
    from: [{ file: 'blocks.geojson', row: block.blockId, column: 'pavement_m2' }],
  };
  return [
    block.trees === 0 ? words.noTrees : words.trees(block.trees, block.treesRated),
    ...(block.treesRated === 0 ? [] : causeLines(own, words)),
    stained.before,
    blockStained(block, units),
    stained.of,
    pavement,
    ...(range === null ? [words.stainedNoRange] : [stained.range, range, stained.end]),
    ...nearbyLine(reading, block, words),
    ...(block.treesRated < block.trees ? [words.unrated] : []),
    ...(block.calibrated ? [] : [words.uncalibrated]),
  ];
}

/** Causes that a person found, with how many crowns have them; most first. */
function causeLines(own: readonly TreeResult[], words: LetterWords): readonly string[] {
  const count = (cause: Cause) =>
    own.filter((tree) => tree.severityFrom === 'rating' && tree.dose > 0 && tree.cause === cause).length;
  const found = CAUSES.map((cause) => ({ cause, trees: count(cause) })).filter(({ trees }) => trees > 0);
  if (found.length === 0) return [words.causes.none];
  return found
    .sort((a, b) => b.trees - a.trees)
    .map(({ cause, trees }) => words.causes.found(trees, words.causeWords[cause]));
}

/** Less than this part from neighbours is not worth a sentence. */
const LEAST_NEARBY = 0.05;

/** The part that rated and unrated trees of other blocks have in the block's stain. */
function nearbyLine({ assessment }: Reading, block: BlockResult, words: LetterWords): readonly string[] {
  const standsIn = new Map(assessment.trees.map(({ treeId, blockId }) => [treeId, blockId]));
  const theirs = assessment.blame
    .filter(({ blockId, treeId }) => blockId === block.blockId && standsIn.get(treeId) !== block.blockId)
    .reduce((sum, { stainedM2 }) => sum + stainedM2.value, 0);
  const share = block.stainedM2.value === 0 ? 0 : theirs / block.stainedM2.value;
  return share < LEAST_NEARBY ? [] : [words.nearby(percentText(share))];
}

function plannedOf({ plan }: Reading, { blockId }: BlockResult): PlannedBlock | undefined {
  return plan?.feasible ? plan.blocks.find((each) => each.blockId === blockId) : undefined;
}

function plannedParts(reading: Reading, block: BlockResult, words: LetterWords): readonly Part[] {
  const { language, assessment } = reading;
  const planned = plannedOf(reading, block);
  if (planned === undefined) return [{ part: 'paragraph', text: [words.noPlan] }];
  const { action, weekOf } = planned;
  const why = words.why(block.rank, assessment.blocks.length);
  if (action === 'leave')
    return [
      { part: 'paragraph', text: [`${words.actions.leave} ${why}`] },
      { part: 'paragraph', text: outlookRun(reading, planned, words) },
    ];
  const when = weekOf === null ? words.noWeek : words.week(dayText(weekOf, language));
  return [{ part: 'paragraph', text: [`${words.actions[action]}${when}`] }];
}

/** Wherever treatment is named, what governs it stands in the same letter. */
function cautionParts(reading: Reading, block: BlockResult, words: LetterWords): readonly Part[] {
  const planned = plannedOf(reading, block);
  const named = planned?.offers.some(({ action, forbidden }) => action === 'treat' && forbidden.length > 0) ?? false;
  const treated = planned !== undefined && isTreated(planned);
  return named || treated ? [{ part: 'paragraph', text: [words.treatment] }] : [];
}

/** What becomes of trees and stain when nothing is done. */
function outlookRun({ language, units }: Reading, { blockId, leave }: PlannedBlock, words: LetterWords): Run {
  if (leave.refoliatedBy === null) return [];
  return [
    words.leave.refoliates(dayText(leave.refoliatedBy, language)),
    { figure: areaText(leave.fadedM2, units), from: [{ file: PLAN_FILE, row: blockId, column: 'leave.faded_m2' }] },
    words.leave.fades(dayText(leave.onDay, language)),
  ];
}

/** Each further action that would help, and what forbids it or that it was not chosen. Nothing without a plan. */
function notParts(reading: Reading, block: BlockResult, words: LetterWords): readonly Part[] {
  const { language } = reading;
  const planned = plannedOf(reading, block);
  if (planned === undefined) return [];
  const taken = planned.action === 'treat_and_clean' ? ['treat', 'clean', 'treat_and_clean'] : [planned.action];
  const others = planned.offers.filter(
    ({ action, avoidedM2, forbidden }) =>
      (action === 'clean' || action === 'treat' || action === 'replace') &&
      !taken.includes(action) &&
      (forbidden.length > 0 || avoidedM2.value > 0),
  );
  if (others.length === 0) return [];
  const items = others.map(({ action, forbidden }): Run => {
    const name = actionName(action, language);
    const reasons = forbidden.map((reason) => withDays(describeReason(reason, language).what, language));
    return [reasons.length === 0 ? words.notChosen(name) : words.notAllowed(name, reasons.slice(0, 2).join('. '))];
  });
  return [
    { part: 'heading', level: 2, small: true, text: words.not },
    { part: 'list', items },
  ];
}
