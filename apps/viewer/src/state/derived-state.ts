/** What follows from the state: the ranking under the present weights, what the filters leave, words and units. */
import { rankBlocks } from '@crownfall/priority';
import type { PaperName } from '@crownfall/sheets';
import { CRITERIA, type Criterion, type PlanSettings, type PrioritySettings } from '@crownfall/survey';
import type { RecordEdit, Weighing } from '../edits/edit.ts';
import { recordEdits, weighingOf } from '../edits/history.ts';
import { pendingEdits } from '../edits/outbox.ts';
import type { Units } from '../language/quantities.ts';
import { WORDS, type Words } from '../language/words.ts';
import type { BlockSummary, Layers, Project } from '../project/project.ts';
import type { AppState, Filters } from './app-state.ts';
import { derived } from './store.ts';

export const unitsOf = (state: AppState): Units => state.preferences.units ?? state.project?.units ?? 'metric';

export const paperOf = (state: AppState): PaperName => state.paper ?? (unitsOf(state) === 'us' ? 'letter' : 'a4');

export const wordsOf = (state: AppState): Words => WORDS[state.preferences.language];

/** The project's own weights and levels. */
export const ownWeighing = derived(
  (state: AppState) => [state.project?.run.settings.priority ?? null] as const,
  (priority): Weighing | null => priority && { weights: priority.weights, levels: priority.levels },
);

/** Weights and levels in force: those being moved, else the last edit's, else the project's. */
export const weighing = derived(
  (state: AppState) => [state.weighingDraft, state.history, ownWeighing(state)] as const,
  (draft, history, own): Weighing | null => draft ?? weighingOf(history) ?? own,
);

/** What is to be reckoned on top of the records at hand: all edits, or those that the server's store does not hold yet. */
export const editsInForce = ({ sharing, history }: AppState): readonly RecordEdit[] =>
  sharing ? pendingEdits(sharing.outbox) : recordEdits(history);

/** What the plan is made under: as changed here, else the project's own. */
export const planSettingsOf = ({ planSettings, project }: AppState): PlanSettings | null =>
  planSettings ?? project?.run.settings.plan ?? null;

/** Address of background tiles: the user's own, else the server's; null: none, or what is typed is not one yet. */
export function backgroundOf({ preferences, servedBackground }: AppState): string | null {
  const { background } = preferences;
  const isTiles = /^https?:\/\//.test(background) && ['{z}', '{x}', '{y}'].every((part) => background.includes(part));
  return isTiles ? background : servedBackground;
}

/** All blocks in rank order under the weighing in force. */
export const rankedBlocks = derived(
  (state: AppState) => [state.project, weighing(state)] as const,
  (project, weights): readonly BlockSummary[] => (project && weights ? blocksRanked(project, weights) : []),
);

/** Those that the filters leave, with the ranks they have among all. */
export const shownBlocks = derived(
  (state: AppState) => [rankedBlocks(state), blockFacts(state), state.filters] as const,
  (blocks, facts, filters): readonly BlockSummary[] => blocks.filter((block) => passes(block, facts, filters)),
);

/** A day's worth of blocks, (A). */
const DAY_BLOCKS = 5;

/** The blocks of the day; the first ones shown while none were chosen. */
export const dayBlocks = derived(
  (state: AppState) => [rankedBlocks(state), shownBlocks(state), state.day] as const,
  (ranked, shown, day): readonly BlockSummary[] =>
    day.length === 0 ? shown.slice(0, DAY_BLOCKS) : ranked.filter(({ blockId }) => day.includes(blockId)),
);

/** For each block the kinds of pavement that are stained in it and the hosts that stand in it. */
export const blockFacts = derived(
  (state: AppState) => [state.layers] as const,
  (layers) => ({
    kinds: layers ? gathered(layers, 'pavement', 'kind', ({ stained_m2 }) => Number(stained_m2) > 0) : NOTHING,
    hosts: layers ? gathered(layers, 'trees', 'host', () => true) : NOTHING,
  }),
);

/** All hosts of the project, in alphabetical order. */
export const hostNames = derived(
  (state: AppState) => [blockFacts(state)] as const,
  ({ hosts }): readonly string[] => [...new Set([...hosts.values()].flatMap((each) => [...each]))].sort(),
);

const NOTHING: ReadonlyMap<string, ReadonlySet<string>> = new Map();

/**
 * The blocks ranked by other weights or levels. Amounts stay what they were reckoned to be, so this is the ranking of a full
 * run with those settings (tested).
 */
export function blocksRanked(project: Project, weights: Weighing): readonly BlockSummary[] {
  const priority: PrioritySettings = { ...project.run.settings.priority, ...weights };
  const evidence = project.blocks.map(({ blockId, stainedM2, scoreParts }) => {
    const amounts = scoreParts.map(({ criterion, amount }) => [criterion, amount] as const);
    const byCriterion = Object.fromEntries(amounts) as Record<Criterion, number>;
    return { blockId, stainedM2: stainedM2.value, amounts: byCriterion };
  });
  return rankBlocks(evidence, priority).map(({ index, rank, score, scoreParts }) => ({
    ...project.blocks[index],
    rank,
    score,
    scoreParts,
  }));
}

export function isSameWeighing(a: Weighing | null, b: Weighing | null): boolean {
  if (!a || !b) return a === b;
  return CRITERIA.every(
    (criterion) =>
      a.weights[criterion] === b.weights[criterion] &&
      a.levels[criterion].none === b.levels[criterion].none &&
      a.levels[criterion].full === b.levels[criterion].full,
  );
}

function passes(
  block: BlockSummary,
  { kinds, hosts }: { readonly kinds: typeof NOTHING; readonly hosts: typeof NOTHING },
  filters: Filters,
): boolean {
  if (filters.bloom !== null && block.bloomState !== filters.bloom) return false;
  if (filters.kind !== null && !kinds.get(block.blockId)?.has(filters.kind)) return false;
  return filters.host === null || Boolean(hosts.get(block.blockId)?.has(filters.host));
}

function gathered(
  layers: Layers,
  layer: 'pavement' | 'trees',
  field: string,
  counts: (properties: Record<string, unknown>) => boolean,
): ReadonlyMap<string, ReadonlySet<string>> {
  const byBlock = new Map<string, Set<string>>();
  for (const { properties } of layers[layer].features) {
    if (!properties || typeof properties.block_id !== 'string' || !counts(properties)) continue;
    const value = properties[field];
    if (typeof value !== 'string') continue;
    const known = byBlock.get(properties.block_id);
    if (known) known.add(value);
    else byBlock.set(properties.block_id, new Set([value]));
  }
  return byBlock;
}
