import { describe, expect, it } from 'vitest';

import {
  beadSeatDiameterMm,
  rimDiameterMm,
  tyreDimensions,
} from '../../../src/balance/tyreDimensions.ts';
import { tyreSizeFromText } from '../../../src/balance/tyreSize.ts';
import { valueOf } from './helpers.ts';

const overall = (text: string) =>
  valueOf(tyreDimensions(valueOf(tyreSizeFromText(text)))).overallDiameterMm;

describe('tyre and rim tables', () => {
  it.each([
    [13, 330],
    [14, 356],
    [15, 381],
    [16, 406],
    [17, 432],
    [18, 457],
    [19, 483],
    [20, 508],
  ])('rim diameter of code %i by UN R30 (from memory): %i mm', (code, mm) => {
    expect(valueOf(rimDiameterMm(code))).toBe(mm);
  });

  it.each([
    [13, 329.4],
    [14, 354.8],
    [15, 380.2],
    [16, 405.6],
    [17, 436.6],
    [18, 462],
    [19, 487.4],
    [20, 512.8],
  ])('bead seat of code %i by ISO 4000-2 (from memory): %f mm', (code, mm) => {
    expect(valueOf(beadSeatDiameterMm(code))).toBeCloseTo(mm, 9);
  });

  it.each([
    ['195/65R15', 635],
    ['205/55R16', 632],
    ['225/45R17', 634],
    ['225/40R18', 637],
    ['245/40R19', 679],
    ['175/70R13', 574],
  ])('design diameter of %s: %i mm (ETRTO values, from memory)', (text, mm) => {
    // Tables round the section height first: up to a millimetre either way.
    expect(Math.abs(overall(text) - mm)).toBeLessThanOrEqual(1);
  });

  it('205/55R16 published 631.9 (read), 245/40R19 new tyre 673–685 (JATMA, read)', () => {
    expect(Math.abs(overall('205/55R16') - 631.9)).toBeLessThan(0.5);
    expect(overall('245/40R19')).toBeGreaterThan(673);
    expect(overall('245/40R19')).toBeLessThan(685);
  });

  it.each([
    ['LT235/85R16', 31.7],
    ['LT245/75R16', 30.5],
    ['LT265/75R16', 31.7],
    ['LT315/75R16', 34.6],
  ])('light-truck sheet %s: %f in (read)', (text, inch) => {
    // Sheets round to a tenth of an inch (0.05), the rim's 406 mm stand for 406.4 (0.016).
    expect(Math.abs(overall(text) / 25.4 - inch)).toBeLessThanOrEqual(0.067);
  });
});
