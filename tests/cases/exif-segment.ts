/** What a phone writes into a picture about itself, the time and the place. */

/** An APP1 segment as a phone writes it (CIPA DC-008): maker, orientation 6, time, and a position in the GPS directory. */
export function exifSegment(): Buffer {
  const tiff = Buffer.alloc(300);
  let free = 140;
  const put = (bytes: Buffer): number => {
    bytes.copy(tiff, free);
    free += bytes.length;
    return free - bytes.length;
  };
  const directory = (at: number, rows: readonly (readonly [number, number, number, number])[]): void => {
    tiff.writeUInt16BE(rows.length, at);
    rows.forEach(([tag, type, count, value], i) => {
      const entry = at + 2 + 12 * i;
      tiff.writeUInt16BE(tag, entry);
      tiff.writeUInt16BE(type, entry + 2);
      tiff.writeUInt32BE(count, entry + 4);
      if (type === 3) tiff.writeUInt16BE(value, entry + 8);
      else tiff.writeUInt32BE(value, entry + 8);
    });
  };
  const degrees = (value: number): Buffer => {
    const out = Buffer.alloc(24);
    [value, 1, 15, 1, 0, 1].forEach((each, i) => {
      out.writeUInt32BE(each, 4 * i);
    });
    return out;
  };
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  const make = put(Buffer.from('Invented\0'));
  const time = put(Buffer.from('2026:05:20 09:30:00\0'));
  const latitude = put(degrees(27));
  const longitude = put(degrees(79));
  directory(8, [
    [0x010f, 2, 9, make],
    [0x0112, 3, 1, 6],
    [0x8769, 4, 1, 62],
    [0x8825, 4, 1, 84],
  ]);
  directory(62, [[0x9003, 2, 20, time]]);
  directory(84, [
    [1, 2, 2, 0x4e000000],
    [2, 5, 3, latitude],
    [3, 2, 2, 0x57000000],
    [4, 5, 3, longitude],
  ]);
  const content = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff.subarray(0, free)]);
  const head = Buffer.alloc(4);
  head.writeUInt16BE(0xffe1, 0);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}
