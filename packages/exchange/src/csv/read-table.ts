/** A small table of fixed columns, checked before anything is done with it. */
import { oneChunk } from '../byte-stream.ts';
import { readCsv } from './read-csv.ts';

/** Rows of delimited text as text by column; RangeError for a missing column, with those that are there. */
export async function readTable<Column extends string>(
  bytes: Uint8Array,
  file: string,
  columns: readonly Column[],
): Promise<Record<Column, string>[]> {
  const types = Object.fromEntries(columns.map((column) => [column, 'text' as const]));
  const source = { bytes: oneChunk(bytes), entry: { path: file, types }, layer: 'ratings' as const };
  const { layer } = await readCsv(source);
  const features = layer?.features ?? [];
  const found = new Set(features.flatMap(({ properties }) => Object.keys(properties)));
  for (const column of columns) {
    if (features.length > 0 && !found.has(column)) {
      throw new RangeError(`${file}: expected columns ${columns.join(', ')}, got ${[...found].join(', ')}`);
    }
  }
  if (features.length === 0) throw new RangeError(`${file}: expected rows with ${columns.join(', ')}, got none`);
  return features.map(
    ({ properties }) =>
      Object.fromEntries(columns.map((column) => [column, String(properties[column] ?? '').trim()])) as Record<
        Column,
        string
      >,
  );
}
