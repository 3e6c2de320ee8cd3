/** What must be minded before the plan's treatments: groups that would follow themselves, and whom to tell. */
import type { WorkPlan } from '@crownfall/priority';
import { rotationReminders } from '@crownfall/survey';
import { Button } from 'react-aria-components';
import { length } from '../language/quantities.ts';
import { exportPlan } from '../session/plan-exports.ts';
import { useApp, useSession, useUnits } from '../session/session.ts';
import { usePlanWords } from './use-plan-words.ts';

export function BeforeTreating({ plan }: { readonly plan: WorkPlan }) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const units = useUnits();
  const words = usePlanWords();
  const { treated, rotation, notices, settings } = plan;
  if (treated.length === 0) return null;
  const blocks = new Set(treated.map(({ blockId }) => blockId)).size;
  return (
    <section className="before-treating" aria-labelledby="before-title">
      <h2 id="before-title">{words.before}</h2>
      <p>{words.treatedTrees(treated.length, blocks)}</p>
      {rotation.length === 0 ? null : (
        <ul className="caveat">
          {rotationReminders(rotation, language).map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {settings.notice_m === null || notices.length === 0 ? (
        <p>{words.noNotices}</p>
      ) : (
        <div className="button-row">
          <p>{words.notices(notices.length, length(settings.notice_m, units))}</p>
          <Button className="button" onPress={() => exportPlan(session, plan, 'notices.csv')}>
            {words.files['notices.csv']}
          </Button>
        </div>
      )}
    </section>
  );
}
