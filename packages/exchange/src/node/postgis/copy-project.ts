/** A project from one store to another: from a file to a database and back. */
import type { RawFeature } from '@crownfall/survey';
import type { LayerSummary, ProjectStore, StoredRecord, Writer } from '../../store/project-store.ts';

export interface CopyReport {
  /** Records by layer. */
  readonly layers: Readonly<Record<string, number>>;
  readonly visits: number;
}

/**
 * Copies facts, all given layers and visits; `to` must hold no records yet. Values and coordinates arrive as they were.
 * Record numbers and versions begin anew, and the journal of `from` stays where it is.
 */
export async function copyProject(from: ProjectStore, to: ProjectStore, writer: Writer): Promise<CopyReport> {
  const there = await to.layers();
  if (there.some(({ count }) => count > 0)) throw new RangeError('target: expected a project without records');
  await to.changeProject(await from.project(), writer);
  const layers: Record<string, number> = {};
  for (const summary of await from.layers()) {
    if (summary.given) layers[summary.layer] = await to.importLayer(layerOf(from, summary), writer);
  }
  const visits = await from.visits();
  if (visits.length > 0) await to.addVisits(visits, writer);
  return { layers, visits: visits.length };
}

function layerOf(from: ProjectStore, { layer }: LayerSummary) {
  const shape = layer === 'ratings' || layer === 'bloom' ? 'table' : 'features';
  return { layer, shape, features: featuresOf(from.wholeLayer(layer)) } as const;
}

async function* featuresOf(portions: AsyncIterable<readonly StoredRecord[]>): AsyncGenerator<readonly RawFeature[]> {
  for await (const records of portions) {
    yield records.map(({ recordId, geometry, properties }) => ({ row: recordId, geometry, properties }));
  }
}
