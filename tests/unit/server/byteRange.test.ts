import { describe, expect, it } from 'vitest';

import { byteRange } from '../../../src/server/byteRange.ts';

/** Examples of RFC 9110, section 14.1.2, for a file of 10 000 bytes. */
describe('range of bytes', () => {
  it.each([
    ['bytes=0-499', 0, 499],
    ['bytes=500-999', 500, 999],
    ['bytes=-500', 9500, 9999],
    ['bytes=9500-', 9500, 9999],
    ['bytes=0-0', 0, 0],
    ['bytes=-20000', 0, 9999],
    ['bytes=9999-20000', 9999, 9999],
  ])('%s', (header, firstByte, lastByte) => {
    expect(byteRange(header, 10_000)).toEqual({ firstByte, lastByte });
  });

  it.each([
    [undefined],
    [''],
    ['bytes=0-0,-1'],
    ['lines=1-2'],
    ['bytes=9-3'],
    ['bytes=-'],
    ['bytes=x'],
  ])('the whole file for %s', (header) => {
    expect(byteRange(header, 10_000)).toBeNull();
  });

  it.each([['bytes=10000-'], ['bytes=99999-100000'], ['bytes=-0']])('nothing for %s', (header) => {
    expect(byteRange(header, 10_000)).toBe('unsatisfiable');
  });
});
