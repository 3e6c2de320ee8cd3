/** A small table that an option names, its columns checked before anything is done with it. */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { readTable } from '@crownfall/exchange';

/** Rows of the file as text by column; RangeError for a missing column, with those that are there. */
export async function tableAt<Column extends string>(
  path: string,
  columns: readonly Column[],
): Promise<Record<Column, string>[]> {
  return readTable(await readFile(path), basename(path), columns);
}
