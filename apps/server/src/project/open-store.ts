/** Opens a project's store, whichever kind it is. */
import type { StoreOpening } from '@crownfall/exchange';
import type { ProjectPlace } from './project-place.ts';

/** SQLite and PostgreSQL libraries load only when a project needs them. Throws an outage. */
export async function openStore(
  place: Exclude<ProjectPlace, { kind: 'folder' }>,
  { readOnly }: { readonly readOnly: boolean },
): Promise<StoreOpening> {
  if (place.kind === 'database') {
    const { openPostgisStore } = await import('@crownfall/exchange/postgis');
    return openPostgisStore(place.url, { readOnly });
  }
  const { openProjectStore } = await import('@crownfall/exchange/node');
  return openProjectStore(place.path, { readOnly });
}
