import * as fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';

import {
  formatClock,
  formatClockAndDeg,
  formatDeg,
  formatKnownMass,
  formatMass,
  formatFigure,
  formatKnown,
  formatLength,
  fieldText,
  parseTypedIn,
  formatNumber,
  formatPlusMinus,
  formatPlusMinusDeg,
  formatShare,
} from '../../../src/screens/words/numbers.ts';
import { roundToPlusMinus } from '../../../src/screens/words/roundToPlusMinus.ts';
import { setLanguage } from '../../../src/screens/words/words.ts';
import { formatRoomDirection } from '../../../src/screens/words/directions.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('rounding follows the ±', () => {
  it.each([
    [28.13, 0.94, 28, 1, 0],
    [28.13, 0.42, 28.1, 0.4, 1],
    [28.13, 0.46, 28.1, 0.5, 1],
    [28.13, 1.2, 28, 1, 0],
    [28.13, 1.4, 28, 2, 0],
    [28.13, 12, 28, 10, 0],
    [28.13, 0.3, 28.1, 0.3, 1],
    [28.13, 0.004, 28.1, 0.1, 1],
    [9.96, 0.96, 10, 1, 0],
  ])('%f ± %f', (value, plusMinus, shown, shownPlusMinus, decimals) => {
    expect(roundToPlusMinus(value, plusMinus, 1)).toEqual({
      value: shown,
      plusMinus: shownPlusMinus,
      decimals,
    });
  });

  it('never says a ± more than a fifth smaller than it is', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (plusMinus) => {
        const rounded = roundToPlusMinus(5, plusMinus, 3);
        expect(rounded.plusMinus).toBeGreaterThanOrEqual(0.8 * plusMinus - 1e-9);
      }),
    );
  });

  it('moves the value by less than the ± it is shown with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.double({ min: 0.05, max: 100, noNaN: true }),
        (value, plusMinus) => {
          const rounded = roundToPlusMinus(value, plusMinus, 2);
          expect(Math.abs(rounded.value - value)).toBeLessThanOrEqual(
            0.5 * rounded.plusMinus + 1e-9,
          );
        },
      ),
    );
  });
});

describe('figures as text', () => {
  it('writes grams and ounces with their ±', () => {
    expect(plain(formatMass(28.13, 'metric', 0.94).text)).toBe('28 g ± 1');
    expect(plain(formatMass(28.13, 'inch-pound', 0.94).text)).toBe('0.99 oz ± 0.04');
    expect(plain(formatLength(-1.236, 'metric', 0.02).text)).toBe('−1.24 mm ± 0.02');
  });

  it('writes a weight with no more decimals than it has', () => {
    expect(plain(formatKnownMass(30, 'metric'))).toBe('30 g');
    expect(plain(formatKnownMass(7.0874, 'metric'))).toBe('7.1 g');
    expect(plain(formatKnownMass(7.0874, 'inch-pound'))).toBe('0.25 oz');
  });

  it('never writes minus nothing', () => {
    expect(formatNumber(-0.004, 2)).toBe('0.00');
  });

  it('does not say all is done before it is', () => {
    expect(plain(formatShare(0.9999))).toBe('99 %');
    expect(plain(formatShare(1))).toBe('100 %');
  });
});

describe('units and languages', () => {
  afterEach(() => setLanguage('en'));

  it('shows every kind of figure in either system', () => {
    expect(plain(formatKnown('wheelMass', 16.5, 'metric'))).toBe('16.5 kg');
    expect(plain(formatKnown('wheelMass', 16.5, 'inch-pound'))).toBe('36.4 lb');
    expect(plain(formatKnown('length', 63.5, 'inch-pound'))).toBe('2.5 in');
    expect(plain(formatFigure('unbalance', 3700, 'inch-pound', 130).text)).toBe('5.1 oz·in ± 0.2');
    expect(plain(formatKnown('speed', 100, 'inch-pound'))).toBe('62 mph');
    expect(plain(formatKnown('force', 10, 'inch-pound'))).toBe('2.25 lbf');
  });

  it('writes a decimal comma in German, and reads comma and point in any language', async () => {
    await setLanguage('de');
    expect(plain(formatMass(28.13, 'metric', 0.42).text)).toBe('28,1 g ± 0,4');
    expect(fieldText('wheelMass', 16.5, 'metric')).toBe('16,5');
    expect(parseTypedIn('wheelMass', '16,5', 'metric')).toBe(16.5);
    expect(parseTypedIn('wheelMass', '16.5', 'metric')).toBe(16.5);
    expect(parseTypedIn('wheelMass', 'heavy', 'metric')).toBeNull();
  });

  it('keeps a value through a field, whatever the units, to the digits shown', () => {
    const quantities = ['weight', 'wheelMass', 'length'] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.constantFrom('metric' as const, 'inch-pound' as const),
        fc.double({ min: 0.1, max: 600, noNaN: true }),
        (quantity, units, value) => {
          const back = parseTypedIn(quantity, fieldText(quantity, value, units), units);
          // Half of the coarsest last digit of all: a hundredth of an ounce is 0.28 g.
          expect(Math.abs(back! - value)).toBeLessThanOrEqual(0.15);
        },
      ),
    );
  });
});

describe('clock positions, 12 at the valve and 30 degrees an hour', () => {
  it.each([
    [0, '12:00', '0°'],
    [255, '8:30', '255°'],
    [90, '3:00', '90°'],
    [15, '12:30', '15°'],
    [359.9, '12:00', '0°'],
    [-90, '9:00', '270°'],
    [256.1, '8:30', '256°'],
    [256.3, '8:35', '256°'],
  ])('%f°', (angleDeg, clock, degrees) => {
    expect(formatClock(angleDeg)).toBe(clock);
    expect(formatDeg(angleDeg)).toBe(degrees);
  });

  it('joins both', () => {
    expect(plain(formatClockAndDeg(255))).toBe('8:30 · 255°');
  });

  it('stays within half a step of the angle all round', () => {
    for (let angleDeg = 0; angleDeg < 360; angleDeg += 0.7) {
      const [hour, minute] = formatClock(angleDeg).split(':').map(Number);
      const backDeg = ((hour! % 12) * 60 + minute!) / 2;
      const offDeg = Math.abs(((backDeg - angleDeg + 540) % 360) - 180);
      expect(offDeg).toBeLessThanOrEqual(1.25 + 1e-9);
    }
  });

  it('never claims an angle to be exact', () => {
    expect(plain(formatPlusMinusDeg(0.2))).toBe('± 1°');
    expect(plain(formatPlusMinusDeg(3.4))).toBe('± 4°');
  });
});

describe('directions in the room', () => {
  it('goes clockwise from the camera to the left', () => {
    expect(formatRoomDirection(0)).toBe('toward the camera');
    expect(formatRoomDirection(90)).toBe('to the left');
    expect(formatRoomDirection(180)).toBe('away from the camera');
    expect(formatRoomDirection(-90)).toBe('to the right');
    expect(formatRoomDirection(350)).toBe('toward the camera');
  });
});

describe('a ± that stands alone', () => {
  it('has two digits, never finer than the unit is told and never 0', () => {
    const grams = (half: number) => formatPlusMinus('weight', half, 'metric');
    expect([123.4, 12.34, 1.26, 0.34, 0.01].map(grams)).toEqual([
      '±\u00a0123\u00a0g',
      '±\u00a012\u00a0g',
      '±\u00a01.3\u00a0g',
      '±\u00a00.3\u00a0g',
      '±\u00a00.1\u00a0g',
    ]);
    expect(formatPlusMinus('weight', 1.26, 'inch-pound')).toBe('±\u00a00.04\u00a0oz');
  });
});
