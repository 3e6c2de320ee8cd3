/** One of few choices. */
interface Props {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly choose: (value: string) => void;
  /** Set apart, because it leaves something out. */
  readonly isActive?: boolean;
}

export function Choice({ label, value, choices, choose, isActive = false }: Props) {
  return (
    <label className="filter" data-active={isActive || undefined}>
      <span>{label}</span>
      <select value={value} onChange={(event) => choose(event.target.value)}>
        {choices.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
