import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { requestedAddress } from '../../../src/server/requestedAddress.ts';

const addressOf = (target: string) => {
  const address = requestedAddress(target);
  return address.ok ? address.value : 'refused';
};

describe('address of a request', () => {
  it('is the path, decoded once, with the page for the folder', () => {
    expect(addressOf('/')).toBe('/index.html');
    expect(addressOf('/?lang=de#x')).toBe('/index.html');
    expect(addressOf('/assets/index-CXKOqpxF.js')).toBe('/assets/index-CXKOqpxF.js');
    expect(addressOf('/wheel%20one.mp4')).toBe('/wheel one.mp4');
    expect(addressOf('/R%C3%A4der.txt')).toBe('/Räder.txt');
  });

  it.each([
    ['steps up', '/../package.json'],
    ['steps up below', '/assets/../../package.json'],
    ['encoded steps', '/%2e%2e/package.json'],
    ['half encoded steps', '/.%2E/package.json'],
    ['encoded strokes', '/..%2fpackage.json'],
    ['doubly encoded steps', '/%252e%252e/package.json'],
    ['back strokes', '/..\\package.json'],
    ['encoded back strokes', '/..%5cpackage.json'],
    ['a step on the spot', '/./index.html'],
    ['another machine', '//example.org/index.html'],
    ['a whole address', 'http://example.org/index.html'],
    ['a file address', 'file:///etc/hostname'],
    ['no path', 'index.html'],
    ['nothing', ''],
    ['a star', '*'],
    ['a null sign', '/index.html%00.png'],
    ['a new line', '/index.html%0d%0aX: y'],
    ['broken encoding', '/%'],
    ['broken UTF-8', '/%c0%ae%c0%ae/package.json'],
    ['an empty part', '/assets//index.js'],
  ])('refuses %s', (_, target) => {
    expect(addressOf(target)).toBe('refused');
  });

  it('never lets a step or a foreign sign through, whatever is asked', () => {
    const piece = fc.constantFrom(
      '..',
      '.',
      '/',
      '\\',
      '%2e',
      '%2f',
      '%5c',
      '%25',
      '%00',
      'a',
      '?',
      '#',
      ';',
      '~',
      ':',
      ' ',
      '%c0',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const address = requestedAddress(`/${pieces.join('')}`);
        if (!address.ok) return;
        expect(address.value).toMatch(/^\//);
        expect(address.value.split('/')).not.toContain('..');
        expect(address.value.split('/')).not.toContain('.');
        // oxlint-disable-next-line no-control-regex
        expect(address.value).not.toMatch(/[\\\u0000-\u001f%]|\/\//);
      }),
      { numRuns: 2000 },
    );
  });
});
