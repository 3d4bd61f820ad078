import { expect, it } from 'vitest';

import { shareSeenWhereDue } from '../../../src/measure/sweep/lineDue.ts';
import type { SolvedCamera } from '../../../src/measure/sweep/solvedCamera.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';

const PICTURES = 200;
const AZIMUTHS_DEG = Float64Array.of(-20, 0, 20);
/** A rise of so much toward azimuth 0 at the rim, mm; the edge's height at lean zero. */
const [RADIUS_MM, TILT_MM, OFFSET_MM] = [300, 6, 0];

/** The edge goes up and down once; the line is seen in a block of a picture where `isSeen` says so. */
function shareSeen(isSeen: (gapMm: number, block: number) => boolean): number | null {
  const gapAt = (i: number, b: number) =>
    OFFSET_MM +
    TILT_MM * Math.cos((2 * Math.PI * i) / PICTURES) * Math.cos((AZIMUTHS_DEG[b] * Math.PI) / 180);
  const blocks = AZIMUTHS_DEG.length;
  const rows = Array.from({ length: PICTURES }, (_, i) =>
    Float32Array.from({ length: blocks }, (__, b) => (isSeen(gapAt(i, b), b) ? 0.2 : NaN)),
  );
  const recording = { frames: rows.map((lineOffsetPx) => ({ lineOffsetPx })) };
  const observations = {
    ...{ azimuthsDeg: AZIMUTHS_DEG, offsetMm: OFFSET_MM, edgeRadiusMm: RADIUS_MM, unevenMm: 0 },
    frameIndex: Int32Array.from({ length: PICTURES }, (_, i) => i),
    leans: Array.from({ length: PICTURES }, (_, i) => ({
      liftMm: 0,
      toward: (TILT_MM / RADIUS_MM) * Math.cos((2 * Math.PI * i) / PICTURES),
      across: 0,
    })),
  };
  const line = { awayPx: Float32Array.from(rows.flatMap((row) => [...row])) };
  return shareSeenWhereDue(
    recording as unknown as SweepRecording,
    { observations, line } as unknown as SolvedCamera,
  );
}

it('finds a line on the face wherever its edge stands below the sheet', () => {
  expect(shareSeen((gapMm) => gapMm < 0)).toBe(1);
});

it('misses it there when it lies in the groove, whose rib hides it just then', () => {
  expect(shareSeen((gapMm) => gapMm > 2)).toBe(0);
});

it('leaves blocks out that never show it, beyond the outline, and says nothing of too few', () => {
  expect(shareSeen((gapMm, b) => gapMm < 0 && b > 0)).toBe(1);
  expect(shareSeen((gapMm, b) => gapMm < 0 && b > 1)).toBeNull();
});
