import { expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { evenGains } from '../../../src/measure/sweep/evenGains.ts';
import { RAD_PER_DEG } from '../../../src/quantities/angle.ts';

const AZIMUTHS_DEG = Float64Array.from({ length: 19 }, (_, b) => 5 * (b - 9));
const PICTURES = 400;

/** Heights of a wheel that leans by 6 mm and is turned once, each block by a gain and about a place of its own. */
function heightsOf(gainAt: (azimuthDeg: number) => number, riseMm = 0, noiseMm = 0.1) {
  const normal = normalFrom(seededRandom(4));
  const blocks = AZIMUTHS_DEG.length;
  const heightMm = Float32Array.from({ length: PICTURES * blocks }, (_, at) => {
    const [i, b] = [Math.floor(at / blocks), at % blocks];
    const turned = (360 * i) / PICTURES;
    const tilt = 6 * Math.cos((AZIMUTHS_DEG[b] - turned) * RAD_PER_DEG);
    const rocking = 2 * Math.sin(i / 15) * Math.sin(AZIMUTHS_DEG[b] * RAD_PER_DEG);
    const rise = riseMm * Math.sin(i / 5);
    return 5 + 0.1 * b + gainAt(AZIMUTHS_DEG[b]) * (tilt + rocking) + rise + noiseMm * normal();
  });
  return { azimuthsDeg: AZIMUTHS_DEG, heightMm };
}

it('tells how much more the flanks move, beside the middle', () => {
  const gainAt = (a: number) => 1 + 0.12 * (Math.abs(a) / 45) ** 4 + 0.02 * (a / 45);
  const told = evenGains(heightsOf(gainAt));
  const before = Math.max(...AZIMUTHS_DEG.map((a) => Math.abs(gainAt(a) - 1)));
  const after = Math.max(...told.map((g, b) => Math.abs(gainAt(AZIMUTHS_DEG[b]) / g - 1)));
  expect(before).toBeGreaterThan(0.13);
  expect(after).toBeLessThan(0.03);
});

it('leaves blocks alone that all move as they should, though the picture rises and falls', () => {
  const told = evenGains(heightsOf(() => 1, 0.3));
  for (const g of told) expect(Math.abs(g - 1)).toBeLessThan(0.02);
});

it('says nothing of blocks that were hardly seen', () => {
  const seen = heightsOf((a) => (Math.abs(a) > 40 ? 1.2 : 1));
  seen.heightMm.forEach((_, at) => {
    if (at % 19 === 0 && at / 19 > 30) seen.heightMm[at] = NaN;
  });
  const told = evenGains(seen);
  expect(told[0]).toBe(1);
  expect(told[18]).toBeGreaterThan(1.1);
  const none = evenGains({ ...seen, heightMm: seen.heightMm.map(() => NaN) });
  expect([...none]).toEqual(new Array(19).fill(1));
});
