/** The season's plan follows its settings: money, crew, prices, conditions. */
import type { PlanSettings } from '@crownfall/survey';
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

/** Asks for the plan under the present settings; what changes while an answer is under way is asked for after it. */
export async function plan(session: Session): Promise<void> {
  const { store, reckoner } = session;
  if (store.get().planning.state === 'soon' || store.get().editing.can !== 'yes') return;
  for (;;) {
    const settings = planSettingsOf(store.get());
    const { project } = store.get();
    if (!settings) return;
    store.change({ planning: { state: 'soon' } });
    const planning = await reckoner.ask('plan', settings).then(
      (outcome) => ({ state: 'made', outcome }) as const,
      (error: Error) => ({ state: 'failed', why: error.message }) as const,
    );
    const now = store.get();
    if (planSettingsOf(now) !== settings || now.project !== project) continue;
    return store.change({ planning });
  }
}
