/** The user's own prices, and what must be known before a treatment may be offered. Nothing here has a value of ours. */
import { actionName, type PlanSettings, PRICED_ACTIONS, type Price, type PricedAction } from '@crownfall/survey';
import { changePlan } from '../session/planning.ts';
import { useApp, useSession } from '../session/session.ts';
import { planSettingsOf } from '../state/derived-state.ts';
import { AmountField } from './amount-field.tsx';
import { PlanFileFields } from './plan-file-fields.tsx';
import { ProductList } from './product-list.tsx';
import { TextEntry } from './text-entry.tsx';
import { usePlanWords } from './use-plan-words.ts';

const PARTS = ['set_up', 'per_tree', 'per_m2', 'hours_set_up', 'hours_per_tree', 'hours_per_m2'] as const;
const NO_PRICE: Omit<Price, 'action'> = {
  set_up: 0,
  per_tree: 0,
  per_m2: 0,
  hours_set_up: 0,
  hours_per_tree: 0,
  hours_per_m2: 0,
};
const WATERS = ['water', 'drain', 'well'] as const;

export function PlanConditions() {
  const settings = useApp(planSettingsOf);
  const words = usePlanWords();
  if (!settings) return null;
  return (
    <details className="folded conditions" open={settings.prices.length === 0 || undefined}>
      <summary>{words.conditions}</summary>
      <p className="lead">{settings.prices.length === 0 ? words.noPrices : words.pricesLead}</p>
      <Prices settings={settings} />
      <Treating settings={settings} />
      <PlanFileFields />
    </details>
  );
}

function Prices({ settings }: { readonly settings: PlanSettings }) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  const set = (action: PricedAction, part: Partial<Price>): void => {
    const known = settings.prices.find((price) => price.action === action) ?? { action, ...NO_PRICE };
    const others = settings.prices.filter((price) => price.action !== action);
    changePlan(session, { prices: [...others, { ...known, ...part }] });
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={words.prices}>
      <table className="prices">
        <thead>
          <tr>
            <td />
            {PARTS.map((part) => (
              <th key={part} scope="col">
                {words.priceParts[part]}
                <small>{part.startsWith('hours') ? words.hours : settings.currency}</small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {PRICED_ACTIONS.map((action) => (
            <tr key={action}>
              <th scope="row">{actionName(action, language)}</th>
              {PARTS.map((part) => (
                <td key={part}>
                  <AmountField
                    hideLabel
                    label={`${actionName(action, language)}: ${words.priceParts[part]}`}
                    value={settings.prices.find((price) => price.action === action)?.[part] ?? null}
                    change={(value) => set(action, { [part]: value ?? 0 })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Treating({ settings }: { readonly settings: PlanSettings }) {
  const session = useSession();
  const words = usePlanWords();
  const { applicator, keep_off_m, wind_max_m_s, rain_max_mm, notice_m } = settings;
  return (
    <fieldset className="treating">
      <legend>{words.treating}</legend>
      <p className="lead">{words.treatingLead}</p>
      <div className="sizes">
        <TextEntry
          label={words.applicator}
          value={applicator.name}
          change={(name) => changePlan(session, { applicator: { ...applicator, name } })}
        />
        <TextEntry
          label={words.licence}
          value={applicator.licence}
          change={(licence) => changePlan(session, { applicator: { ...applicator, licence } })}
        />
        {WATERS.map((kind) => (
          <AmountField
            key={kind}
            label={words.keepOff[kind]}
            unit="m"
            value={keep_off_m[kind]}
            change={(metres) => changePlan(session, { keep_off_m: { ...keep_off_m, [kind]: metres } })}
          />
        ))}
        <AmountField
          label={words.windMost}
          unit="m/s"
          value={wind_max_m_s}
          change={(most) => changePlan(session, { wind_max_m_s: most })}
        />
        <AmountField
          label={words.rainMost}
          unit="mm"
          value={rain_max_mm}
          change={(most) => changePlan(session, { rain_max_mm: most })}
        />
        <AmountField
          label={words.noticeWithin}
          unit="m"
          value={notice_m}
          change={(metres) => changePlan(session, { notice_m: metres })}
        />
      </div>
      <ProductList settings={settings} />
    </fieldset>
  );
}
