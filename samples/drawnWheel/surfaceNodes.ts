import { cross, drawnRay, turnedAbout, type DrawnCamera, type Vec3 } from './drawnCamera.ts';
import type { WheelState } from './motion.ts';
import type { DrawnScene } from './scene.ts';

/**
 * Where lines of sight meet the tread, exactly, at the corners of a net of {@link NODE_PX} pixels;
 * between them the drawing interpolates (error under 0.02° and 0.03 mm within 55° of the sight).
 */
export interface SurfaceNodes {
  readonly columns: number;
  /**
   * Four values a node: azimuth on the wheel (degrees clockwise, before its turn), height above the
   * edge along the wheel's axis, height above the laser plane, and the fall of the line of sight
   * per mm inward. NaN where the line of sight passes by.
   */
  readonly values: Float64Array;
}

export const NODE_PX = 8;

export function surfaceNodes(
  scene: DrawnScene,
  camera: DrawnCamera,
  state: WheelState,
): SurfaceNodes {
  const columns = Math.ceil(scene.camera.widthPx / NODE_PX) + 2;
  const rows = Math.ceil(scene.camera.heightPx / NODE_PX) + 2;
  const values = new Float64Array(4 * columns * rows).fill(NaN);
  const toWheel = intoWheel(scene, state);
  const eye = toWheel.point(camera.eye);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const ray = drawnRay(camera, i * NODE_PX, j * NODE_PX);
      const way = toWheel.direction(ray);
      const along = firstMeeting(scene, eye, way);
      if (along === null) continue;
      const x = eye[0] + along * way[0];
      const y = eye[1] + along * way[1];
      const at = 4 * (j * columns + i);
      values[at] = (Math.atan2(-y, x) * 180) / Math.PI;
      values[at + 1] = eye[2] + along * way[2] - edgeAboveBallMm(scene);
      values[at + 2] = camera.eye[2] + along * ray[2];
      const inward = -(x * way[0] + y * way[1]) / Math.hypot(x, y);
      values[at + 3] = -way[2] / inward;
    }
  }
  return { columns, values };
}

function edgeAboveBallMm(scene: DrawnScene): number {
  return scene.lineAbovePlateMm - scene.ballDiameterMm / 2 + scene.edgeAboveLineMm;
}

/** From the room into the leaning wheel: about the ball's centre, the high side back down. */
function intoWheel(scene: DrawnScene, state: WheelState) {
  const lean: Vec3 = [state.toward, -state.across, 0];
  const angle = Math.hypot(lean[0], lean[1]);
  // lean × up turns the high side up, so the other way turns it back.
  const [ax, ay, az] = cross(lean, [0, 0, 1]);
  const axis: Vec3 = angle > 0 ? [ax / angle, ay / angle, az / angle] : [0, 1, 0];
  const ball: Vec3 = [
    state.wayTowardMm,
    -state.wayAcrossMm,
    scene.ballDiameterMm / 2 - scene.lineAbovePlateMm,
  ];
  const direction = (v: Vec3): Vec3 => turnedAbout(v, axis, -angle);
  return {
    direction,
    point: (p: Vec3): Vec3 => direction([p[0] - ball[0], p[1] - ball[1], p[2] - ball[2]]),
  };
}

/** First meeting of a line of sight with the crowned tread, a cone about the wheel's axis. */
function firstMeeting(scene: DrawnScene, eye: Vec3, way: Vec3): number | null {
  const c = scene.crownSlope;
  // Radius at height z over the ball: full − c·z.
  const full = scene.edgeRadiusMm + c * edgeAboveBallMm(scene);
  const level = full - c * eye[2];
  const a = way[0] ** 2 + way[1] ** 2 - (c * way[2]) ** 2;
  const half = eye[0] * way[0] + eye[1] * way[1] + c * way[2] * level;
  const rest = eye[0] ** 2 + eye[1] ** 2 - level ** 2;
  const root = half * half - a * rest;
  if (root < 0) return null;
  const along = (-half - Math.sqrt(root)) / a;
  return along > 0 ? along : null;
}
