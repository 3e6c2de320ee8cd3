/** Weightings under a name, used again or compared side by side. */
import { useState } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  TextField,
} from 'react-aria-components';
import type { Scenario } from '../edits/edit.ts';
import { scenariosOf } from '../edits/history.ts';
import { deleteScenario, saveScenario, takeScenario } from '../session/editing.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { Sign } from '../shell/sign.tsx';
import type { AppState } from '../state/app-state.ts';
import { derived } from '../state/store.ts';
import { ScenarioTable } from './scenario-table.tsx';

const savedScenarios = derived((state: AppState) => [state.history] as const, scenariosOf);

export function Scenarios() {
  const scenarios = useApp(savedScenarios);
  const words = useWords();
  return (
    <details className="folded scenarios">
      <summary>
        {words.scenarios.title}
        {scenarios.length > 0 ? <span className="count">{scenarios.length}</span> : null}
      </summary>
      {scenarios.length === 0 ? <p className="lead">{words.scenarios.empty}</p> : null}
      <ul>
        {scenarios.map((scenario) => (
          <ScenarioRow key={scenario.id} scenario={scenario} />
        ))}
      </ul>
      <SaveForm />
      {scenarios.length > 0 ? <CompareDialog scenarios={scenarios} /> : null}
    </details>
  );
}

function ScenarioRow({ scenario }: { readonly scenario: Scenario }) {
  const session = useSession();
  const words = useWords();
  return (
    <li>
      <span>{scenario.name}</span>
      <Button
        className="button"
        aria-label={`${words.scenarios.use}: ${scenario.name}`}
        onPress={() => void takeScenario(session, scenario)}
      >
        {words.scenarios.use}
      </Button>
      <Button
        className="sign-button"
        aria-label={words.scenarios.remove(scenario.name)}
        onPress={() => void deleteScenario(session, scenario.id)}
      >
        <Sign name="close" />
      </Button>
    </li>
  );
}

function SaveForm() {
  const session = useSession();
  const words = useWords();
  const [name, setName] = useState('');
  return (
    <form
      className="inline-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === '') return;
        void saveScenario(session, name.trim());
        setName('');
      }}
    >
      <TextField value={name} onChange={setName}>
        <Label>{words.scenarios.name}</Label>
        <Input maxLength={60} />
      </TextField>
      <Button className="button" type="submit" isDisabled={name.trim() === ''}>
        {words.scenarios.save}
      </Button>
    </form>
  );
}

function CompareDialog({ scenarios }: { readonly scenarios: readonly Scenario[] }) {
  const words = useWords();
  return (
    <DialogTrigger>
      <Button className="button">{words.scenarios.compare}</Button>
      <ModalOverlay className="veil" isDismissable>
        <Modal className="modal wide">
          <Dialog>
            <Heading slot="title">{words.scenarios.compare}</Heading>
            <p>{words.scenarios.compareLead}</p>
            <ScenarioTable scenarios={scenarios} />
            <Button slot="close" className="button">
              {words.close}
            </Button>
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
