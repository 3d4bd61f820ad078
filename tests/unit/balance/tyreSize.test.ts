import { describe, expect, it } from 'vitest';
import {
  beadSeatDiameterMm,
  rimDiameterMm,
  tyreDimensions,
} from '../../../src/balance/tyreDimensions.ts';
import { tyreSizeFromText } from '../../../src/balance/tyreSize.ts';
import { vectorAngleDeg } from '../../../src/quantities/vector.ts';
import { failureOf, valueOf } from './outcomeHelpers.ts';

describe('tyre sizes', () => {
  it.each([
    ['205/55 R16 91V', 'metric', 205, 55, 16, false],
    ['P205/55ZR16', 'metric', 205, 55, 16, false],
    ['lt235/85r16', 'metric', 235, 85, 16, true],
    ['195/65 R 15 C 104/102', 'metric', 195, 65, 15, true],
    ['215/75R17.5', 'metric', 215, 75, 17.5, false],
    ['165 R 13', 'metric-without-aspect', 165, 82, 13, false],
    ['185R14C', 'metric-without-aspect', 185, 82, 14, true],
    ['7.50-16', 'inch', 190.5, 103, 16, false],
    ['6,00R16 LT', 'inch', 152.4, 103, 16, true],
  ] as const)('%s', (text, form, width, aspect, rim, isLightTruck) => {
    const size = valueOf(tyreSizeFromText(text));
    expect(size).toMatchObject({ form, aspectPercent: aspect, rimCode: rim, isLightTruck });
    expect(size.sectionWidthMm).toBeCloseTo(width, 9);
    expect(size.isAspectAssumed).toBe(form !== 'metric');
  });

  it('reads the overall diameter of flotation sizes off the sidewall', () => {
    const size = valueOf(tyreSizeFromText('31x10.50 R15 LT'));
    expect(size).toMatchObject({ form: 'flotation', rimCode: 15, isLightTruck: true });
    expect(valueOf(tyreDimensions(size)).overallDiameterMm).toBeCloseTo(31 * 25.4, 9);
  });

  it.each(['', 'sixteen inch', '205-55-16', '205/55', '20555R16'])('"%s" is unreadable', (text) => {
    expect(failureOf(tyreSizeFromText(text)).code).toBe('tyre-size-unreadable');
  });

  it.each([
    ['999/55R16', 'sectionWidthMm'],
    ['205/05R16', 'aspectPercent'],
    ['205/55R61', 'rimCode'],
    ['12x10.50R15', 'aspectPercent'],
  ])('%s is impossible: %s', (text, quantity) => {
    expect(failureOf(tyreSizeFromText(text))).toMatchObject({
      code: 'tyre-size-impossible',
      evidence: { quantity },
    });
  });

  it('proposes radii as assumed, near those of a known wheel', () => {
    const dimensions = valueOf(tyreDimensions(valueOf(tyreSizeFromText('205/55R16'))));
    expect(Math.abs(dimensions.edgeRadius.valueMm - 305)).toBeLessThan(3);
    expect(Math.abs(dimensions.adhesiveWeightRadius.valueMm - 185)).toBeLessThan(3);
    expect(dimensions.clipOnWeightRadius.valueMm).toBeGreaterThan(202);
    expect(dimensions.edgeRadius.origin).toBe('assumed');
  });

  it('has plain-inch seats for half codes, and names codes that no rim has', () => {
    expect(valueOf(beadSeatDiameterMm(17.5))).toBeCloseTo(444.5, 9);
    expect(failureOf(beadSeatDiameterMm(99)).code).toBe('input-out-of-range');
    expect(failureOf(rimDiameterMm(Number.NaN)).code).toBe('input-out-of-range');
    const size = valueOf(tyreSizeFromText('205/55R16'));
    expect(failureOf(tyreDimensions({ ...size, sectionWidthMm: Number.NaN })).code).toBe(
      'input-out-of-range',
    );
    expect(failureOf(tyreDimensions({ ...size, rimCode: 99 })).code).toBe('input-out-of-range');
  });

  it('angles of nothing are nothing', () => {
    expect(vectorAngleDeg({ along0: 0, along90: 0 })).toBe(0);
  });
});
