import { expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import type { DrawnScene } from '../../samples/drawnWheel/scene.ts';
import type { AcceptedReading } from '../../src/contract/reading.ts';
import { shortWayDeg } from '../../src/quantities/angle.ts';
import { accepted, drawnSetup, expectUnbalance, readAsFilm } from './readDrawnSweep.ts';

function readFilm(changes: Partial<DrawnScene>) {
  const { scene, pictures } = drawnSweep(changes);
  const reading = accepted(readAsFilm([...pictures()], drawnSetup(scene)).reading);
  return { scene, reading, codes: (reading.warnings ?? []).map(({ code }) => code) };
}

/** Distance of the stand's lean from the truth, in standard errors of a component. */
function standMissed(reading: AcceptedReading, scene: DrawnScene): number {
  const { standMrad, standHighAzimuthDeg, standMradStandardError } = reading.tilt;
  const apart = (shortWayDeg(scene.standHighAzimuthDeg, standHighAzimuthDeg!) * Math.PI) / 180;
  const missMrad = Math.hypot(
    standMrad * Math.cos(apart) - scene.standMrad,
    standMrad * Math.sin(apart),
  );
  return missMrad / standMradStandardError!;
}

/**
 * A nearly balanced wheel with the line set too low: it runs along the floor of the groove all round. Taken
 * for the rib's face, the stand seemed to lean toward the camera by 24 mrad in the first case and 21 in the
 * second.
 */
it.each([
  { edgeAboveLineMm: 5, unbalanceGmm: 900 },
  { edgeAboveLineMm: 4, unbalanceGmm: 300 },
])('reads a line down in the groove all round, and says so: $edgeAboveLineMm mm', (changes) => {
  const { scene, reading, codes } = readFilm(changes);
  expect(codes).toContain('line-in-groove');
  expectUnbalance(reading, scene, { ...scene, amountGmm: scene.unbalanceGmm });
  expect(reading.tilt.standMrad).toBeLessThan(12);
  // Two freedoms: one in a thousand lies farther out.
  expect(standMissed(reading, scene)).toBeLessThan(3.7);
});

it('takes a stand that truly leans toward the camera for what it is', () => {
  const { scene, reading, codes } = readFilm({
    ...{ edgeAboveLineMm: -3, unbalanceGmm: 2800, standMrad: 25, standHighAzimuthDeg: 10 },
  });
  expect(codes).not.toContain('line-in-groove');
  expect(reading.tilt.standMrad).toBeGreaterThan(18);
  expect(standMissed(reading, scene)).toBeLessThan(3.7);
});
