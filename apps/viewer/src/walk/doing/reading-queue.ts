/** What is begun and what waits. */
import type { Walk } from './walk-session.ts';

/** Takes up what the device holds. */
export async function readQueue({ store, database }: Walk): Promise<void> {
  const { project } = store.get();
  const mine = <Row extends { readonly project: string }>(rows: readonly Row[]): readonly Row[] =>
    rows.filter((row) => row.project === project);
  const [begun, visits, photos] = await Promise.all([
    database.stops.toArray(),
    database.visits.toArray(),
    database.photos.toArray(),
  ]);
  store.change({
    begun: mine(begun),
    visits: mine(visits).toSorted((a, b) => (a.sealedAt < b.sealedAt ? 1 : -1)),
    photos: mine(photos),
  });
}
