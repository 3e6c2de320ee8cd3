/** The season's plan follows its settings: money, crew, prices, conditions, files; and what lies about the chosen block. */
import type { PlanSettings } from '@crownfall/survey';
import type { GivenFiles } from '../reckoning/plan-files.ts';
import type { PlanOutcome } from '../reckoning/plan-maker.ts';
import type { AppState } from '../state/app-state.ts';
import { planSettingsOf } from '../state/derived-state.ts';
import { saveDraft } from './drawing.ts';
import type { Session } from './session.ts';

export function changePlan(session: Session, part: Partial<PlanSettings>): void {
  const settings = planSettingsOf(session.store.get());
  if (!settings) return;
  session.store.change({ planSettings: { ...settings, ...part } });
  saveDraft(session);
  void plan(session);
}

/** Plans with a file in place of the one that the settings name; as long as the page is open. */
export function givePlanFile(session: Session, part: Partial<GivenFiles>): void {
  session.store.change(({ planFiles }) => ({ planFiles: { ...planFiles, ...part } }));
  void plan(session);
}

/** Asks for the plan under the present settings; what changes while an answer is under way is asked for after it. */
export async function plan(session: Session): Promise<void> {
  const { store, reckoner } = session;
  if (store.get().planning.state === 'soon' || store.get().editing.can !== 'yes') return;
  for (;;) {
    const settings = planSettingsOf(store.get());
    const { project, planFiles: given } = store.get();
    if (!settings) return;
    store.change(({ planning: before }) => ({ planning: { state: 'soon', last: lastOutcome(before) } }));
    const planning = await reckoner.ask('plan', { settings, given }).then(
      (outcome) => ({ state: 'made', outcome }) as const,
      (error: Error) => ({ state: 'failed', why: error.message }) as const,
    );
    const now = store.get();
    if (planSettingsOf(now) !== settings || now.project !== project || now.planFiles !== given) continue;
    return store.change({ planning });
  }
}

/** What there is to show: the plan that was made, or the one before while the next is looked for. */
export function lastOutcome(planning: AppState['planning']): PlanOutcome | null {
  if (planning.state === 'made') return planning.outcome;
  return planning.state === 'soon' ? planning.last : null;
}

/** Water, drains and wells about the chosen block; none without a plan. */
export async function showWater({ store, reckoner }: Session): Promise<void> {
  const { blockId, planning } = store.get();
  // While a plan is looked for, the last one's surroundings stay.
  if (planning.state === 'soon' && planning.last) return;
  const isPlanned = planning.state === 'made' && blockId !== null;
  const blockWater = isPlanned ? await reckoner.ask('water', blockId).catch(() => null) : null;
  if (store.get().blockId === blockId) store.change({ blockWater });
}

export function hideWater({ store }: Session): void {
  store.change({ blockWater: null });
}
