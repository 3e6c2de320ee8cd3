/**
 * Snappy for Parquet files, in place of a WebAssembly build that starts itself when it is imported: the page's policy
 * allows no code but its own files. The build puts this where that library is asked for.
 */
import { snappyUncompress as uncompressInto } from 'hyparquet';

export function snappyUncompress(input: Uint8Array, outputLength: number): Uint8Array {
  const output = new Uint8Array(outputLength);
  uncompressInto(input, output);
  return output;
}

export const snappyUncompressor = () => snappyUncompress;
