/** The rating beside the map: every field by hand or by one key, and what it would blame the crown for. */
import { CAUSES, CONFIDENCES, GALL_LOADS, gateOf } from '@crownfall/survey';
import type { ReactNode } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { changeRating, goToUnrated, saveRating } from '../session/rating.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { PictureShare } from './picture-share.tsx';
import { missingFrom, type RatingDraft } from './rating-draft.ts';

export function RatingForm() {
  const draft = useApp((state) => state.ratingDraft);
  return draft ? <Form draft={draft} /> : null;
}

function Form({ draft }: { readonly draft: RatingDraft }) {
  const session = useSession();
  const words = useWords();
  const { rating, suggestion } = words;
  const set = (part: Partial<RatingDraft>): void => changeRating(session, part);
  return (
    <section className="rating" aria-labelledby="rating-title">
      <h2 id="rating-title">{rating.title}</h2>
      <div className="shares">
        <ShareField
          name={rating.browned}
          sign="B"
          pct={draft.brownedPct}
          active={draft.digitsTo === 'browned'}
          change={(brownedPct) => set({ brownedPct })}
        />
        <ShareField
          name={rating.defoliated}
          sign="D"
          pct={draft.defoliatedPct}
          active={draft.digitsTo === 'defoliated'}
          change={(defoliatedPct) => set({ defoliatedPct })}
        />
      </div>
      <PictureShare draft={draft} />
      <Choice
        name={rating.gallLoad}
        sign="G"
        value={draft.gallLoad}
        of={GALL_LOADS}
        words={rating.galls}
        choose={(gallLoad) => set({ gallLoad })}
      />
      <Choice
        name={rating.cause}
        sign="C"
        value={draft.cause}
        of={CAUSES}
        words={rating.causes}
        choose={(cause) => set({ cause })}
      />
      <Choice
        name={rating.confidence}
        sign="S"
        value={draft.confidence}
        of={CONFIDENCES}
        words={rating.confidences}
        choose={(confidence) => set({ confidence })}
      />
      <TextField className="field" value={draft.evidence} onChange={(evidence) => set({ evidence })}>
        <Label>
          {rating.evidence} <kbd>E</kbd>
        </Label>
        <Input id="rating-evidence" placeholder={rating.evidenceHint} onKeyDown={leaveOnEscape} />
      </TextField>
      <div className="pair">
        <TextField className="field" value={draft.ratedOn} onChange={(ratedOn) => set({ ratedOn })}>
          <Label>{draft.suggestion ? suggestion.flownOn : rating.date}</Label>
          <Input type="date" />
        </TextField>
        <TextField className="field" value={draft.rater} onChange={(rater) => set({ rater })}>
          <Label>{draft.suggestion ? suggestion.confirmedBy : rating.rater}</Label>
          <Input maxLength={20} autoComplete="off" onKeyDown={leaveOnEscape} />
        </TextField>
      </div>
      <Verdict draft={draft} />
      <div className="button-row">
        <Button className="button first" onPress={() => void saveRating(session)}>
          {rating.save} <kbd>⏎</kbd>
        </Button>
        <Button className="button" onPress={() => void goToUnrated(session, -1)}>
          {rating.previous} <kbd>P</kbd>
        </Button>
        <Button className="button" onPress={() => void goToUnrated(session, 1)}>
          {rating.next} <kbd>N</kbd>
        </Button>
      </div>
    </section>
  );
}

/** Out of a text field the keys rate again. */
function leaveOnEscape(event: { readonly key: string; readonly currentTarget: EventTarget }): void {
  if (event.key === 'Escape' || event.key === 'Enter') (event.currentTarget as HTMLElement).blur();
}

interface ShareProps {
  readonly name: string;
  readonly sign: string;
  readonly pct: number | null;
  readonly active: boolean;
  readonly change: (pct: number | null) => void;
}

function ShareField({ name, sign, pct, active, change }: ShareProps) {
  const read = (text: string): void => {
    const value = Number(text);
    change(text.trim() === '' ? null : Math.min(100, Math.max(0, Math.round(value))));
  };
  return (
    <label className="share" data-active={active || undefined}>
      <span>
        {name} <kbd>{sign}</kbd>
      </span>
      <span className="with-unit">
        <input
          type="number"
          min={0}
          max={100}
          inputMode="numeric"
          value={pct ?? ''}
          placeholder="–"
          onChange={(event) => read(event.target.value)}
        />
        <span aria-hidden="true">%</span>
      </span>
      <span className="share-bar" aria-hidden="true">
        <span style={{ width: `${pct ?? 0}%` }} />
      </span>
    </label>
  );
}

interface ChoiceProps<Value extends string> {
  readonly name: ReactNode;
  readonly sign: string;
  readonly value: Value | null;
  readonly of: readonly Value[];
  readonly words: Readonly<Record<Value, string>>;
  readonly choose: (value: Value | null) => void;
}

function Choice<Value extends string>({ name, sign, value, of, words, choose }: ChoiceProps<Value>) {
  return (
    <fieldset className="chips">
      <legend>
        {name} <kbd>{sign}</kbd>
      </legend>
      {of.map((each) => (
        <button
          key={each}
          type="button"
          aria-pressed={value === each}
          onClick={() => choose(value === each ? null : each)}
        >
          {words[each]}
        </button>
      ))}
    </fieldset>
  );
}

/** What the rating as it stands does, before it is saved. */
function Verdict({ draft }: { readonly draft: RatingDraft }) {
  const run = useApp((state) => state.project?.run);
  const season = useApp((state) => state.project?.season);
  const { rating } = useWords();
  const missing = missingFrom(draft);
  const { cause, gallLoad, evidence } = draft;
  const said = {
    cause: cause ?? 'unknown',
    ...(gallLoad && { gallLoad }),
    ...(evidence.trim() && { evidence }),
  } as const;
  const opens = gateOf(said) === 'open' && !missing.includes('evidence');
  const asOf = run?.settings.as_of;
  const begun = draft.brownedPct !== null || draft.defoliatedPct !== null || cause !== null;
  return (
    <div className="verdict" aria-live="polite">
      {missing.includes('evidence') ? <p className="caveat">{rating.missing.evidence}</p> : null}
      {begun && cause !== null && !missing.includes('evidence') ? (
        <p className="lead">{opens ? rating.gateOpen : rating.gateShut}</p>
      ) : null}
      {asOf && draft.ratedOn > asOf ? <p className="caveat">{rating.tooLate(asOf)}</p> : null}
      {season && !draft.ratedOn.startsWith(String(season)) ? (
        <p className="caveat">{rating.otherSeason(season)}</p>
      ) : null}
    </div>
  );
}
