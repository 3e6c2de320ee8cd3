import type { Finding } from '@crownfall/geometry';
import { finding, type LayerName, type RawLayer } from '@crownfall/survey';
import { coordinateArrays } from '../positions.ts';

/** West, south, east, north, degrees. */
type Box = readonly [number, number, number, number];

/** About 2 km: layers of one project lie at least that near to each other. */
const NEAR_DEG = 0.02;
/** The box that holds the middle 96 %: a few positions at 0, 0 must not make two places meet. */
const TAIL = 0.02;

/**
 * Layers that meet the others only when latitude and longitude change places: told, not changed. The layer that meets
 * the fewest others is the one suspected; the pavement only when all others meet each other.
 */
export function swappedLayers(layers: Partial<Readonly<Record<LayerName, RawLayer>>>): Finding[] {
  const boxes = Object.entries(layers).flatMap(([name, layer]) => {
    const box = boxOf(layer);
    return box ? [{ name: name as LayerName, file: layer.file, box }] : [];
  });
  const meetings = boxes.map((a) => boxes.filter((b) => b !== a && near(a.box, b.box)).length);
  const most = Math.max(0, ...meetings);
  return boxes.flatMap((suspect, i) => {
    const others = boxes.filter((b) => b !== suspect);
    const fewest = meetings[i] < most || (most === 0 && suspect.name !== 'pavement');
    if (!fewest || others.some((other) => near(suspect.box, other.box))) return [];
    const swapped: Box = [suspect.box[1], suspect.box[0], suspect.box[3], suspect.box[2]];
    if (!others.some((other) => near(swapped, other.box))) return [];
    const got = `${suspect.box[0].toFixed(4)}, ${suspect.box[1].toFixed(4)}`;
    return [finding('lonlat-maybe-swapped', 'warning/kept', { layer: suspect.name, file: suspect.file }, { got })];
  });
}

function boxOf(layer: RawLayer): Box | null {
  const lons: number[] = [];
  const lats: number[] = [];
  for (const { geometry } of layer.features) {
    const first = coordinateArrays(geometry)[0];
    if (first === undefined || !Number.isFinite(first[0] + first[1])) continue;
    lons.push(first[0]);
    lats.push(first[1]);
  }
  if (lons.length === 0) return null;
  lons.sort((a, b) => a - b);
  lats.sort((a, b) => a - b);
  const from = Math.floor(lons.length * TAIL);
  const to = lons.length - 1 - from;
  return [lons[from], lats[from], lons[to], lats[to]];
}

function near(a: Box, b: Box): boolean {
  return a[0] <= b[2] + NEAR_DEG && b[0] <= a[2] + NEAR_DEG && a[1] <= b[3] + NEAR_DEG && b[1] <= a[3] + NEAR_DEG;
}
