/** Page headers of a Parquet file looked over before it is read: the library follows them without question. */
import type { FileMetaData } from 'hyparquet';
import { parquetHeader } from 'hyparquet/src/column.js';
import type { RandomAccess } from '../../layer-reading.ts';

type ColumnMetaData = NonNullable<FileMetaData['row_groups'][number]['columns'][number]['meta_data']>;

const LARGEST_PAGE = 256 << 20;
const MOST_VALUES = 50_000_000;

/**
 * Throws a `RangeError` when the pages of a row group do not lie one behind the other within their column, or say sizes
 * that no honest page has: a page that steps back would be read for ever, one that swells would fill the memory.
 */
export async function checkPages(file: RandomAccess, group: FileMetaData['row_groups'][number]): Promise<void> {
  if (!(Number(group.num_rows) >= 0 && Number(group.num_rows) <= MOST_VALUES)) {
    throw new RangeError(`a row group of ${group.num_rows} rows is not possible`);
  }
  for (const { meta_data } of group.columns) if (meta_data) await checkColumn(file, meta_data);
}

async function checkColumn(file: RandomAccess, column: ColumnMetaData): Promise<void> {
  const start = Number(column.dictionary_page_offset || column.data_page_offset);
  const length = Number(column.total_compressed_size);
  if (!(start >= 4 && length >= 0 && start + length <= file.byteLength)) throw new RangeError(OUTSIDE);
  const bytes = await file.slice(start, start + length);
  const reader = { view: new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), offset: 0 };
  // The library, too, takes a last single byte for the end.
  while (reader.offset < length - 1) {
    const from = reader.offset;
    const header = parquetHeader(reader);
    const packed = Number(header.compressed_page_size);
    const unpacked = Number(header.uncompressed_page_size);
    const values = header.data_page_header ?? header.dictionary_page_header ?? header.data_page_header_v2;
    const count = Number(values?.num_values);
    if (!(reader.offset > from && packed >= 0 && reader.offset + packed <= length)) throw new RangeError(OUTSIDE);
    if (!(unpacked >= 0 && unpacked <= LARGEST_PAGE && count >= 0 && count <= MOST_VALUES)) {
      throw new RangeError(`a page of ${unpacked} bytes and ${count} values is not possible`);
    }
    if (values?.encoding === undefined || !levelsFit(header.data_page_header_v2, packed)) {
      throw new RangeError('the header of a page is not complete');
    }
    reader.offset += packed;
  }
}

type Header = ReturnType<typeof parquetHeader>;

/** Pages of the second kind say how long their levels are; they stand before the values. */
function levelsFit(header: Header['data_page_header_v2'], packed: number): boolean {
  if (header === undefined) return true;
  const { num_values, num_nulls, num_rows, definition_levels_byte_length, repetition_levels_byte_length } = header;
  const counts = [num_nulls, num_rows].every((count) => count >= 0 && count <= num_values);
  const levels = [definition_levels_byte_length, repetition_levels_byte_length];
  return counts && levels.every((length) => length >= 0) && levels[0] + levels[1] <= packed;
}

const OUTSIDE = 'its pages do not lie within their columns';
