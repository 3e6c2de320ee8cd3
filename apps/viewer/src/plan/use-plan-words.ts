/** The words of the planning bench, in the language of the screen: loaded when somebody first plans. */
import { PLAN_EN, type PlanWords } from '../language/en-plan.ts';
import { PLAN_ES } from '../language/es-plan.ts';
import { useApp } from '../session/session.ts';

const PLAN_WORDS = { en: PLAN_EN, es: PLAN_ES } as const;

export const usePlanWords = (): PlanWords => PLAN_WORDS[useApp((state) => state.preferences.language)];
