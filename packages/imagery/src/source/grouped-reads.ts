/** Many small ranges of a file in few requests: neighbours are read together, in order of their place in the file. */
import type { BytesPort, Cancellation } from './bytes-port.ts';

export interface ByteRange {
  readonly offset: number;
  readonly length: number;
}

export interface RangeGroup {
  readonly offset: number;
  readonly length: number;
  /** Positions in the list of ranges that was given. */
  readonly members: readonly number[];
}

/** Reading this many bytes for nothing costs less than a request of its own (64 KB: 10 ms at 50 Mbit/s). */
const GAP_BYTES = 65_536;
/** No request is larger unless a single range is: bounds what is in memory, and what a lost connection costs. */
const GROUP_BYTES = 4 * 2 ** 20;

/**
 * Ranges put together into requests: a range joins the one before it when at most 64 KB lie between them and the request stays
 * within 4 MB.
 *
 * @example groupedRanges([{ offset: 0, length: 10 }, { offset: 12, length: 5 }])
 *   // [{ offset: 0, length: 17, members: [0, 1] }]
 */
export function groupedRanges(ranges: readonly ByteRange[]): RangeGroup[] {
  const order = ranges.map((_, i) => i).sort((a, b) => ranges[a].offset - ranges[b].offset);
  const groups: { offset: number; length: number; members: number[] }[] = [];
  for (const i of order) {
    const { offset, length } = ranges[i];
    const last = groups.at(-1);
    const end = Math.max(offset + length, last ? last.offset + last.length : 0);
    if (last && offset - (last.offset + last.length) <= GAP_BYTES && end - last.offset <= GROUP_BYTES) {
      last.length = end - last.offset;
      last.members.push(i);
    } else {
      groups.push({ offset, length, members: [i] });
    }
  }
  return groups;
}

/** The bytes of each member of a group; shorter than asked for where the source ends. */
export async function readGroup(
  port: BytesPort,
  ranges: readonly ByteRange[],
  group: RangeGroup,
  signal?: Cancellation,
): Promise<readonly Uint8Array[]> {
  const bytes = await port.read(group.offset, group.length, signal);
  return group.members.map((i) => {
    const start = ranges[i].offset - group.offset;
    return bytes.subarray(start, start + ranges[i].length);
  });
}
