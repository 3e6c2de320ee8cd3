import { expect, test } from 'vitest';
import { base64, dataAddress } from './data-address.ts';

test('base64: the vectors of RFC 4648, section 10', () => {
  const coded = ['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'].map((text) => base64(new TextEncoder().encode(text)));
  expect(coded).toEqual(['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy']);
});

test('a picture says its kind; other bytes are refused', () => {
  expect(dataAddress(Uint8Array.of(0xff, 0xd8, 0xff))).toBe('data:image/jpeg;base64,/9j/');
  expect(dataAddress(Uint8Array.of(0x89, 0x50, 0x4e))).toBe('data:image/png;base64,iVBO');
  expect(() => dataAddress(Uint8Array.of(71, 73, 70, 56))).toThrow(
    'expected JPEG or PNG, got bytes that begin 71 73 70 56',
  );
});
