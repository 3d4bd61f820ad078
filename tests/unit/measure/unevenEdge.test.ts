import { expect, it } from 'vitest';

import { deviationAboutZero, shapeRound } from '../../../src/measure/sweep/unevenEdge.ts';
import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';

it('tells the shape round the wheel, its mean and once-round wave left to the wheel', () => {
  const rad = Math.PI / 180;
  const steps = (deg: number) => (Math.floor(deg / 7.5) % 2 === 0 ? 1.5 : -1.5);
  const tilt = (deg: number) => 0.7 + 2 * Math.cos((deg - 40) * rad);
  const normal = normalFrom(seededRandom(3));
  const at = Array.from({ length: 7200 }, (_, i) => (i * 0.73) % 360);
  const shape = shapeRound(
    at.map((deg) => tilt(deg) + steps(deg) + 0.2 * normal()),
    (i) => at[i],
  );
  for (let deg = 1.25; deg < 360; deg += 2.5) expect(shape(deg) - steps(deg)).toBeCloseTo(0, 0);
  let once = 0;
  for (let deg = 1.25; deg < 360; deg += 2.5) once += shape(deg) * Math.cos((deg - 40) * rad);
  expect(Math.abs(once / 72)).toBeLessThan(0.02);
});

it('is a standard deviation in which a few wild values and unknown ones do not count', () => {
  const normal = normalFrom(seededRandom(4));
  const values = Array.from({ length: 4000 }, (_, i) =>
    i % 50 === 0 ? 40 : i % 51 === 0 ? NaN : normal(),
  );
  expect(deviationAboutZero(values)).toBeCloseTo(1, 0);
  expect(deviationAboutZero([])).toBe(0);
});
