/** A small table that an option names, its columns checked before anything is done with it. */
import { oneChunk, readCsv } from '@crownfall/exchange';

/** Rows of delimited text as text by column; RangeError for a missing column, with those that are there. */
export async function readTable(
  stream: AsyncIterable<Uint8Array>,
  file: string,
  columns: readonly string[],
): Promise<Record<string, string>[]> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(chunk);
  const types = Object.fromEntries(columns.map((column) => [column, 'text' as const]));
  const source = { bytes: oneChunk(Buffer.concat(chunks)), entry: { path: file, types }, layer: 'ratings' as const };
  const { layer } = await readCsv(source);
  const features = layer?.features ?? [];
  const found = new Set(features.flatMap(({ properties }) => Object.keys(properties)));
  for (const column of columns) {
    if (features.length > 0 && !found.has(column)) {
      throw new RangeError(`${file}: expected columns ${columns.join(', ')}, got ${[...found].join(', ')}`);
    }
  }
  if (features.length === 0) throw new RangeError(`${file}: expected rows with ${columns.join(', ')}, got none`);
  return features.map(({ properties }) =>
    Object.fromEntries(columns.map((column) => [column, String(properties[column] ?? '').trim()])),
  );
}
