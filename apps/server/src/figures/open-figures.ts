/** Figures opened for questions, as the routes see them. */
import { ServedCollection } from '../ogc/served-collection.ts';
import { COLLECTION_NAMES, type CollectionName, type Figures } from './figures.ts';

export interface OpenFigures extends Omit<Figures, 'collections'> {
  readonly collections: Readonly<Record<CollectionName, ServedCollection>>;
}

/** Opens what the reckoning thread handed over. */
export function openFigures(figures: Figures): OpenFigures {
  const opened = COLLECTION_NAMES.map((name) => [name, new ServedCollection(figures.collections[name])] as const);
  return { ...figures, collections: Object.fromEntries(opened) as unknown as OpenFigures['collections'] };
}
