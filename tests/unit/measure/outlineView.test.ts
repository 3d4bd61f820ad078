import { expect, it } from 'vitest';

import { USUAL_SHOULDER, type ShoulderShape } from '../../../src/measure/edge/shoulderShape.ts';
import { projectPoint } from '../../../src/measure/geometry/camera.ts';
import { cylinderPointAtPixel } from '../../../src/measure/geometry/cylinder.ts';
import {
  outlineCreepSdMm,
  outlineScaleSd,
  outlineView,
} from '../../../src/measure/sweep/outlineView.ts';
import type { WheelView } from '../../../src/measure/sweep/wheelView.ts';
import { RAD_PER_DEG, wrapHalfTurnDeg } from '../../../src/quantities/angle.ts';
import { SHED_SETUP, shedView } from '../../fakes/shedView.ts';

const setup = SHED_SETUP;
const view = shedView();
/** Where the rounding of the lower shoulder begins, below the laser plane. */
const SHOULDER_BEGINS_MM = -100;
const LEAN = 0.01;

it('knows how far the outline of a rounded shoulder moves as the wheel leans', () => {
  const { seen } = placed(USUAL_SHOULDER);
  const { gainMm, cos, sin } = seen.basis;
  for (const b of [0, 4, 9, 14, 18]) {
    const azimuthDeg = seen.layout.azimuthsDeg[b];
    const rise = (toward: number, across: number) =>
      outlineMm(seen, USUAL_SHOULDER, azimuthDeg, toward, across);
    const toward = (rise(LEAN, 0) - rise(-LEAN, 0)) / (2 * LEAN);
    const across = (rise(0, LEAN) - rise(0, -LEAN)) / (2 * LEAN);
    // What a lean carries sideways along the sloping outline adds some per cent at the flanks.
    const limit = b === 9 ? 0.01 : 0.05;
    expect(Math.abs(Math.hypot(toward, across) / gainMm[b] - 1)).toBeLessThan(limit);
    expect(Math.abs(toward / (gainMm[b] * cos[b]) - 1)).toBeLessThan(2 * limit);
    if (b !== 9) expect(across * Math.sign(sin[b])).toBeGreaterThan(0);
  }
});

it('says how wrong that is on a shoulder that is rounder, or less round, than most', () => {
  const { planeMm } = placed(USUAL_SHOULDER);
  const sd = outlineScaleSd(view, { planeMm });
  expect(sd).toBeGreaterThan(0.01);
  expect(sd).toBeLessThan(0.08);
  for (const roundingMm of [USUAL_SHOULDER.roundingMm - 8, USUAL_SHOULDER.roundingMm + 8]) {
    const shoulder = { ...USUAL_SHOULDER, roundingMm };
    const { seen } = placed(shoulder);
    const truth = outlineMm(seen, shoulder, 0, LEAN, 0) - outlineMm(seen, shoulder, 0, -LEAN, 0);
    const off = truth / (2 * LEAN * seen.basis.gainMm[9]) - 1;
    expect(Math.abs(off)).toBeGreaterThan(0.005);
    expect(Math.abs(off)).toBeLessThan(1.2 * sd);
  }
});

it('knows what a creep does that it cannot tell', () => {
  const { planeMm, seen } = placed(USUAL_SHOULDER);
  const leanSd = 0.008;
  const sdMm = outlineCreepSdMm(view, { planeMm }, leanSd);
  // The once-round wave of a creep that grows with the turn, as the outline shows it in the middle.
  const steps = 720;
  let wave = 0;
  for (let i = 0; i < steps; i++) {
    const turned = ((i + 0.5) / steps - 0.5) * 2 * Math.PI;
    const creptMm = (setup.stand.ballDiameterMm / 2) * turned * leanSd;
    wave += (creptMm * seen.sightSlopes[9] * Math.sin(turned)) / steps;
  }
  const atEdgeMm = (wave * setup.wheel.edgeRadiusMm) / seen.basis.gainMm[9];
  expect(sdMm / atEdgeMm).toBeGreaterThan(0.9);
  expect(sdMm / atEdgeMm).toBeLessThan(1.6);
});

/** The view as the program has it, its plane where it meets this shoulder's outline at the sight. */
function placed(shoulder: ShoulderShape): { seen: WheelView; planeMm: number } {
  let planeMm = SHOULDER_BEGINS_MM;
  for (let pass = 0; pass < 3; pass++)
    planeMm += outlineMm(outlineView(view, { planeMm }), shoulder, 0, 0, 0);
  return { seen: outlineView(view, { planeMm }), planeMm };
}

/**
 * Height at which the outline of a leaning wheel shows at an azimuth, on the view's own cylinder: the
 * lowest of what all points of the rounding show, every one turned about the ball and sent through
 * the picture.
 */
function outlineMm(
  seen: WheelView,
  shoulder: ShoulderShape,
  azimuthDeg: number,
  toward: number,
  across: number,
): number {
  let lowest = Infinity;
  for (let normalDeg = 0; normalDeg <= 90; normalDeg += 1) {
    let before: Shown | null = null;
    for (let at = azimuthDeg - 4; at <= azimuthDeg + 4; at += 0.5) {
      const shown = shownAt(seen, shoulder, at, normalDeg, toward, across);
      if (before && (before.azimuthDeg - azimuthDeg) * (shown.azimuthDeg - azimuthDeg) <= 0) {
        const part = (azimuthDeg - before.azimuthDeg) / (shown.azimuthDeg - before.azimuthDeg || 1);
        lowest = Math.min(lowest, before.zMm + part * (shown.zMm - before.zMm));
      }
      before = shown;
    }
  }
  return lowest;
}

interface Shown {
  readonly azimuthDeg: number;
  readonly zMm: number;
}

function shownAt(
  seen: WheelView,
  { crownDropMm, roundingMm }: ShoulderShape,
  azimuthDeg: number,
  normalDeg: number,
  toward: number,
  across: number,
): Shown {
  const normal = normalDeg * RAD_PER_DEG;
  const bearing = (azimuthDeg + seen.sight.sightBearingDeg) * RAD_PER_DEG;
  const rMm = setup.wheel.edgeRadiusMm - crownDropMm - roundingMm * (1 - Math.cos(normal));
  const zMm = SHOULDER_BEGINS_MM - roundingMm * Math.sin(normal);
  const [x, y] = [rMm * Math.cos(bearing), rMm * Math.sin(bearing)];
  const aboveBallMm = zMm + view.lineAboveBallMm;
  const s = seen.sight.sightBearingDeg * RAD_PER_DEG;
  // Rise of the rim toward azimuth 0 and 90 as components along the room's own axes.
  const alongX = toward * Math.cos(s) - across * Math.sin(s);
  const alongY = toward * Math.sin(s) + across * Math.cos(s);
  const at = new Float64Array(2);
  projectPoint(
    view.sight.camera,
    x - alongX * aboveBallMm,
    y - alongY * aboveBallMm,
    zMm + alongX * x + alongY * y,
    at,
  );
  const point = cylinderPointAtPixel(
    seen.sight.camera,
    seen.setup.wheel.edgeRadiusMm,
    at[0],
    at[1],
  );
  if (!point) throw new Error('beside the cylinder');
  const turned = wrapHalfTurnDeg(point.bearingDeg - seen.sight.sightBearingDeg);
  return { azimuthDeg: turned, zMm: point.zMm };
}
