/** The plan as files; each says what governs a treatment. */
import type { WorkPlan } from '@crownfall/priority';
import { Button } from 'react-aria-components';
import { exportPlan } from '../session/plan-exports.ts';
import { useSession } from '../session/session.ts';
import { usePlanWords } from './use-plan-words.ts';

const FILES = ['plan.csv', 'plan.geojson', 'plan.json'] as const;

export function PlanExports({ plan }: { readonly plan: WorkPlan }) {
  const session = useSession();
  const words = usePlanWords();
  return (
    <fieldset className="button-row plan-exports">
      <legend className="spoken-only">{words.files.title}</legend>
      {FILES.map((name) => (
        <Button key={name} className="button" onPress={() => exportPlan(session, plan, name)}>
          {words.files[name]}
        </Button>
      ))}
    </fieldset>
  );
}
