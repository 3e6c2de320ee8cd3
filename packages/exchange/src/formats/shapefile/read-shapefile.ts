/** Shapefiles: shapes (.shp), their table (.dbf, dBASE), their system (.prj) and the table's encoding (.cpg). */
import { finding } from '@crownfall/survey';
import { type ByteStream, gather } from '../../byte-stream.ts';
import { decodeText } from '../../decode-text.ts';
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { type ByteQueue, byteQueue } from '../byte-queue.ts';
import { problemOf, tellDamage } from '../damage.ts';
import { type DbaseTable, dbaseTable } from './dbase-table.ts';
import { shapeRecord } from './shape-record.ts';
import { tableEncoding } from './table-encoding.ts';

/** So much of the table is looked at when nothing states its encoding. */
const LOOKED_AT_BYTES = 1 << 16;
const SMALL_SIDECAR_BYTES = 1 << 20;
const HEADER_BYTES = 100;
/** A shape of four million corners. */
const LARGEST_RECORD = 64 << 20;

/**
 * Hands over all shapes with their row of the table. Without .prj the system must be stated by the project; without .dbf
 * shapes have no fields, and a finding says so. Altitudes and measures are dropped. A damaged file gives the shapes before
 * the damage.
 */
export async function takeShapefile(source: LayerSource, taker: FeatureTaker): Promise<void> {
  taker.statedCrs((await sidecarText(source, 'prj')) || null);
  const table = await tableOf(source, taker);
  const queue = byteQueue(source.bytes);
  try {
    const header = await queue.take(HEADER_BYTES);
    if (header === null) throw new RangeError('the file is empty');
    for (let shape = await nextShape(queue); shape !== undefined; shape = await nextShape(queue)) {
      taker.addFeature({ type: 'Feature', properties: (await table?.rows.next()) ?? {}, geometry: shape });
      await taker.ready();
    }
  } catch (error) {
    tellDamage(taker, 'Shapefile', `byte ${queue.at()}: ${problemOf(error)}`);
  }
  // To its end, for whoever counts and hashes the bytes.
  for await (const _ of table?.bytes ?? []);
}

/** The next shape; `undefined` at the end. Record headers are big-endian, lengths in words of two bytes. */
async function nextShape(queue: ByteQueue): Promise<ReturnType<typeof shapeRecord> | undefined> {
  const header = await queue.take(8);
  if (header === null) return undefined;
  const bytes = 2 * new DataView(header.buffer, header.byteOffset).getInt32(4, false);
  if (bytes < 4 || bytes > LARGEST_RECORD) throw new RangeError(`a record of ${bytes} bytes is not possible`);
  const content = await queue.take(bytes);
  if (content === null) throw new RangeError('it ends amid a record');
  return shapeRecord(content);
}

async function tableOf(
  source: LayerSource,
  taker: FeatureTaker,
): Promise<{ readonly bytes: ByteStream; readonly rows: DbaseTable } | null> {
  const bytes = await source.beside?.('dbf');
  if (!bytes) {
    const facts = { got: '.dbf', read_as: 'shapes without fields' };
    taker.findings.add(finding('sidecar-missing', 'warning/assumed', taker.place, facts));
    return null;
  }
  const { head, all } = await gather(bytes, LOOKED_AT_BYTES);
  const { encoding, guessed } = tableEncoding(await sidecarText(source, 'cpg'), head);
  if (guessed) taker.findings.add(finding('encoding-guessed', 'note/assumed', taker.place, { encoding }));
  try {
    return { bytes: all, rows: await dbaseTable(byteQueue(all), encoding) };
  } catch (error) {
    const facts = { format: 'Shapefile', problem: `its table: ${problemOf(error)}` };
    taker.findings.add(finding('file-damaged', 'warning/left_out', taker.place, facts));
    return null;
  }
}

async function sidecarText(source: LayerSource, extension: string): Promise<string> {
  const bytes = await source.beside?.(extension);
  return bytes ? decodeText((await gather(bytes, SMALL_SIDECAR_BYTES)).head).text.trim() : '';
}
