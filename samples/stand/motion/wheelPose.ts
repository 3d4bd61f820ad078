import type { Vec3 } from '../../drawnWheel/drawnCamera.ts';
import { intoRoom, type RollingState } from './rollingBody.ts';

/** Where the wheel is at one time: what both renderers and the truth take from the motion. */
export interface WheelPose {
  readonly timeS: number;
  /** Turn, degrees clockwise, unwrapped; 0 with the valve at the sight. */
  readonly turnDeg: number;
  /** Lean in the room, mrad along azimuth 0 and 90, pointing at the high side. */
  readonly leanMrad: readonly [number, number];
  /** Wheel axes x, y, z in the room frame. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Way of the ball's centre from where it stood upright, mm, room frame. */
  readonly ballMm: Vec3;
}

/**
 * The turn is what is left of the rotation when the shortest one that leans the axis is taken off
 * (swing and twist), so that azimuth = wheel angle + turn holds for a leaning wheel, too.
 */
export function wheelPose(state: RollingState, timeS: number, nearTurnDeg: number): WheelPose {
  const [w, , , z] = state.turn;
  const clockwiseDeg = (-2 * Math.atan2(z, w) * 180) / Math.PI;
  const turns = Math.round((nearTurnDeg - clockwiseDeg) / 360);
  const axis = intoRoom(state.turn, [0, 0, 1]);
  const flat = Math.hypot(axis[0], axis[1]);
  const perUnit = flat > 0 ? (1000 * Math.atan2(flat, axis[2])) / flat : 1000;
  return {
    timeS,
    turnDeg: clockwiseDeg + 360 * turns,
    // The axis tips toward the low side; azimuth 90 lies along −y.
    leanMrad: [-axis[0] * perUnit, axis[1] * perUnit],
    axes: [intoRoom(state.turn, [1, 0, 0]), intoRoom(state.turn, [0, 1, 0]), axis],
    ballMm: state.ballMm,
  };
}
