/** Money, crew days, weeks, and what each district must get: what bounds the plan. */
import { changePlan } from '../session/planning.ts';
import { useApp, useSession } from '../session/session.ts';
import { planSettingsOf } from '../state/derived-state.ts';
import { AmountField } from './amount-field.tsx';
import { usePlanWords } from './use-plan-words.ts';

export function PlanLimits() {
  const session = useSession();
  const settings = useApp(planSettingsOf);
  const words = usePlanWords();
  if (!settings) return null;
  return (
    <section className="plan-limits" aria-labelledby="limits-title">
      <h2 id="limits-title">{words.limits}</h2>
      <div className="sizes">
        <AmountField
          label={words.budget}
          unit={settings.currency}
          value={settings.budget}
          change={(budget) => changePlan(session, { budget })}
        />
        <AmountField
          label={words.crewDays}
          value={settings.crew_days_per_week}
          change={(crew_days_per_week) => changePlan(session, { crew_days_per_week })}
        />
        <AmountField
          label={words.weeks}
          value={settings.weeks}
          least={1}
          whole
          change={(weeks) => weeks !== null && changePlan(session, { weeks })}
        />
        {settings.districts.length === 0 ? null : (
          <AmountField
            label={words.districtFloor}
            unit="%"
            value={Math.round(settings.district_floor * 1000) / 10}
            change={(pct) => changePlan(session, { district_floor: Math.min(1, (pct ?? 0) / 100) })}
          />
        )}
      </div>
      <p className="lead">
        {words.limitsLead(settings.crew_hours_per_day)}
        {settings.districts.length === 0 ? null : ` ${words.floorLead}`}
      </p>
    </section>
  );
}
