import { expect, it } from 'vitest';

import { evidenceText } from '../../../src/screens/words/evidence.ts';

it.each([
  ['widestHoleDeg', 105.23, 'widest hole', '105.2°'],
  ['coveredDeg', 251, 'turn seen', '251°'],
  ['secondsWithoutLine', 4.256, 'without the line', '4.26 s'],
  ['longestSeconds', 14.4, 'longest stretch of that', '14.4 s'],
  ['aboutSecond', 16, 'at about', '16 s'],
  ['residualPx', 3.5, 'line off its curve by', '3.50 px'],
  ['rockingRmsMm', 12.34, 'rocking at the edge', '12.3 mm'],
  ['standoffMm', 12.34, 'standoff', '12.3 mm'],
  ['shareOfTreadCovered', 0.29, 'share of the tread covered', '29 %'],
  ['inlierShare', 0.3, 'share of the line on one curve', '30 %'],
  ['timeS', 3, 'time', '3 s'],
  ['file', 'a.mp4', 'file', 'a.mp4'],
  ['pictures', 12, 'pictures', '12'],
])('%s: %s', (name, value, shownName, shownValue) => {
  const text = evidenceText(name, value, 'metric');
  expect(text.name).toBe(shownName);
  expect(text.value.replaceAll('\u00a0', ' ')).toBe(shownValue);
});

it('tells lengths and weights in inches and ounces where these are read', () => {
  const shown = (name: string, value: number) =>
    evidenceText(name, value, 'inch-pound').value.replaceAll('\u00a0', ' ');
  expect(shown('standoffMm', 25.4)).toBe('1 in');
  expect(shown('rockingRmsMm', 3.3)).toBe('0.13 in');
  expect(shown('amountG', 14.17)).toBe('0.50 oz');
  expect(shown('coveredDeg', 251)).toBe('251°');
});
