import type {
  LogEntry,
  Origin,
  SourcedNumber,
  StandRecord,
  WheelRecord,
} from '../contract/logbook.ts';
import { ballBehaviour, type BallBehaviour, type WheelOnBall } from '../balance/ballBehaviour.ts';
import { chooseBall, type BallChoice } from '../balance/ballChoice.ts';
import {
  centreDepthMm,
  pendulumDepthFromResponse,
  pendulumDepthMm,
  type MeasuredDepth,
} from '../balance/ballSeat.ts';
import type { BalanceOutcome } from '../balance/failures.ts';
import { succeeded } from '../contract/outcome.ts';
import { isAcceptedSweep } from './wheelState.ts';

/** Where no bore was entered: that of a common car wheel, mm. Only ever shown as assumed. */
export const USUAL_BORE_MM = 60;

/** The unrolled band reaches 40 mm above the line; the edge needs its ribs around it in there too. */
const CAMERA_RANGE_MM = 30;

/** How well the depth is known, one standard deviation, mm: a guess, a ruler, a measured response. */
const DEPTH_SD_MM: Readonly<Record<Origin, number>> = { assumed: 2, entered: 1, measured: 0.4 };

/** A tyre fresh on its rim is out by up to about this much at the first ring, g. */
const USUAL_FIRST_UNBALANCE_G = 60;

export const boreOf = (wheel: WheelRecord): SourcedNumber =>
  wheel.boreDiameterMm ?? { value: USUAL_BORE_MM, origin: 'assumed' };

/** The wheel as the physics of the ball wants it; fails where ball and bore do not go together. */
function wheelOnBall(wheel: WheelRecord): BalanceOutcome<WheelOnBall> {
  const boreDiameterMm = boreOf(wheel).value;
  const seat = { ballDiameterMm: wheel.ballDiameterMm.value, boreDiameterMm };
  const centre = centreDepthMm(seat, wheel.pendulumDepthMm.value);
  if (!centre.ok) return centre;
  return succeeded({
    massKg: wheel.massKg.value,
    boreDiameterMm,
    centreDepthMm: centre.value,
    edgeRadiusMm: wheel.edgeRadiusMm.value,
    weightRadiusMm: wheel.rings[0]!.radiusMm.value,
    cameraRangeMm: CAMERA_RANGE_MM,
  });
}

/** What the ball that the wheel lies on does to it. */
export function behaviourOf(wheel: WheelRecord): BalanceOutcome<BallBehaviour> {
  const onBall = wheelOnBall(wheel);
  return onBall.ok ? ballBehaviour(onBall.value, wheel.ballDiameterMm.value) : onBall;
}

/** The balls on hand, and the one in use, ranked for this wheel. */
export function ballsFor(wheel: WheelRecord, stand: StandRecord): BalanceOutcome<BallChoice> {
  const onBall = wheelOnBall(wheel);
  if (!onBall.ok) return onBall;
  const diametersMm = new Set(stand.ballDiametersMm.map(({ value }) => value));
  diametersMm.add(wheel.ballDiameterMm.value);
  return chooseBall(onBall.value, [...diametersMm], {
    centreDepthSdMm: DEPTH_SD_MM[wheel.pendulumDepthMm.origin],
    weightStepG: wheel.weightStepG,
    expectedUnbalanceGmm: USUAL_FIRST_UNBALANCE_G * wheel.rings[0]!.radiusMm.value,
  });
}

/**
 * The wheel on another ball: its centre of mass stays where it is below the bore's seat, so h
 * changes with the seat. With an assumed depth there is no centre of mass to carry over: h stays.
 */
export function withBall(wheel: WheelRecord, ball: SourcedNumber): BalanceOutcome<WheelRecord> {
  if (wheel.pendulumDepthMm.origin === 'assumed') {
    return succeeded({ ...wheel, ballDiameterMm: ball });
  }
  const onBall = wheelOnBall(wheel);
  if (!onBall.ok) return onBall;
  const behaviour = ballBehaviour(onBall.value, ball.value);
  if (!behaviour.ok) return behaviour;
  return succeeded({
    ...wheel,
    ballDiameterMm: ball,
    pendulumDepthMm: { ...wheel.pendulumDepthMm, value: behaviour.value.pendulumDepthMm },
  });
}

/** The wheel with its centre of mass at a depth below the bore's seat, on the ball in use. */
export function withCentreDepth(
  wheel: WheelRecord,
  centre: SourcedNumber,
): BalanceOutcome<WheelRecord> {
  const depth = pendulumDepthMm(
    { ballDiameterMm: wheel.ballDiameterMm.value, boreDiameterMm: boreOf(wheel).value },
    centre.value,
  );
  if (!depth.ok) return depth;
  return succeeded({ ...wheel, pendulumDepthMm: { value: depth.value, origin: centre.origin } });
}

/** How well a bathroom scale and a tape measure tell, one standard deviation. */
const MASS_SD_KG = 0.1;
const EDGE_RADIUS_SD_MM = 1;

/** h from the latest check sweep of this wheel on the ball in use; null when there is none. */
export function depthFromSweeps(
  wheel: WheelRecord,
  entries: readonly LogEntry[],
): MeasuredDepth | null {
  const checks = entries
    .filter(isAcceptedSweep)
    .filter(
      ({ reading, setup }) =>
        reading.response.source === 'trial' &&
        setup.stand.ballDiameterMm === wheel.ballDiameterMm.value,
    );
  const latest = checks.toSorted((a, b) => a.at.localeCompare(b.at)).at(-1);
  if (latest === undefined) return null;
  const depth = pendulumDepthFromResponse({
    mmPerGmm: latest.reading.response.mmPerGmm,
    mmPerGmmStandardError: latest.reading.response.standardError,
    massKg: wheel.massKg.value,
    massSdKg: MASS_SD_KG,
    edgeRadiusMm: wheel.edgeRadiusMm.value,
    edgeRadiusSdMm: EDGE_RADIUS_SD_MM,
  });
  return depth.ok ? depth.value : null;
}
