import { describe, expect, test } from 'vitest';
import { blobPort, bytesPort, fileHandlePort } from './bytes-port.ts';
import { groupedRanges } from './grouped-reads.ts';
import { pagedPort } from './paged-port.ts';
import { type FetchLike, rangePort } from './range-port.ts';

const DATA = Uint8Array.from({ length: 200_000 }, (_, i) => i % 251);
const part = (offset: number, length: number) => DATA.slice(offset, offset + length);

/** A server of DATA as RFC 9110, section 14, wants it. */
const server: FetchLike = async (_, { headers }) => {
  const [, from, to] = /bytes=(\d+)-(\d+)/.exec(headers.Range) ?? [];
  const body = DATA.slice(Number(from), Number(to) + 1);
  const range = `bytes ${from}-${Number(from) + body.length - 1}/${DATA.length}`;
  return {
    status: Number(from) >= DATA.length ? 416 : 206,
    headers: { get: (name) => (name === 'content-range' ? range : null) },
    arrayBuffer: async () => body.buffer,
  };
};

const handle = {
  /** At most 1000 bytes at once, as a system may. */
  read: async (into: Uint8Array, start: number, length: number, position: number) => {
    const piece = part(position, Math.min(length, 1000));
    into.set(piece, start);
    return { bytesRead: piece.length };
  },
};

describe('ports', () => {
  const ports = [
    ['bytes', bytesPort(DATA)],
    ['blob', blobPort(new Blob([DATA]))],
    ['file', fileHandlePort(handle, DATA.length)],
    ['server', rangePort('http://example.test/x.tif', server)],
    ['pages', pagedPort(bytesPort(DATA))],
  ] as const;
  test.each(ports)('%s: any range, and what there is at the end', async (_, port) => {
    expect(await port.read(70_000, 90_000)).toEqual(part(70_000, 90_000));
    expect(await port.read(0, 16)).toEqual(part(0, 16));
    expect(await port.read(199_990, 50)).toEqual(part(199_990, 50));
    expect((await port.read(300_000, 5)).length).toBe(0);
    expect(port.size).toBe(DATA.length);
  });

  test('a server that ignores ranges is found out', async () => {
    const whole: FetchLike = async (url, options) => ({ ...(await server(url, options)), status: 200 });
    await expect(rangePort('http://example.test/x', whole).read(0, 9)).rejects.toThrow(
      'does not answer range requests',
    );
    const gone: FetchLike = async (url, options) => ({ ...(await server(url, options)), status: 404 });
    await expect(rangePort('http://example.test/x', gone).read(0, 9)).rejects.toThrow('answered 404');
    const dead: FetchLike = () => Promise.reject(new Error('no route'));
    await expect(rangePort('http://example.test/x', dead).read(0, 9)).rejects.toThrow('could not be reached');
  });

  test('small reads of one page share one request', async () => {
    let requests = 0;
    const read = async (offset: number, length: number) => {
      requests++;
      return part(offset, length);
    };
    const paged = pagedPort({ size: DATA.length, read });
    await Promise.all([paged.read(10, 4), paged.read(500, 4), paged.read(60_000, 100)]);
    expect(requests).toBe(1);
  });
});

describe('many ranges in few requests', () => {
  test('neighbours join, in whatever order they are asked for', () => {
    const ranges = [
      { offset: 5000, length: 10 },
      { offset: 0, length: 100 },
      { offset: 1_000_000, length: 7 },
    ];
    expect(groupedRanges(ranges)).toEqual([
      { offset: 0, length: 5010, members: [1, 0] },
      { offset: 1_000_000, length: 7, members: [2] },
    ]);
    expect(groupedRanges([])).toEqual([]);
  });

  test('ten thousand strips of 30 KB take 72 requests of 4 MB, not ten thousand', () => {
    const strips = Array.from({ length: 10_000 }, (_, i) => ({ offset: 8 + 30_000 * i, length: 30_000 }));
    const groups = groupedRanges(strips);
    expect(groups.length).toBe(Math.ceil(10_000 / Math.floor((4 * 2 ** 20) / 30_000)));
    expect(Math.max(...groups.map((group) => group.length))).toBeLessThanOrEqual(4 * 2 ** 20);
    expect(groups.flatMap((group) => group.members).length).toBe(10_000);
  });
});
