/** When the pictures of a project were flown, as a person told it last: asked for once, not with every tree. */
import type { RatingDraft } from '../outline/rating-draft.ts';
import type { Session } from './session.ts';

const KEY = 'crownfall-flown';

/** The day; empty when nobody has told it. */
export function flownOn({ store }: Session, image: string): string {
  return flights()[`${store.get().projectKey} ${image}`] ?? '';
}

/** Keeps the day of a suggestion that becomes a rating. */
export function rememberFlight({ store }: Session, { suggestion, ratedOn }: RatingDraft): void {
  if (!suggestion) return;
  try {
    const flight = `${store.get().projectKey} ${suggestion.fields.image}`;
    localStorage.setItem(KEY, JSON.stringify({ ...flights(), [flight]: ratedOn }));
  } catch {
    // Then it is told again next time.
  }
}

function flights(): Readonly<Record<string, string>> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}');
  } catch {
    return {};
  }
}
