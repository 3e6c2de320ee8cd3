/** The walk's controls: each at least 44 pixels, labelled in words, worked with one thumb. */
import type { ReactNode } from 'react';
import { goBack, useWords } from '../doing/walk-session.ts';
import { Mark } from './mark.tsx';

/** The head of a screen that leads back to the tree. */
export function ScreenHead({ title }: { readonly title: string }) {
  const words = useWords();
  return (
    <header className="screen-head">
      <button type="button" className="icon" aria-label={words.back} onClick={goBack}>
        <Mark name="back" />
      </button>
      <h1>{title}</h1>
    </header>
  );
}

interface ChipsProps<Value extends string | number> {
  readonly label: string;
  readonly of: readonly Value[];
  readonly words: Readonly<Record<Value, string>>;
  readonly value: Value | null;
  /** Null: the chosen one was tapped again. */
  readonly choose: (value: Value | null) => void;
  readonly hidden?: boolean;
}

/** One of a few. */
export function Chips<Value extends string | number>({ label, of, words, value, choose, hidden }: ChipsProps<Value>) {
  return (
    <fieldset className="chips">
      <legend className={hidden ? 'spoken-only' : undefined}>{label}</legend>
      <div className="chip-row">
        {of.map((each) => (
          <button
            key={each}
            type="button"
            className="chip"
            aria-pressed={value === each}
            onClick={() => choose(value === each ? null : each)}
          >
            {words[each]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

interface ManyProps<Value extends string> {
  readonly label: string;
  readonly of: readonly Value[];
  readonly words: Readonly<Record<Value, string>>;
  readonly values: readonly Value[];
  readonly change: (values: readonly Value[]) => void;
}

/** Any of a few. */
export function ManyChips<Value extends string>({ label, of, words, values, change }: ManyProps<Value>) {
  const toggled = (each: Value): readonly Value[] =>
    values.includes(each) ? values.filter((other) => other !== each) : [...values, each];
  return (
    <fieldset className="chips">
      <legend>{label}</legend>
      <div className="chip-row">
        {of.map((each) => (
          <button
            key={each}
            type="button"
            className="chip"
            aria-pressed={values.includes(each)}
            onClick={() => change(toggled(each))}
          >
            {words[each]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

interface StepperProps {
  readonly label: string;
  readonly shown: string;
  /** 0–1, drawn as a bar; null draws none. */
  readonly share?: number | null;
  readonly less: string;
  readonly more: string;
  readonly step: (by: 1 | -1) => void;
  readonly children?: ReactNode;
}

/** A figure between two big buttons. */
export function Stepper({ label, shown, share, less, more, step, children }: StepperProps) {
  return (
    <section className="stepper" aria-label={label}>
      <div className="stepper-line">
        <button type="button" className="big-step" aria-label={less} onClick={() => step(-1)}>
          <Mark name="minus" />
        </button>
        <div className="stepper-figure">
          <span className="stepper-label">{label}</span>
          <output aria-live="polite">{shown}</output>
          {share === undefined ? null : (
            <span className="bar" aria-hidden="true">
              <span style={{ width: `${(share ?? 0) * 100}%` }} />
            </span>
          )}
        </div>
        <button type="button" className="big-step" aria-label={more} onClick={() => step(1)}>
          <Mark name="plus" />
        </button>
      </div>
      {children}
    </section>
  );
}
