/** A length field in metres or feet; the value it gives is always metres. */
import { METRES_PER_FOOT } from '@crownfall/geometry';
import { Input, Label, NumberField } from 'react-aria-components';
import { useUnits } from '../session/session.ts';

interface Props {
  readonly label: string;
  readonly valueM: number;
  readonly change: (valueM: number) => void;
  readonly hideLabel?: boolean;
}

export function MeasureField({ label, valueM, change, hideLabel = false }: Props) {
  const units = useUnits();
  const unit = units === 'us' ? METRES_PER_FOOT : 1;
  const shown = Math.round((valueM / unit) * 100) / 100;
  return (
    <NumberField
      className="number measure"
      value={shown}
      minValue={0}
      step={0.1}
      onChange={(value) => {
        if (Number.isFinite(value) && value !== shown) change(Math.round(value * unit * 1e4) / 1e4);
      }}
      formatOptions={{ maximumFractionDigits: 2 }}
    >
      <Label className={hideLabel ? 'spoken-only' : undefined}>{label}</Label>
      <span className="with-unit">
        <Input />
        <span aria-hidden="true">{units === 'us' ? 'ft' : 'm'}</span>
      </span>
    </NumberField>
  );
}
