import { describe, expect, test } from 'vitest';
import { addressOf, readAddress } from './address.ts';

const PART = {
  bench: 'outline' as const,
  blockId: 'B 7/ä',
  treeId: 'T&1',
  filters: { kind: 'sidewalk', host: null, bloom: 'open' },
  mapView: [-80.0612345, 28.3, 17.25] as const,
};

describe('the address', () => {
  test('restores what it was made from, awkward names too', () => {
    expect(readAddress(addressOf(PART))).toEqual(PART);
  });

  test('is empty when everything is as at first', () => {
    expect(addressOf(readAddress(''))).toBe('');
  });

  test.each(['#map=a,b,c', '#map=1,2', '#map=0,95,3', '#bench=kitchen'])(
    'what cannot be is passed over: %s',
    (hash) => {
      expect(readAddress(hash)).toEqual(readAddress(''));
    },
  );
});
