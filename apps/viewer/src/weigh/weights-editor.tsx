/** Weights as sliders, reference levels as fields; the ranking follows while a slider is held. */
import { normalisedWeights } from '@crownfall/priority';
import { CRITERIA, type Criterion } from '@crownfall/survey';
import {
  Button,
  Input,
  Label,
  NumberField,
  Slider,
  SliderOutput,
  SliderThumb,
  SliderTrack,
} from 'react-aria-components';
import type { Weighing } from '../edits/edit.ts';
import { percent } from '../language/quantities.ts';
import { moveWeights, settleWeights } from '../session/editing.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { isSameWeighing, ownWeighing, weighing } from '../state/derived-state.ts';
import { TONES } from './criteria.ts';

export function WeightsEditor() {
  const session = useSession();
  const now = useApp(weighing);
  const own = useApp(ownWeighing);
  const words = useWords();
  if (!now || !own) return null;
  const moved = !isSameWeighing(now, own);
  return (
    <details className="folded weights" data-moved={moved || undefined}>
      <summary>
        {words.weights.title}
        {moved ? <span className="tag">{words.weights.moved}</span> : null}
      </summary>
      <p className="lead">{words.weights.lead}</p>
      {CRITERIA.map((criterion) => (
        <WeightSlider key={criterion} criterion={criterion} now={now} />
      ))}
      <details className="levels-fold">
        <summary>{words.weights.levels}</summary>
        <p className="lead">{words.weights.levelsLead}</p>
        <div className="levels">
          <span />
          <span className="level-head">{words.weights.noneHead}</span>
          <span className="level-head">{words.weights.fullHead}</span>
          {CRITERIA.map((criterion) => (
            <LevelFields key={criterion} criterion={criterion} now={now} />
          ))}
        </div>
      </details>
      <Button className="button" isDisabled={!moved} onPress={() => void settleWeights(session, own)}>
        {words.weights.reset}
      </Button>
    </details>
  );
}

interface RowProps {
  readonly criterion: Criterion;
  readonly now: Weighing;
}

function WeightSlider({ criterion, now }: RowProps) {
  const session = useSession();
  const words = useWords();
  const withWeight = (value: number): Weighing => ({ ...now, weights: { ...now.weights, [criterion]: value } });
  const share = normalisedWeights(now.weights)[criterion];
  const name = words.criteria[criterion];
  return (
    <Slider
      className="slider"
      aria-label={words.weights.weight(name)}
      minValue={0}
      maxValue={1}
      step={0.01}
      value={now.weights[criterion]}
      onChange={(value) => moveWeights(session, withWeight(value))}
      onChangeEnd={(value) => void settleWeights(session, withWeight(value))}
    >
      <span className="slider-name" title={words.criterionHelp[criterion]} aria-hidden="true">
        <i style={{ background: TONES[criterion] }} />
        {name}
      </span>
      <SliderOutput>{percent(share)}</SliderOutput>
      <SliderTrack>
        <span
          className="slider-fill"
          style={{ width: `${now.weights[criterion] * 100}%`, background: TONES[criterion] }}
        />
        <SliderThumb />
      </SliderTrack>
    </Slider>
  );
}

function LevelFields({ criterion, now }: RowProps) {
  const session = useSession();
  const words = useWords();
  const { none, full } = now.levels[criterion];
  const name = words.criteria[criterion];
  const settle = (part: { none?: number; full?: number }): void => {
    const level = { none, full, ...part };
    // A level pair that does not rise has no meaning; the field then shows the old value again.
    if (!(level.full > level.none)) return;
    void settleWeights(session, { ...now, levels: { ...now.levels, [criterion]: level } });
  };
  return (
    <>
      <span className="level-name" aria-hidden="true">
        {name} <small>{words.criterionUnit[criterion]}</small>
      </span>
      <LevelField label={words.weights.none(name)} value={none} settle={(value) => settle({ none: value })} />
      <LevelField label={words.weights.full(name)} value={full} settle={(value) => settle({ full: value })} />
    </>
  );
}

interface LevelFieldProps {
  readonly label: string;
  readonly value: number;
  readonly settle: (value: number) => void;
}

function LevelField({ label, value, settle }: LevelFieldProps) {
  const change = (next: number): void => {
    if (Number.isFinite(next) && next !== value) settle(next);
  };
  return (
    <NumberField
      className="number"
      value={value}
      minValue={0}
      onChange={change}
      formatOptions={{ maximumFractionDigits: 4 }}
    >
      <Label className="spoken-only">{label}</Label>
      <Input />
    </NumberField>
  );
}
