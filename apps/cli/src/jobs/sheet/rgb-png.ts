/** Pixels as PNG (ISO/IEC 15948), 8-bit red, green and blue. */
import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The file of `width · height · 3` samples, row by row from the top left; every row holds differences to its left pixel. */
export function rgbPng(rgb: Uint8Array, width: number, height: number): Uint8Array {
  const stride = 3 * width;
  const rows = new Uint8Array((stride + 1) * height);
  for (let y = 0; y < height; y++) {
    const [from, to] = [y * stride, y * (stride + 1)];
    rows[to] = 1;
    for (let i = 0; i < stride; i++) rows[to + 1 + i] = rgb[from + i] - (i < 3 ? 0 : rgb[from + i - 3]);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const data = deflateSync(rows);
  return Buffer.concat([
    Buffer.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const out = Buffer.alloc(named.length + 8);
  out.writeUInt32BE(data.length, 0);
  out.set(named, 4);
  out.writeUInt32BE(crc32(named), named.length + 4);
  return out;
}
