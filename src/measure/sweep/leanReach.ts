import { failed, type Outcome } from '../../contract/outcome.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { vectorAmount } from '../../quantities/vector.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { absoluteLean, type SweepRecording } from './sweepRecording.ts';

/**
 * What a lean that is too large does before any figure is made: the edge swings out of the band, and
 * a wheel turned on it creeps across the plate, which looks as if the camera went.
 */

/** Rise of the rim at which the tread leaves the band that is followed, mm. */
const FOLLOWED_RISE_MM = 20;
/** Of the leans that were still told, the upper tenth shows how far the wheel went. */
const UPPER_SHARE = 0.9;
/**
 * A wheel turned once round on a lean creeps by 2π·R·θ: on a usual ball 4 mm at this lean, more than
 * a camera may move, mrad.
 */
const CREEPING_LEAN_MRAD = 20;
const TURN_BIN_DEG = 10;

/** In place of a tread that was lost: a wheel that leaned out of what can be followed. */
export function leanedAway(recording: SweepRecording): Outcome<never, 'lean-too-large'> | null {
  const radiusMm = recording.view.setup.wheel.edgeRadiusMm;
  const risesMm = recording.frames
    .flatMap((frame) => (frame.lean ? [absoluteLean(recording, frame.lean.lean)] : []))
    .map((lean) => radiusMm * Math.hypot(lean.toward, lean.across))
    .sort((a, b) => a - b);
  const upperMm = risesMm[Math.floor(UPPER_SHARE * (risesMm.length - 1))] ?? 0;
  return upperMm > FOLLOWED_RISE_MM
    ? failed('lean-too-large', { riseAtTheEdgeMm: Math.round(upperMm) })
    : null;
}

/** In place of a camera that seems to have moved: a wheel that crept, because the stand leans. */
export function creptOnLean(
  observations: EdgeObservations,
): Outcome<never, 'lean-too-large'> | null {
  const leanMrad = 1000 * vectorAmount(standLean(observations));
  return leanMrad > CREEPING_LEAN_MRAD
    ? failed('lean-too-large', { standLeanMrad: Math.round(leanMrad) })
    : null;
}

/** What stays of the lean over a whole turn, radians: every part of the turn counts the same. */
function standLean({ leans, turnDeg }: EdgeObservations): { along0: number; along90: number } {
  const bins = new Map<number, { toward: number; across: number; count: number }>();
  leans.forEach(({ toward, across }, i) => {
    const bin = Math.floor(wrapTurnDeg(turnDeg[i]) / TURN_BIN_DEG);
    const sum = bins.get(bin) ?? { toward: 0, across: 0, count: 0 };
    sum.toward += toward;
    sum.across += across;
    sum.count++;
    bins.set(bin, sum);
  });
  const means = [...bins.values()].map((b) => ({ t: b.toward / b.count, a: b.across / b.count }));
  const n = Math.max(1, means.length);
  return {
    along0: means.reduce((sum, m) => sum + m.t, 0) / n,
    along90: means.reduce((sum, m) => sum + m.a, 0) / n,
  };
}
