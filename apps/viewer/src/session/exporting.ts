/** Hands files to the person: the ranking that is seen, the map, the edited layers. */

import { CLEAN_BELOW_PCT } from '../map/stain-ramp.ts';
import { paperOf, shownBlocks, unitsOf, wordsOf } from '../state/derived-state.ts';
import type { Session } from './session.ts';

export async function exportBlocks(session: Session, format: 'geojson' | 'csv' | 'gpkg'): Promise<void> {
  const state = session.store.get();
  const writers = await fetched(session, import('../weigh/exported-blocks.ts'));
  if (!state.layers || !writers) return;
  const { blocksCsv, blocksGeoJson, blocksGeopackage } = writers;
  const shown = shownBlocks(state);
  if (format === 'geojson')
    save(session, 'blocks.geojson', 'application/geo+json', blocksGeoJson(state.layers.blocks, shown));
  else if (format === 'csv') save(session, 'blocks.csv', 'text/csv', blocksCsv(state.layers.blocks, shown));
  else {
    const file = blocksGeopackage(state.layers.blocks, shown, new Date().toISOString());
    save(session, 'blocks.gpkg', 'application/geopackage+sqlite3', file as BlobPart);
  }
}

export async function exportMap(session: Session): Promise<void> {
  const { store, map } = session;
  const { project } = store.get();
  const printing = await fetched(session, import('../weigh/printed-map.ts'));
  if (!map || !project || !printing) return;
  const words = wordsOf(store.get());
  const asOf = project.run.asOf ?? String(project.season);
  const note = [words.exports.mapNote(asOf), ...(project.run.calibrated ? [] : [words.uncalibrated])].join('. ');
  const picture = await printing.printedMap(map, {
    title: words.pageTitle(project.title),
    legend: words.legend.share,
    clean: words.legend.under(CLEAN_BELOW_PCT),
    note,
  });
  save(session, 'map.png', 'image/png', picture);
}

/** The report on what is seen: council page, plan when one was made, methods, settings. */
export async function exportReport(session: Session, as: 'html' | 'pdf'): Promise<void> {
  const { store, reckoner } = session;
  const state = store.get();
  const plan = state.planning.state === 'made' ? state.planning.outcome.plan : null;
  const wish = { as, plan, language: state.preferences.language, units: unitsOf(state) };
  const report = await reckoner.ask('report', { ...wish, createdAt: new Date().toISOString() });
  save(session, `report.${as}`, report.type, report);
}

/** Visit sheets for blocks, numbered in walking order; several are a book of the day. */
export async function exportSheets(session: Session, blockIds: readonly string[]): Promise<void> {
  const state = session.store.get();
  const wish = { blockIds, paper: paperOf(state), language: state.preferences.language, units: unitsOf(state) };
  const sheets = await session.reckoner.ask('sheets', { ...wish, link: walkLink(state.projectKey) });
  const name = blockIds.length === 1 ? `sheet-${blockIds[0]}.pdf` : 'visit-sheets.pdf';
  save(session, name.replaceAll(/[^\p{L}\p{N}.-]+/gu, '-'), sheets.type, sheets);
}

/** Where a phone opens a block; null when no phone reaches this page, or the project is not the server's. */
function walkLink(projectKey: string): string | null {
  const isServed = /^(served|store):/.test(projectKey);
  const isHere = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(location.hostname);
  return isServed && !isHere ? `${location.origin}/walk.html#block=` : null;
}

export async function exportLayer(session: Session, layer: 'crowns' | 'ratings'): Promise<void> {
  const text = await session.reckoner.ask('layerFile', layer);
  if (layer === 'crowns') save(session, 'crowns.geojson', 'application/geo+json', text);
  else save(session, 'ratings.csv', 'text/csv', text);
}

/** A part of the page that is fetched when it is first wanted; null, and a notice, when it cannot be. */
async function fetched<Part>({ store }: Session, part: Promise<Part>): Promise<Part | null> {
  return part.catch(() => {
    store.change({ notice: wordsOf(store.get()).exports.notFetched });
    return null;
  });
}

export function save({ store }: Session, name: string, type: string, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the content by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  store.change({ notice: wordsOf(store.get()).exports.done(name) });
}
