/** What a person asks of one block: work that must be done, and the check right before a treatment. */
import type { PlannedBlock } from '@crownfall/priority';
import { ACTIONS, type Action, actionName, type WeatherCheck, type YesNoUnknown } from '@crownfall/survey';
import { changePlan } from '../session/planning.ts';
import { useApp, useSession } from '../session/session.ts';
import { Choice } from '../shell/choice.tsx';
import { planSettingsOf } from '../state/derived-state.ts';
import { AmountField } from './amount-field.tsx';
import { usePlanWords } from './use-plan-words.ts';

const WORK = ACTIONS.filter((action) => action !== 'leave');
const ANSWERS = ['unknown', 'no', 'yes'] as const satisfies readonly YesNoUnknown[];

export function MustDo({ blockId }: { readonly blockId: string }) {
  const session = useSession();
  const settings = useApp(planSettingsOf);
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  if (!settings) return null;
  const asked = settings.must_do.find((wish) => wish.block_id === blockId)?.action ?? '';
  const set = (action: string): void => {
    const others = settings.must_do.filter((wish) => wish.block_id !== blockId);
    const wish = action === '' ? [] : [{ block_id: blockId, action: action as Action | 'any' }];
    changePlan(session, { must_do: [...others, ...wish] });
  };
  return (
    <Choice
      label={words.mustDo}
      value={asked}
      choices={[
        ['', words.free],
        ['any', words.any],
        ...WORK.map((action) => [action, actionName(action, language)] as const),
      ]}
      choose={set}
    />
  );
}

/** Wind, rain and bees on the day of the figures; only where a tree could be treated at all. */
export function TodayCheck({ block, asOf }: { readonly block: PlannedBlock; readonly asOf: string }) {
  const session = useSession();
  const settings = useApp(planSettingsOf);
  const words = usePlanWords();
  const treat = block.offers.find(({ action }) => action === 'treat');
  const hopeless = treat?.forbidden.some(({ code }) => code === 'cause-without-evidence' || code === 'no-tree') ?? true;
  if (!settings || hopeless) return null;
  const { blockId } = block;
  const isOwn = (check: WeatherCheck): boolean => check.block_id === blockId && check.on === asOf;
  const own = settings.weather.find(isOwn) ?? { block_id: blockId, on: asOf, wind_m_s: null, rain_mm: null };
  const set = (part: Partial<WeatherCheck>): void =>
    changePlan(session, { weather: [{ ...own, ...part }, ...settings.weather.filter((check) => !isOwn(check))] });
  return (
    <fieldset className="today-check">
      <legend>{words.check(asOf)}</legend>
      <div className="sizes">
        <AmountField label={words.wind} unit="m/s" value={own.wind_m_s} change={(wind_m_s) => set({ wind_m_s })} />
        <AmountField label={words.rain} unit="mm" value={own.rain_mm} change={(rain_mm) => set({ rain_mm })} />
        <Choice
          label={words.bees}
          value={own.bees_at_flowers ?? 'unknown'}
          choices={ANSWERS.map((answer) => [answer, words.answers[answer]] as const)}
          choose={(answer) => set({ bees_at_flowers: answer as YesNoUnknown })}
        />
      </div>
    </fieldset>
  );
}
