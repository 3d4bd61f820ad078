import type { SweepSetup } from '../../../src/contract/setup.ts';
import { normalFrom, seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { WheelPose } from '../motion/wheelPose.ts';
import type { StandShape } from '../view/standModel.ts';
import { edgeSeenAt } from './filmTruth.ts';

/** A tap on the screen is good to so many pixels of a picture 1280 wide. */
const TAP_PX = 2.5;
/** The picture that is tapped: a moment after the start. */
const TAP_FRAME = 10;

/**
 * What a person would enter for a scene: the truth, but for what the scene says is entered
 * otherwise (a tablet's sensor, a ruler, a lens that nobody knows).
 */
export function filmSetup(model: StandShape, poses: readonly WheelPose[] = []): SweepSetup {
  const { scene } = model;
  const { wheel, stand, camera, entered } = scene;
  const tape = scene.tyre.tapes[0];
  if (!tape) throw new Error('a scene without a tape at the valve has no setup');
  const fov = entered.horizontalFovDeg === undefined ? camera.horizontalFovDeg : entered.horizontalFovDeg;
  const line = entered.lineAbovePlateMm === undefined ? stand.lineAbovePlateMm : entered.lineAbovePlateMm;
  const tapped = entered.tapEdge ? poses[Math.min(TAP_FRAME, poses.length - 1)] : undefined;
  return {
    format: 'tiltsweep.setup/1',
    label: scene.label,
    wheel: {
      massKg: wheel.massKg,
      edgeRadiusMm: wheel.edgeRadiusMm,
      weightRadiusMm: wheel.weightRadiusMm,
      boreDiameterMm: wheel.boreDiameterMm,
    },
    stand: {
      ballDiameterMm: stand.ballDiameterMm,
      pendulumDepthMm: stand.pendulumDepthMm,
      ...(line === null ? {} : { lineAbovePlateMm: line }),
    },
    camera: {
      downTiltDeg: entered.downTiltDeg ?? camera.downTiltDeg,
      ...(fov === null ? {} : { horizontalFovDeg: fov }),
    },
    sight: {
      valveMark: { widthMm: tape.widthMm, colour: tape.colour },
      ...(tapped ? { edgePoint: tapOf(model, tapped) } : {}),
    },
    weightStepG: 5,
  };
}

function tapOf(model: StandShape, pose: WheelPose) {
  const normal = normalFrom(seededRandom(model.scene.seed + 71));
  const { xPx, yPx } = edgeSeenAt(model, pose, 0);
  const slip = (TAP_PX * model.scene.camera.widthPx) / 1280;
  return {
    xPx: Math.round(xPx + slip * normal()),
    yPx: Math.round(yPx + slip * normal()),
    timeS: Math.round(1000 * pose.timeS) / 1000,
  };
}
