import type { ByteStream } from '../byte-stream.ts';
import { type JsonBreak, jsonStream, type NotNumbers } from '../json/json-stream.ts';
import type { FeatureTaker } from './feature-taker.ts';

/** What a stream of features came to. */
export interface FeatureStreamEnd {
  readonly broken: JsonBreak | null;
  readonly notNumbers: NotNumbers | null;
  /** The file's `type` member. */
  readonly type: unknown;
}

/** A piece longer than this is cut, so that a whole file in one piece needs no second copy of itself. */
const PIECE_BYTES = 1 << 20;

/**
 * Hands the features of a FeatureCollection to the collector one by one; nothing but the current one is held. Reads the
 * stream to its end even when the text breaks, so that its owner may count and hash it.
 */
export async function streamFeatures(bytes: ByteStream, collector: FeatureTaker): Promise<FeatureStreamEnd> {
  let type: unknown;
  const json = jsonStream(['$.type', '$.crs', '$.features.*'], (value, key, depth) => {
    if (depth > 1) collector.addFeature(value);
    else if (key === 'crs') collector.crsMember(value);
    else type = value;
  });
  let sound = true;
  for await (const piece of bytes) {
    for (let at = 0; at < piece.length && sound; at += PIECE_BYTES) {
      sound = json.push(piece.subarray(at, at + PIECE_BYTES));
      await collector.ready();
    }
  }
  return { ...json.end(), type };
}
