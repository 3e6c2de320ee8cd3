/** Which blocks are listed and marked: by stained pavement, by host, by state of the bloom. */
import { PAVEMENT_KINDS } from '@crownfall/survey';
import { Button } from 'react-aria-components';
import { useApp, useSession, useWords } from '../session/session.ts';
import { Choice } from '../shell/choice.tsx';
import type { Filters as FilterState } from '../state/app-state.ts';
import { blockFacts, hostNames } from '../state/derived-state.ts';

const BLOOM_STATES = ['before', 'open', 'closing', 'closed', 'unknown'] as const;

export function Filters() {
  const { store } = useSession();
  const filters = useApp((state) => state.filters);
  const facts = useApp(blockFacts);
  const hosts = useApp(hostNames);
  const words = useWords();
  const kinds = valuesOf(facts.kinds);
  const set = (part: Partial<FilterState>): void => store.change({ filters: { ...filters, ...part } });
  const active = Object.values(filters).some((value) => value !== null);
  return (
    <fieldset className="filters">
      <legend className="spoken-only">{words.filters.title}</legend>
      <Filter
        label={words.filters.kind}
        value={filters.kind}
        choices={PAVEMENT_KINDS.filter((kind) => kinds.has(kind)).map((kind) => [kind, words.kinds[kind]])}
        choose={(kind) => set({ kind })}
      />
      <Filter
        label={words.filters.host}
        value={filters.host}
        choices={hosts.map((host) => [host, host])}
        choose={(host) => set({ host })}
      />
      <Filter
        label={words.filters.bloom}
        value={filters.bloom}
        choices={BLOOM_STATES.map((state) => [state, words.bloom[state]])}
        choose={(bloom) => set({ bloom })}
      />
      {active ? (
        <Button className="button quiet" onPress={() => set({ kind: null, host: null, bloom: null })}>
          {words.filters.clear}
        </Button>
      ) : null}
    </fieldset>
  );
}

function valuesOf(byBlock: ReadonlyMap<string, ReadonlySet<string>>): ReadonlySet<string> {
  return new Set([...byBlock.values()].flatMap((values) => [...values]));
}

interface FilterProps {
  readonly label: string;
  readonly value: string | null;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly choose: (value: string | null) => void;
}

function Filter({ label, value, choices, choose }: FilterProps) {
  const { filters } = useWords();
  return (
    <Choice
      label={label}
      value={value ?? ''}
      isActive={value !== null}
      choices={[['', filters.any], ...choices]}
      choose={(chosen) => choose(chosen || null)}
    />
  );
}
