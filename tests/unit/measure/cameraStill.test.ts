import { expect, it } from 'vitest';

import { projectPoint } from '../../../src/measure/geometry/camera.ts';
import { checkCameraStill } from '../../../src/measure/sweep/cameraStill.ts';
import type { EdgeObservations } from '../../../src/measure/sweep/edgeObservations.ts';
import type { FaceLine } from '../../../src/measure/sweep/faceLine.ts';
import { roomPoint } from '../../../src/measure/sweep/wheelView.ts';
import { shedView } from '../../fakes/shedView.ts';

const view = shedView();
const { azimuthsDeg } = view.layout;
const blocks = azimuthsDeg.length;
const STEP_DEG = 1.2;
const PICTURES = 310;
/** Farther than the flanks may tell before a sweep is refused, px of 1280. */
const SIDEWAYS_PX = 10;

/** A turn with the edge well below the sheet, in which the picture had moved to the right by so much. */
function check(rightPxAt: (turnDeg: number) => number) {
  const turnDeg = Float64Array.from({ length: PICTURES }, (_, i) => STEP_DEG * i);
  const observations = {
    azimuthsDeg,
    turnDeg,
    timeS: turnDeg.map((turn) => turn / 15),
    heightMm: new Float32Array(PICTURES * blocks).fill(-6),
    offsetMm: -6,
    leans: Array.from({ length: PICTURES }, () => ({ liftMm: 0, toward: 0, across: 0 })),
  };
  const awayPx = Float32Array.from({ length: PICTURES * blocks }, (_, at) => {
    const right = rightPxAt(turnDeg[Math.floor(at / blocks)]);
    return -rowsPerColumn(azimuthsDeg[at % blocks]) * right;
  });
  const line = { awayPx, expected: new Uint8Array(awayPx.length).fill(1) };
  // What the camera's stillness is told by, and nothing else of either.
  return checkCameraStill(
    observations as unknown as EdgeObservations,
    line as unknown as FaceLine,
    view,
  );
}

function rowsPerColumn(azimuthDeg: number): number {
  const [left, right] = [0.5, -0.5].map((off) => {
    const { xMm, yMm } = roomPoint(view, azimuthDeg + off);
    const at = new Float64Array(2);
    projectPoint(view.sight.camera, xMm, yMm, 0, at);
    return at;
  });
  return (right[1] - left[1]) / (right[0] - left[0]);
}

it('says nothing of a camera that stands', () => {
  expect(check(() => 0)).toBeNull();
});

it('notices a camera that was pushed sideways and stays so, early, late or by degrees', () => {
  for (const fromDeg of [70, 180, 310]) {
    const moved = check((turn) => (turn > fromDeg ? SIDEWAYS_PX : 0));
    expect(moved && !moved.ok && moved.failure.code).toBe('camera-moved');
  }
  const sagged = check((turn) => (2 * SIDEWAYS_PX * turn) / 372);
  expect(sagged && !sagged.ok && sagged.failure.code).toBe('camera-moved');
});

it('does not believe one stretch alone: there the whole line may have fallen into the groove', () => {
  expect(check((turn) => (turn > 168 && turn < 192 ? SIDEWAYS_PX : 0))).toBeNull();
});

/**
 * Of a line along a groove's floor all round what meets the rib lies a groove's depth beside its pooled place,
 * for some of the turn. Fails without being told: a groove's depth passed for a way of the camera.
 */
it('takes what meets the rib of a line down in the groove for that, and not for a way of the camera', () => {
  const turnDeg = Float64Array.from({ length: PICTURES }, (_, i) => STEP_DEG * i);
  const observations = {
    azimuthsDeg,
    turnDeg,
    timeS: turnDeg.map((turn) => turn / 15),
    heightMm: new Float32Array(PICTURES * blocks).fill(2),
    offsetMm: 2,
    leans: Array.from({ length: PICTURES }, () => ({ liftMm: 0, toward: 0, across: 0 })),
  };
  const metRib = Uint8Array.from({ length: PICTURES * blocks }, (_, at) => {
    const turn = turnDeg[Math.floor(at / blocks)];
    return turn > 150 && turn < 220 ? 1 : 0;
  });
  const line = { awayPx: Float32Array.from(metRib, (met) => 8 * met), expected: metRib };
  const stands = (isInGroove: boolean) =>
    checkCameraStill(
      observations as unknown as EdgeObservations,
      line as unknown as FaceLine,
      view,
      isInGroove,
    );
  expect(stands(true)).toBeNull();
  expect(stands(false)).not.toBeNull();
});
