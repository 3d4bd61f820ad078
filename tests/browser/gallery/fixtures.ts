import { noticeFor } from '../../../src/contract/notice.ts';
import type { AcceptedReading, RefusedReading, Weight } from '../../../src/contract/reading.ts';
import type { RefusalCode } from '../../../src/contract/refusals.ts';
import type { SweepSetup } from '../../../src/contract/setup.ts';
import { SECTOR_COUNT, SECTOR_DEG } from '../../../src/contract/sweep.ts';
import type { PictureOverlay, SweepProgress, SweepTrace } from '../../../src/contract/sweep.ts';
import { RAD_PER_DEG, wrapTurnDeg } from '../../../src/quantities/angle.ts';

/** Invented figures of the shed's minibus wheels, shaped as the session would hand them over. */

export const shedSetup: SweepSetup = {
  format: 'tiltsweep.setup/1',
  label: 'minibus front left',
  wheel: { massKg: 16.5, edgeRadiusMm: 309, weightRadiusMm: 185, boreDiameterMm: 54 },
  stand: { ballDiameterMm: 63.5, pendulumDepthMm: 8.2, lineAbovePlateMm: 50 },
  camera: { downTiltDeg: 32.5, horizontalFovDeg: 64 },
  sight: { valveMark: { widthMm: 22, colour: 'white' } },
  weightStepG: 5,
};

const RISE_MM_PER_GMM = 0.00228;

export interface ReadingWish {
  readonly amountG: number;
  readonly heavyDeg: number;
  /** Standard error of each component, g at the weight radius. */
  readonly sdG: number;
  readonly weights?: readonly Weight[];
  readonly source?: 'model' | 'trial';
  readonly standMrad?: number;
}

/** A reading whose parts agree with each other: interval, covariance, rise and what is left. */
export function acceptedReading(wish: ReadingWish): AcceptedReading {
  const radiusMm = shedSetup.wheel.weightRadiusMm;
  const amountGmm = wish.amountG * radiusMm;
  const sdGmm = wish.sdG * radiusMm;
  const lightSpotDeg = wrapTurnDeg(wish.heavyDeg + 180);
  const stepped = Math.round(wish.amountG / shedSetup.weightStepG) * shedSetup.weightStepG;
  const correction =
    wish.weights ?? (stepped > 0 ? [{ massG: stepped, radiusMm, angleDeg: lightSpotDeg }] : []);
  const halfDeg = Math.asin(Math.min(1, (1.96 * sdGmm) / amountGmm)) / RAD_PER_DEG;
  return {
    format: 'tiltsweep.reading/1',
    status: 'ok',
    refusals: [],
    turn: { coveredDeg: 396.2, sense: 'clockwise', closureDeg: 0.4 },
    tilt: {
      edgeRiseMm: amountGmm * RISE_MM_PER_GMM,
      highSpotDeg: lightSpotDeg,
      standMrad: wish.standMrad ?? 2.3,
      standHighAzimuthDeg: 230,
      covarianceMm2: square((sdGmm * RISE_MM_PER_GMM) ** 2),
    },
    unbalance: {
      amountGmm,
      heavySpotDeg: wish.heavyDeg,
      lightSpotDeg,
      covarianceGmm2: square(sdGmm ** 2),
      ci95: {
        amountGmm: [Math.max(0, amountGmm - 1.96 * sdGmm), amountGmm + 1.96 * sdGmm],
        angleDeg:
          1.96 * sdGmm >= amountGmm
            ? null
            : [wrapTurnDeg(wish.heavyDeg - halfDeg), wrapTurnDeg(wish.heavyDeg + halfDeg)],
      },
    },
    response: {
      mmPerGmm: RISE_MM_PER_GMM,
      source: wish.source ?? 'model',
      standardError: 0.00004,
    },
    correction,
    residualGmm: leftGmm(amountGmm, wish.heavyDeg, correction),
  };
}

export function refusedReading(code: RefusalCode): RefusedReading {
  return {
    format: 'tiltsweep.reading/1',
    status: 'refused',
    refusals: [noticeFor(code, { coveredDeg: 251.4, neededDeg: 360 })],
    turn: { coveredDeg: 251.4, sense: 'clockwise', closureDeg: null },
  };
}

/** Points round the wheel with a twice-round wave and a little scatter, as a real edge has. */
export function traceOf(reading: AcceptedReading): SweepTrace {
  const count = 240;
  const rise = reading.tilt.edgeRiseMm;
  const high = reading.tilt.highSpotDeg * RAD_PER_DEG;
  const cosMm = [rise * Math.cos(high), 0.06, 0.02, 0];
  const sinMm = [rise * Math.sin(high), 0.05, 0.03, 0.01];
  const offsetMm = 1.8;
  const wheelAngleDeg = new Float32Array(count);
  const heightMm = new Float32Array(count);
  const residualMm = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const deg = (360 * i) / count;
    const own = wave(deg, cosMm, sinMm, 2) + 0.09 * scatter(i);
    wheelAngleDeg[i] = deg;
    residualMm[i] = own;
    heightMm[i] = offsetMm + wave(deg, cosMm, sinMm, 1, 1) + own;
  }
  return {
    wheelAngleDeg,
    heightMm,
    residualMm,
    fit: { offsetMm, cosMm, sinMm },
    rockingPeriodS: 4.2,
    contributionsG: {
      'reading noise': 0.12,
      rocking: 0.29,
      'tape at the valve': 0.22,
      'height scale': 0.2,
      'mass and depth': 0.28,
    },
  };
}

export function progressOf(changes: Partial<SweepProgress> & { covered?: number }): SweepProgress {
  const { covered = 0, ...rest } = changes;
  return {
    stage: 'following',
    trouble: null,
    framesSeen: 30 + covered * 8,
    timeS: covered * 0.4,
    coveredDeg: covered * SECTOR_DEG,
    coveredSectors: Array.from({ length: SECTOR_COUNT }, (_, index) => index < covered),
    turnDeg: covered * SECTOR_DEG - 40,
    markSeen: covered > 8,
    turningDegPerS: 12.4,
    edgeHeightMm: 3.1,
    enough: false,
    overlay: drawnOverlay('green'),
    // About what a sweep of a wheel that rocks a little comes to.
    soFar:
      covered * SECTOR_DEG < 100
        ? null
        : {
            amountG95: 120 / covered,
            angleDeg95: 200 / covered,
            turnLeftDeg: Math.max(0, 385 - covered * SECTOR_DEG),
            rockingMm: 0.7,
          },
    ...rest,
  };
}

/** Lies on the tread of the picture that the gallery draws, and nearly on that of a rendered film. */
export function drawnOverlay(laserColour: 'green' | 'red'): PictureOverlay {
  const linePx: number[] = [];
  const edgePx: number[] = [];
  const edgeAzimuthDeg: number[] = [];
  for (let azimuthDeg = -50; azimuthDeg <= 50; azimuthDeg += 2) {
    const x = 640 - 440 * Math.sin(azimuthDeg * 1.25 * RAD_PER_DEG);
    const y = 240 + 135 * Math.cos(azimuthDeg * 1.25 * RAD_PER_DEG);
    linePx.push(x, y);
    edgePx.push(x, y + 14 + azimuthDeg * 0.1);
    edgeAzimuthDeg.push(azimuthDeg);
  }
  return {
    widthPx: 1280,
    heightPx: 720,
    linePx: Float32Array.from(linePx),
    edgePx: Float32Array.from(edgePx),
    edgeAzimuthDeg: Float32Array.from(edgeAzimuthDeg),
    sightPx: { xPx: 640, yPx: 389 },
    markPx: { xPx: 546, yPx: 372 },
    laserColour,
  };
}

function square(variance: number): [[number, number], [number, number]] {
  return [
    [variance, 0],
    [0, variance],
  ];
}

function leftGmm(amountGmm: number, heavyDeg: number, weights: readonly Weight[]): number {
  let along0 = amountGmm * Math.cos(heavyDeg * RAD_PER_DEG);
  let along90 = amountGmm * Math.sin(heavyDeg * RAD_PER_DEG);
  for (const weight of weights) {
    along0 += weight.massG * weight.radiusMm * Math.cos(weight.angleDeg * RAD_PER_DEG);
    along90 += weight.massG * weight.radiusMm * Math.sin(weight.angleDeg * RAD_PER_DEG);
  }
  return Math.hypot(along0, along90);
}

function wave(
  deg: number,
  cosMm: readonly number[],
  sinMm: readonly number[],
  from: number,
  to = cosMm.length,
): number {
  let sum = 0;
  for (let n = from; n <= to; n++) {
    const angle = n * deg * RAD_PER_DEG;
    sum += cosMm[n - 1]! * Math.cos(angle) + sinMm[n - 1]! * Math.sin(angle);
  }
  return sum;
}

/** The same "noise" at every run, in [-1, 1]. */
function scatter(index: number): number {
  const x = Math.sin(index * 12.9898) * 43758.5453;
  return 2 * (x - Math.floor(x)) - 1;
}
