import { expect, it } from 'vitest';

import { evidenceText } from '../../../src/screens/words/evidence.ts';

it.each([
  ['widestHoleDeg', 105.23, 'widest hole', '105.2°'],
  ['coveredDeg', 251, 'turn seen', '251°'],
  ['secondsWithoutLine', 4.256, 'seconds without line', '4.26'],
  ['residualPx', 3.5, 'residual', '3.50 px'],
  ['rockingRmsMm', 12.34, 'rocking rms', '12.3 mm'],
  ['timeS', 3, 'time', '3 s'],
  ['file', 'a.mp4', 'file', 'a.mp4'],
  ['pictures', 12, 'pictures', '12'],
])('%s: %s', (name, value, shownName, shownValue) => {
  const text = evidenceText(name, value);
  expect(text.name).toBe(shownName);
  expect(text.value.replaceAll('\u00a0', ' ')).toBe(shownValue);
});
