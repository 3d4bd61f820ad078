import { describe, expect, it } from 'vitest';

import { noticeFor } from '../../../src/contract/notice.ts';
import { adviceFor } from '../../../src/screens/read/adviceFor.ts';
import { readingFileName } from '../../../src/screens/read/readingFileName.ts';
import { readingSummary } from '../../../src/screens/read/readingSummary.ts';
import { warningsFor } from '../../../src/screens/read/warningsFor.ts';
import { NO_STREAK, remedyOf, streakAfter } from '../../../src/screens/state/refusalAdvice.ts';
import { acceptedReading, shedSetup } from '../../browser/gallery/fixtures.ts';
import type { ReadingWish } from '../../browser/gallery/fixtures.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const summaryOf = (wish: ReadingWish) => readingSummary(acceptedReading(wish), shedSetup);
const adviceOf = (wish: ReadingWish) => adviceFor(summaryOf(wish), 5, 'metric');

describe('what stands over a reading', () => {
  it('says how much, where and what next', () => {
    const advice = adviceOf({ amountG: 28.1, heavyDeg: 75, sdG: 0.45 });
    expect(plain(advice.figure.text)).toBe('28.1 g ± 0.9');
    expect(plain(advice.where)).toBe('Stick on at 8:30 · 255°');
    expect(plain(advice.next)).toBe('Stick 30 g there, then sweep again to prove it.');
  });

  it('names no place when no side is clearly heavy, and only an upper bound', () => {
    const advice = adviceOf({ amountG: 1.2, heavyDeg: 75, sdG: 1.1 });
    expect(advice.before).toBe('at most');
    // 1.2 + 1.96 · 1.1 = 3.36 g, rounded up so that "at most" stays true.
    expect(plain(advice.figure.text)).toBe('4 g');
    expect(`${advice.where} ${advice.next}`).not.toMatch(/\d+:\d\d/);
    expect(advice.next).toMatch(/Nothing to stick on/);
  });

  it('does not call a wheel balanced when the bound is above one weight', () => {
    const advice = adviceOf({ amountG: 4, heavyDeg: 75, sdG: 4 });
    expect(advice.next).toMatch(/sweep again/);
    expect(advice.next).not.toMatch(/Nothing to stick on/);
  });

  it('sticks nothing on where the place is not known, whatever the file says', () => {
    const weights = [{ massG: 5, radiusMm: 185, angleDeg: 255 }];
    const summary = summaryOf({ amountG: 4, heavyDeg: 75, sdG: 4, weights });
    expect(summary.weights).toEqual([]);
    expect(summary.leftG).toBeCloseTo(4, 6);
  });

  it('lists several weights, and ones to take off', () => {
    const two = adviceOf({
      amountG: 28,
      heavyDeg: 75,
      sdG: 0.4,
      weights: [
        { massG: 20, radiusMm: 185, angleDeg: 240 },
        { massG: 10, radiusMm: 185, angleDeg: 280 },
      ],
    });
    expect(plain(two.next)).toContain('20 g at 8:00 and 10 g at 9:20');
    const off = adviceOf({
      amountG: 5,
      heavyDeg: 75,
      sdG: 0.3,
      weights: [{ massG: -5, radiusMm: 185, angleDeg: 75 }],
    });
    expect(plain(off.next)).toMatch(/^Take 5 g off at 2:30/);
  });

  it('turns the angle range half round for the light spot', () => {
    const { spots } = summaryOf({ amountG: 20, heavyDeg: 2, sdG: 0.5 });
    expect(spots!.lightDeg).toBeCloseTo(182, 6);
    expect(spots!.plusMinusDeg).toBeCloseTo(2.81, 1);
    expect(spots!.lightRangeDeg[0]).toBeCloseTo(179.19, 1);
    expect(spots!.lightRangeDeg[1]).toBeCloseTo(184.81, 1);
  });
});

describe('what to keep in mind', () => {
  const warnings = (wish: ReadingWish, assumed: string[] = []) =>
    warningsFor(acceptedReading(wish), summaryOf(wish), shedSetup, assumed, 'metric').map(plain);

  it('is nothing for a good reading', () => {
    expect(warnings({ amountG: 28, heavyDeg: 75, sdG: 0.4 })).toEqual([]);
  });

  it('names assumed values as long as the response rests on them', () => {
    const wish = { amountG: 28, heavyDeg: 75, sdG: 0.4 };
    expect(warnings(wish, ['wheel mass'])[0]).toContain('wheel mass');
    expect(warnings({ ...wish, source: 'trial' }, ['wheel mass'])).toEqual([]);
  });

  it('tells of a stand that leans as far as a quarter ounce would', () => {
    expect(warnings({ amountG: 28, heavyDeg: 75, sdG: 0.4, standMrad: 15 })[0]).toContain('4.6 mm');
  });

  it('tells of a place that is only roughly known', () => {
    expect(warnings({ amountG: 6, heavyDeg: 75, sdG: 1.5 })[0]).toContain('± 30°');
  });
});

describe('advice changes when it did not help', () => {
  it('gives the second remedy from the second time in a row', () => {
    const dark = noticeFor('too-dark');
    const once = streakAfter(NO_STREAK, 'too-dark');
    expect(remedyOf(dark, once)).toBe(dark.remedy);
    const twice = streakAfter(once, 'too-dark');
    expect(remedyOf(dark, twice)).toBe(noticeFor('too-dark', undefined, 1).remedy);
    expect(remedyOf(dark, twice)).not.toBe(dark.remedy);
    expect(remedyOf(dark, streakAfter(streakAfter(once, 'too-bright'), 'too-dark'))).toBe(
      dark.remedy,
    );
  });
});

describe('the name of the saved file', () => {
  it('comes from the label, made fit', () => {
    expect(readingFileName('minibus front left')).toBe('minibus-front-left.reading.json');
    expect(readingFileName('a/b: "c"')).toBe('a-b-c.reading.json');
    expect(readingFileName('first-turn')).toBe('first-turn.reading.json');
    expect(readingFileName('  ')).toBe('sweep.reading.json');
    expect(readingFileName(undefined)).toBe('sweep.reading.json');
    expect(readingFileName('../x')).toBe('x.reading.json');
  });
});

describe('the lean of the stand', () => {
  const leaning = (standMradStandardError?: number) => {
    const reading = acceptedReading({ amountG: 28, heavyDeg: 75, sdG: 0.4 });
    const doubt = standMradStandardError === undefined ? {} : { standMradStandardError };
    const tilt = { ...reading.tilt, standMrad: 10, ...doubt };
    const known = { ...reading, tilt };
    const summary = readingSummary(known, shedSetup);
    return { summary, warnings: warningsFor(known, summary, shedSetup, [], 'metric') };
  };

  it('is told with its ± where it is larger than that', () => {
    const { summary, warnings } = leaning(4);
    // 1.96 · 4 mrad at the edge's radius.
    expect(summary.standPlusMinusMm).toBeCloseTo((7.84 / 1000) * shedSetup.wheel.edgeRadiusMm, 6);
    expect(summary.isStandTold).toBe(true);
    expect(warnings.join()).toMatch(/The stand leans/);
  });

  it('has no direction where its ± is larger, and nobody is sent to level the plate', () => {
    const { summary, warnings } = leaning(6);
    expect(summary.isStandTold).toBe(false);
    expect(warnings.join()).not.toMatch(/The stand leans/);
  });

  it('is told as it stands by a reading that does not say how well it is known', () => {
    const { summary } = leaning();
    expect(summary.standPlusMinusMm).toBeNull();
    expect(summary.isStandTold).toBe(true);
  });
});
