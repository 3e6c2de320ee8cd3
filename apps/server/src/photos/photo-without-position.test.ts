import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readKeptExif, writeKeptExif } from './exif-kept.ts';
import { photoWithoutPosition } from './photo-without-position.ts';

const segment = (marker: number, content: readonly number[] | Buffer): Buffer => {
  const bytes = Buffer.from(content as number[]);
  return Buffer.concat([Buffer.from([0xff, marker, (bytes.length + 2) >> 8, (bytes.length + 2) & 255]), bytes]);
};
const text = (words: string): Buffer => Buffer.from(words, 'latin1');

/** Start, frame of 4 × 3 pixels, scan with a stuffed zero and a restart marker in its data, end. */
const SOI = Buffer.from([0xff, 0xd8]);
const FRAME = segment(0xc0, [8, 0, 3, 0, 4, 1, 1, 0x11, 0]);
const SCAN = Buffer.concat([segment(0xda, [1, 1, 0, 0, 63, 0]), Buffer.from([1, 0xff, 0, 2, 0xff, 0xd0, 3])]);
const EOI = Buffer.from([0xff, 0xd9]);

describe('a photo', () => {
  test('keeps the picture and what shows it, drops every other segment and what follows the end', () => {
    const kept = [
      segment(0xe0, text('JFIF\0\x01\x01')),
      segment(0xe2, text('ICC_PROFILE\0…')),
      segment(0xee, text('Adobe\0')),
    ];
    const dropped = [
      segment(0xe1, text('http://ns.adobe.com/xap/1.0/\0<exif:GPSLatitude>27,15N</exif:GPSLatitude>')),
      segment(0xe2, text('MPF\0 second pictures')),
      segment(0xed, text('Photoshop 3.0\0 City')),
      segment(0xfe, text('a comment with a position')),
    ];
    const file = Buffer.concat([SOI, kept[0], ...dropped, kept[1], kept[2], FRAME, SCAN, EOI, text('trailer GPS')]);
    const photo = photoWithoutPosition(file);
    expect(photo).toMatchObject({ width: 4, height: 3, takenAt: null });
    expect(Buffer.from(photo?.bytes ?? [])).toEqual(Buffer.concat([SOI, ...kept, FRAME, SCAN, EOI]));
    expect(photoWithoutPosition(file, true)?.bytes).toEqual(file);
  });

  test('is refused when it is cut anywhere, or no picture', () => {
    const file = Buffer.concat([SOI, FRAME, SCAN, EOI]);
    expect(photoWithoutPosition(file)).not.toBeNull();
    for (let end = 0; end < file.length; end++) expect(photoWithoutPosition(file.subarray(0, end))).toBeNull();
    expect(photoWithoutPosition(Buffer.concat([SOI, FRAME, EOI]))).toBeNull();
    const empty = segment(0xc0, [8, 0, 0, 0, 4, 1, 1, 0x11, 0]);
    expect(photoWithoutPosition(Buffer.concat([SOI, empty, SCAN, EOI]))).toBeNull();
  });

  test('random bytes never throw', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => void photoWithoutPosition(bytes)));
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        readKeptExif(Buffer.concat([text('Exif\0\0'), bytes]));
      }),
    );
  });
});

describe('EXIF that is kept', () => {
  test.each([
    [{}],
    [{ orientation: 6 }],
    [{ takenAt: '2026:05:20 09:30:00' }],
    [{ orientation: 8, takenAt: '2026:05:20 09:30:00' }],
  ])('is read as it was written: %o', (kept) => {
    const content = writeKeptExif(kept);
    expect(content === null ? {} : readKeptExif(content)).toEqual(kept);
  });
});
