import type { Reading } from '../../src/contract/reading.ts';
import { shortWayDeg } from '../../src/quantities/angle.ts';
import {
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../../src/quantities/vector.ts';

/** The part of a truth file that a reading is held against. */
export interface SweepTruth {
  /** False, or the code of the refusal that is right. */
  readonly shouldRefuse: false | string;
  readonly unbalance: {
    readonly amountGmm: number;
    readonly heavySpotDeg: number;
    readonly lightSpotDeg: number;
  };
}

/** One line of the accuracy table; null where there is nothing to compare. Grams at the weight radius. */
export interface SweepScore {
  readonly name: string;
  readonly status: 'ok' | 'refused' | 'crashed';
  /** Refusal codes, or the message of the crash. */
  readonly why: string;
  readonly readG: number | null;
  readonly trueG: number | null;
  readonly vectorErrorG: number | null;
  readonly angleErrorDeg: number | null;
  readonly regionHolds: boolean | null;
  /** Half the long axis of the 95 % region, g: what the reading claims of itself. */
  readonly claimedG: number | null;
  readonly seconds: number;
  readonly framesPerSecond: number | null;
  /** Whether the bounds below are kept, or the refusal is the right one; null without a truth. */
  readonly withinBounds: boolean | null;
}

/** Chi-square with two degrees of freedom at 95 %: −2·ln 0.05. */
const CHI_SQUARE_95_TWO = 5.991464547;

/** Largest vector error at the weight radius, g and share of the unbalance (the larger counts). */
const BOUNDS = {
  model: { errorG: 2, errorShare: 0.06 },
  trial: { errorG: 1.5, errorShare: 0.05 },
  /** Largest angle error, asked only where the unbalance is `angleFromG` or more. */
  angleDeg: 5,
  angleFromG: 10,
} as const;

export function scoreCrash(name: string, message: string, seconds: number): SweepScore {
  return {
    ...emptyScore(name, seconds, null),
    status: 'crashed',
    why: message.split('\n')[0] ?? '',
    withinBounds: false,
  };
}

/**
 * Holds a reading against its truth. The error is |U_read − U_true| / weight radius, so that an
 * angle that is off costs as many grams as it would leave on the wheel.
 */
export function scoreReading(
  name: string,
  reading: Reading,
  truth: SweepTruth | null,
  run: { weightRadiusMm: number; seconds: number; frames: number | null },
): SweepScore {
  const base = emptyScore(name, run.seconds, run.frames);
  const trueG = truth ? truth.unbalance.amountGmm / run.weightRadiusMm : null;
  if (reading.status === 'refused') {
    const codes = reading.refusals.map((r) => r.code);
    const right = truth
      ? truth.shouldRefuse !== false && codes.includes(truth.shouldRefuse as never)
      : null;
    return { ...base, status: 'refused', why: codes.join(' '), trueG, withinBounds: right };
  }
  const { unbalance } = reading;
  const readGmm = vectorFromPolar(unbalance.amountGmm, unbalance.heavySpotDeg);
  const read = {
    ...base,
    status: 'ok' as const,
    why: reading.response.source,
    readG: unbalance.amountGmm / run.weightRadiusMm,
    claimedG: longHalfAxis(unbalance.covarianceGmm2) / run.weightRadiusMm,
  };
  if (!truth || trueG === null) return read;
  if (truth.shouldRefuse !== false) {
    return { ...read, trueG, why: `not refused (${truth.shouldRefuse})`, withinBounds: false };
  }
  const trueGmm = vectorFromPolar(truth.unbalance.amountGmm, truth.unbalance.heavySpotDeg);
  const errorGmm = subtractVectors(readGmm, trueGmm);
  const vectorErrorG = vectorAmount(errorGmm) / run.weightRadiusMm;
  const angleErrorDeg =
    truth.unbalance.amountGmm > 0
      ? shortWayDeg(vectorAngleDeg(trueGmm), vectorAngleDeg(readGmm))
      : null;
  return {
    ...read,
    trueG,
    vectorErrorG,
    angleErrorDeg,
    regionHolds: regionHolds(errorGmm, unbalance.covarianceGmm2),
    withinBounds: keepsBounds(reading.response.source, trueG, vectorErrorG, angleErrorDeg),
  };
}

function emptyScore(name: string, seconds: number, frames: number | null): SweepScore {
  return {
    name,
    status: 'refused',
    why: '',
    readG: null,
    trueG: null,
    vectorErrorG: null,
    angleErrorDeg: null,
    regionHolds: null,
    claimedG: null,
    seconds,
    framesPerSecond: frames === null ? null : frames / seconds,
    withinBounds: null,
  };
}

function keepsBounds(
  source: 'model' | 'trial',
  trueG: number,
  vectorErrorG: number,
  angleErrorDeg: number | null,
): boolean {
  const bound = BOUNDS[source];
  if (vectorErrorG > Math.max(bound.errorG, bound.errorShare * trueG)) return false;
  if (trueG < BOUNDS.angleFromG) return true;
  return angleErrorDeg !== null && Math.abs(angleErrorDeg) <= BOUNDS.angleDeg;
}

/** Whether eᵀ·C⁻¹·e ≤ χ²: the 95 % region about the reading holds the truth. */
export function regionHolds(error: PlaneVector, covariance: PlaneCovariance): boolean {
  const [[c00, c01], [, c11]] = covariance;
  const det = c00 * c11 - c01 * c01;
  if (!(det > 0)) return false;
  const { along0, along90 } = error;
  const distance = (c11 * along0 ** 2 - 2 * c01 * along0 * along90 + c00 * along90 ** 2) / det;
  return distance <= CHI_SQUARE_95_TWO;
}

function longHalfAxis(covariance: PlaneCovariance): number {
  const [[c00, c01], [, c11]] = covariance;
  const largest = (c00 + c11) / 2 + Math.hypot((c00 - c11) / 2, c01);
  return Math.sqrt(CHI_SQUARE_95_TWO * largest);
}

const COLUMNS = [
  'name',
  'status',
  'read g',
  'true g',
  'error g',
  '±95 g',
  'angle °',
  'in 95 %',
  's',
  'fps',
  'bounds',
  'why',
];

/** The accuracy table as text, one line a sweep, and a line that sums it up. */
export function scoreTable(scores: readonly SweepScore[]): string {
  const rows = scores.map((s) => [
    s.name,
    s.status,
    figure(s.readG, 2),
    figure(s.trueG, 2),
    figure(s.vectorErrorG, 2),
    figure(s.claimedG, 2),
    figure(s.angleErrorDeg, 1),
    yesNo(s.regionHolds),
    figure(s.seconds, 1),
    figure(s.framesPerSecond, 0),
    yesNo(s.withinBounds),
    s.why,
  ]);
  const widths = COLUMNS.map((c, i) => Math.max(c.length, ...rows.map((r) => r[i]!.length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((c, i) =>
        i < 2 || i === cells.length - 1 ? c.padEnd(widths[i]!) : c.padStart(widths[i]!),
      )
      .join('  ')
      .trimEnd();
  return [line(COLUMNS), ...rows.map(line), summary(scores)].join('\n');
}

function summary(scores: readonly SweepScore[]): string {
  const judged = scores.filter((s) => s.withinBounds !== null);
  const kept = judged.filter((s) => s.withinBounds === true).length;
  const regions = scores.filter((s) => s.regionHolds !== null);
  const held = regions.filter((s) => s.regionHolds === true).length;
  return `${scores.length} sweeps; within bounds ${kept} of ${judged.length}; 95 % region holds the truth ${held} of ${regions.length}`;
}

function figure(value: number | null, digits: number): string {
  return value === null ? '–' : value.toFixed(digits);
}

function yesNo(value: boolean | null): string {
  return value === null ? '–' : value ? 'yes' : 'NO';
}
