import { describe, expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import type { EdgeObservations } from '../../../src/measure/sweep/edgeObservations.ts';
import type { FaceLine } from '../../../src/measure/sweep/faceLine.ts';
import { faceOutward, withoutOutward } from '../../../src/measure/sweep/faceOutward.ts';
import { isExpected, rowsPerOutwardMm } from '../../../src/measure/sweep/lineSamples.ts';
import { RAD_PER_DEG } from '../../../src/quantities/angle.ts';
import { SHED_SETUP, shedView } from '../../fakes/shedView.ts';

const RUN_OUT_SD_MM = 0.2;
/** Wheel angle at which the leaning edge stands highest. */
const GAP_DEG = 70;
const setup = SHED_SETUP;
const view = shedView();

interface Truth {
  readonly e0: number;
  readonly e90: number;
  readonly toward: number;
  readonly across: number;
}

/** A turn of a wheel that leans by 30 mrad, whose face stands out as told; rows good to 0.3 px. */
function turnWith(truth: Truth, seed: number): { seen: EdgeObservations; line: FaceLine } {
  const normal = normalFrom(seededRandom(seed));
  const azimuthsDeg = view.layout.azimuthsDeg;
  const [n, blocks, radiusMm] = [400, azimuthsDeg.length, setup.wheel.edgeRadiusMm];
  const ballMm = setup.stand.ballDiameterMm / 2;
  const turnDeg = Float64Array.from({ length: n }, (_, i) => i - 20);
  const leans = Array.from(turnDeg, (t) => ({
    ...{ liftMm: 0, toward: 0.03 * Math.cos((t + GAP_DEG) * RAD_PER_DEG) },
    across: 0.03 * Math.sin((t + GAP_DEG) * RAD_PER_DEG),
  }));
  const heightMm = new Float32Array(n * blocks);
  const awayPx = new Float32Array(n * blocks);
  const expected = new Uint8Array(n * blocks);
  const middleDeg = turnDeg.reduce((sum, t) => sum + t, 0) / n;
  for (let b = 0; b < blocks; b++) {
    const a = azimuthsDeg[b] * RAD_PER_DEG;
    const pxPerMm = rowsPerOutwardMm(view, azimuthsDeg[b]);
    for (let i = 0; i < n; i++) {
      const beta = a - turnDeg[i] * RAD_PER_DEG;
      const rolledMm = ballMm * (turnDeg[i] - middleDeg) * RAD_PER_DEG;
      const outMm =
        truth.e0 * Math.cos(beta) +
        truth.e90 * Math.sin(beta) +
        rolledMm * (truth.toward * Math.sin(a) - truth.across * Math.cos(a));
      const gapMm = radiusMm * (leans[i].toward * Math.cos(a) + leans[i].across * Math.sin(a)) - 3;
      heightMm[i * blocks + b] = gapMm - view.sightSlopes[b] * outMm;
      awayPx[i * blocks + b] = pxPerMm * outMm + 0.3 * normal();
      expected[i * blocks + b] = isExpected(gapMm, 0.2) ? 1 : 0;
    }
  }
  const seen: EdgeObservations = {
    ...{
      azimuthsDeg,
      turnDeg,
      heightMm,
      leans,
      offsetMm: -3,
      unevenMm: 0.2,
      placeMisfit: 4,
      edgeRadiusMm: radiusMm,
    },
    timeS: turnDeg.map((_, i) => i / 15),
    standardErrorMm: new Float32Array(n * blocks).fill(0.1),
    azimuthBiasSdMm: 0.7,
    frameIndex: Int32Array.from(turnDeg, (_, i) => i),
  };
  const line: FaceLine = {
    ...{ points: { xPx: [], yPx: [] }, crownSlope: 0.05, scatterPx: 0.3, blocksSeen: blocks },
    ...{ awayPx, expected, expectedOnly: true },
  };
  return { seen, line };
}

describe('faceOutward', () => {
  it('tells run-out and what the lean is off from the way of the line', () => {
    for (const truth of [
      { e0: 0.3, e90: -0.1, toward: 0, across: 0 },
      { e0: 0, e90: 0, toward: 0.006, across: -0.004 },
      { e0: -0.2, e90: 0.25, toward: -0.005, across: 0.005 },
    ]) {
      const { seen, line } = turnWith(truth, 3);
      const { runOutMm, leanOff } = faceOutward(seen, line, view, RUN_OUT_SD_MM);
      const off = { x: runOutMm.along0 - truth.e0, y: runOutMm.along90 - truth.e90 };
      const alongGap = (x: number, y: number) =>
        x * Math.cos(GAP_DEG * RAD_PER_DEG) + y * Math.sin(GAP_DEG * RAD_PER_DEG);
      // Beside the gap's own phase nothing else turns with the wheel.
      expect(Math.abs(alongGap(off.y, -off.x))).toBeLessThan(0.04);
      // In phase with 9 mm of gap a crown's spread of 0.03 looks as large as the run-out's own: the
      // half that prior beliefs leave to the run-out is found, and nothing is made worse.
      const inPhase = alongGap(truth.e0, truth.e90);
      expect(Math.abs(alongGap(off.x, off.y))).toBeLessThan(0.75 * Math.abs(inPhase) + 0.03);
      expect(Math.abs(leanOff.toward - truth.toward)).toBeLessThan(0.002);
      expect(Math.abs(leanOff.across - truth.across)).toBeLessThan(0.002);
    }
  });

  it('gives heights back as on a face that stays in its place', () => {
    const { seen, line } = turnWith({ e0: 0.3, e90: -0.2, toward: 0.005, across: 0.004 }, 4);
    const still = turnWith({ e0: 0, e90: 0, toward: 0, across: 0 }, 4).seen;
    const better = withoutOutward(seen, faceOutward(seen, line, view, RUN_OUT_SD_MM), view);
    const rms = (heightMm: Float32Array) =>
      Math.sqrt(
        heightMm.reduce((sum, h, i) => sum + (h - still.heightMm[i]) ** 2, 0) / heightMm.length,
      );
    expect(rms(seen.heightMm)).toBeGreaterThan(0.3);
    expect(rms(better.heightMm)).toBeLessThan(0.08);
  });

  // Fails: nineteen rows that shake together are taken for nineteen witnesses, and the run-out is
  // far off what it may be.
  it('leaves a shaking camera no say', () => {
    const { seen, line } = turnWith({ e0: 0, e90: 0, toward: 0, across: 0 }, 6);
    const blocks = seen.azimuthsDeg.length;
    const shakePx = Array.from(
      seen.timeS,
      (t) => 1.5 * Math.sin(3.4 * t) + 0.8 * Math.sin(0.9 * t),
    );
    const shaken = {
      ...line,
      awayPx: line.awayPx.map((away, at) => away + shakePx[Math.floor(at / blocks)]),
    };
    const { runOutMm } = faceOutward(seen, shaken, view, RUN_OUT_SD_MM);
    expect(Math.hypot(runOutMm.along0, runOutMm.along90)).toBeLessThan(0.06);
  });

  it('says nothing where the line was never on the face', () => {
    const { seen, line } = turnWith({ e0: 0.3, e90: 0, toward: 0.005, across: 0 }, 5);
    const hidden = { ...line, expected: new Uint8Array(line.expected.length) };
    const { runOutMm, leanOff } = faceOutward(seen, hidden, view, RUN_OUT_SD_MM);
    expect([runOutMm.along0, runOutMm.along90, leanOff.toward, leanOff.across]).toEqual([
      0, 0, 0, 0,
    ]);
  });
});
