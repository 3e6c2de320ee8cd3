/** The season before, reckoned when somebody first wants to see it, and again once records changed. */
import type { Session } from './session.ts';

export async function loadSeason({ store, reckoner }: Session): Promise<void> {
  const { earlierSeason, project, editing, seasonOf } = store.get();
  if (editing.can !== 'yes' || (earlierSeason !== null && seasonOf === project)) return;
  const season = await reckoner.ask('season', null).catch(() => null);
  store.change({ earlierSeason: season ?? 'none', seasonOf: project });
}

export function toggleSplit(session: Session): void {
  session.store.change(({ split }) => ({ split: !split }));
  void loadSeason(session);
}
