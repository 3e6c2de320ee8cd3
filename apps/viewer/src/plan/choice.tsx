/** One of few choices. */
interface Props {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly choose: (value: string) => void;
}

export function Choice({ label, value, choices, choose }: Props) {
  return (
    <label className="filter">
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
