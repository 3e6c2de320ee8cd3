/** Files a person may give in place of those beside the project: daily temperatures, addresses. */
import { Button, FileTrigger } from 'react-aria-components';
import type { GivenFiles } from '../reckoning/plan-files.ts';
import { givePlanFile } from '../session/planning.ts';
import { useApp, useSession } from '../session/session.ts';
import { usePlanWords } from './use-plan-words.ts';

const KINDS = ['temperatures', 'addresses'] as const satisfies readonly (keyof GivenFiles)[];
const TYPES: Readonly<Record<keyof GivenFiles, string[]>> = {
  temperatures: ['.csv', 'text/csv'],
  addresses: ['.geojson', '.json', 'application/geo+json'],
};

export function PlanFileFields() {
  const session = useSession();
  const given = useApp((state) => state.planFiles);
  const words = usePlanWords();
  return (
    <div className="button-row">
      {KINDS.map((kind) => (
        <FileTrigger
          key={kind}
          acceptedFileTypes={TYPES[kind]}
          onSelect={(files) => givePlanFile(session, { [kind]: files?.[0] ?? null })}
        >
          <Button className="button">{given[kind]?.name ?? words.giveFile[kind]}</Button>
        </FileTrigger>
      ))}
    </div>
  );
}
