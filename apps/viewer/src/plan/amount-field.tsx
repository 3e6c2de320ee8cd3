/** A number of the plan's settings; an empty field means that none is given. */
import { Input, Label, NumberField } from 'react-aria-components';

interface Props {
  readonly label: string;
  readonly value: number | null;
  readonly change: (value: number | null) => void;
  readonly unit?: string;
  readonly hideLabel?: boolean;
  readonly least?: number;
  readonly whole?: boolean;
}

export function AmountField({ label, value, change, unit, hideLabel = false, least = 0, whole = false }: Props) {
  return (
    <NumberField
      className="number"
      value={value ?? Number.NaN}
      minValue={least}
      formatOptions={{ maximumFractionDigits: whole ? 0 : 2 }}
      onChange={(next) => {
        const given = Number.isFinite(next) ? next : null;
        if (given !== value) change(given);
      }}
    >
      <Label className={hideLabel ? 'spoken-only' : undefined}>{label}</Label>
      <span className="with-unit">
        <Input />
        {unit === undefined ? null : <span aria-hidden="true">{unit}</span>}
      </span>
    </NumberField>
  );
}
