/** Language, units, light; help. */
import type { ReactNode } from 'react';
import {
  Button,
  Dialog,
  DialogTrigger,
  Input,
  Label,
  Popover,
  Text,
  TextField,
  ToggleButton,
  ToggleButtonGroup,
} from 'react-aria-components';
import { WORDS } from '../language/words.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import type { Preferences } from '../state/app-state.ts';
import { KeysHelp } from './keys-help.tsx';
import { Sign } from './sign.tsx';

export function SettingsMenu() {
  const session = useSession();
  const { store } = session;
  const preferences = useApp((state) => state.preferences);
  const units = useUnits();
  const { settings } = useWords();
  const set = (part: Partial<Preferences>): void => store.change({ preferences: { ...preferences, ...part } });
  return (
    <DialogTrigger>
      <Button className="sign-button" aria-label={settings.open}>
        <Sign name="more" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <Dialog className="settings" aria-label={settings.open}>
          <Choice label={settings.units} value={units} choose={(value) => set({ units: value as 'metric' | 'us' })}>
            <ToggleButton id="metric" aria-label={settings.metric}>
              m²
            </ToggleButton>
            <ToggleButton id="us" aria-label={settings.us}>
              ft²
            </ToggleButton>
          </Choice>
          <Choice
            label={settings.language}
            value={preferences.language}
            choose={(value) => set({ language: value as 'en' | 'es' })}
          >
            <ToggleButton id="en">{WORDS.en.language}</ToggleButton>
            <ToggleButton id="es">{WORDS.es.language}</ToggleButton>
          </Choice>
          <Choice
            label={settings.theme}
            value={preferences.theme}
            choose={(value) => set({ theme: value as Preferences['theme'] })}
          >
            {(['system', 'light', 'dark'] as const).map((theme) => (
              <ToggleButton key={theme} id={theme}>
                {settings.themes[theme]}
              </ToggleButton>
            ))}
          </Choice>
          <TextField
            className="field"
            type="url"
            value={preferences.background}
            onChange={(background) => set({ background: background.trim() })}
          >
            <Label>{settings.background}</Label>
            <Input placeholder="https://…/{z}/{x}/{y}.png" autoComplete="off" />
            <Text slot="description">{settings.backgroundHow}</Text>
          </TextField>
          <div className="button-row">
            <KeysHelp />
            <Button slot="close" className="button" onPress={() => set({ tourSeen: false })}>
              {settings.tour}
            </Button>
          </div>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (value: string) => void;
  readonly children: ReactNode;
}

function Choice({ label, value, choose, children }: ChoiceProps) {
  return (
    <div className="choice">
      <span aria-hidden="true">{label}</span>
      <ToggleButtonGroup
        className="switch"
        aria-label={label}
        disallowEmptySelection
        selectedKeys={[value]}
        onSelectionChange={(keys) => choose(String([...keys][0]))}
      >
        {children}
      </ToggleButtonGroup>
    </div>
  );
}
