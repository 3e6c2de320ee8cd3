/** A line of text of the plan's settings. */
import { Input, Label, TextField } from 'react-aria-components';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
}

export function TextEntry({ label, value, change }: Props) {
  return (
    <TextField className="field" value={value} onChange={change}>
      <Label>{label}</Label>
      <Input autoComplete="off" />
    </TextField>
  );
}
