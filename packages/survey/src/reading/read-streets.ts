/** Streets: centre lines, from whose faces blocks are derived when no block layer exists. */
import type { RawLayer } from '../project-input.ts';
import type { Street } from '../records.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { hasGeometry } from './positions.ts';
import { present } from './present-fields.ts';

/** Reads the street lines. */
export function readStreets(layer: RawLayer | undefined): LayerReading<Street> {
  return readLayer('streets', layer, (row) => {
    if (!hasGeometry(row, ['line']) || row.feature.geometry.kind !== 'line') return undefined;
    return { ...present({ name: row.text('name') }), lines: row.feature.geometry.lines, extra: row.extra() };
  });
}
