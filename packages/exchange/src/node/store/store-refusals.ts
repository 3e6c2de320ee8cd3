import { basename } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding, LAYER_NAMES } from '@crownfall/survey';
import { Outage } from '../outage.ts';
import { readLayerTable } from './layer-table.ts';
import { STORE_VERSION } from './migrations.ts';
import type { Connection } from './sqlite-module.ts';
import { isDamage } from './sqlite-outage.ts';

/** Why a file of this version gives no store; null when it does. */
export function versionRefusal(path: string, version: number | null): Finding | null {
  const where = { file: basename(path) };
  if (version === null) {
    const problem = 'it is a GeoPackage, but holds no project';
    return finding('project-invalid', 'error/stops', where, {
      problem,
      expected: 'a file that crownfall convert made',
      got: 'other tables',
    });
  }
  if (version <= STORE_VERSION) return null;
  return finding('store-newer', 'error/stops', where, { got: version, known: STORE_VERSION });
}

/** Layers whose table is gone, or is another program's. */
export function missingLayers(db: Connection, path: string): Finding[] {
  return LAYER_NAMES.filter((layer) => readLayerTable(db, layer)?.extra !== true).map((layer) => {
    const problem = `the table ${layer} was removed or replaced by another program`;
    return finding('file-damaged', 'error/stops', { file: basename(path), layer }, { format: 'GeoPackage', problem });
  });
}

/** The finding on a file that cannot be read to its end. */
export function damageFinding(path: string): Finding {
  return finding(
    'file-damaged',
    'error/stops',
    { file: basename(path) },
    { format: 'GeoPackage', problem: 'its pages do not fit together' },
  );
}

/** Whether what went wrong is the file itself, and not the disk or another program. */
export function isDamageOutage(error: unknown): boolean {
  return error instanceof Outage && error.cause instanceof Error && isDamage(error.cause.cause);
}
