/** The page's address: it says which bench, block, tree, filters and map view are shown, so that a link restores them. */
import type { AppState, Bench, MapView } from './app-state.ts';

const BENCHES: readonly Bench[] = ['weigh', 'outline', 'plan'];

type Part = Pick<AppState, 'bench' | 'blockId' | 'treeId' | 'filters' | 'mapView'>;

/**
 * Example: `addressOf({ bench: 'outline', treeId: 'T0021', … })` → `#bench=outline&tree=T0021`. What is as at first is left
 * out.
 */
export function addressOf({ bench, blockId, treeId, filters, mapView }: Part): string {
  const parts = new URLSearchParams();
  if (bench !== 'weigh') parts.set('bench', bench);
  if (blockId !== null) parts.set('block', blockId);
  if (treeId !== null) parts.set('tree', treeId);
  for (const [name, value] of Object.entries(filters)) if (value !== null) parts.set(name, value);
  if (mapView) parts.set('map', viewText(mapView));
  const text = parts.toString();
  return text === '' ? '' : `#${text}`;
}

/** Reads an address; what it does not say or says badly is as at first. */
export function readAddress(hash: string): Part {
  const parts = new URLSearchParams(hash.replace(/^#/, ''));
  const bench = BENCHES.find((each) => each === parts.get('bench')) ?? 'weigh';
  const filters = { kind: parts.get('kind'), host: parts.get('host'), bloom: parts.get('bloom') };
  return {
    bench,
    blockId: parts.get('block'),
    treeId: parts.get('tree'),
    filters,
    mapView: readView(parts.get('map')),
  };
}

/** 7 decimals of a degree are a centimetre. */
const viewText = ([lon, lat, zoom]: MapView): string => `${lon.toFixed(7)},${lat.toFixed(7)},${zoom.toFixed(2)}`;

function readView(text: string | null): MapView | null {
  const numbers = (text ?? '').split(',').map(Number);
  const [lon, lat, zoom] = numbers;
  const usable = numbers.length === 3 && numbers.every(Number.isFinite) && Math.abs(lat) <= 90 && zoom >= 0;
  return usable ? [lon, lat, zoom] : null;
}
