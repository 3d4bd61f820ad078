/**
 * The drawing's own camera, a pinhole with a lens that bends, in the drawing's right-handed frame (see README.md): turned by
 * rotating vectors about axes, where the measuring code writes its rotation out.
 */
export type Vec3 = readonly [number, number, number];

export interface DrawnCameraPlace {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly horizontalFovDeg: number;
  readonly downTiltDeg: number;
  /** Positive looks to the right of the wheel's axis. */
  readonly yawDeg: number;
  /** Positive turns the scene clockwise in the picture. */
  readonly rollDeg: number;
  /**
   * Radial distortion of the lens; negative is a barrel. A ray that a lens without it would show at
   * r (in focal lengths from the middle) appears at r·(1 + radial·r²).
   */
  readonly radial?: number;
  /** Horizontal way from the wheel's axis, and height above the laser plane, mm. */
  readonly distanceMm: number;
  readonly heightMm: number;
}

export interface DrawnCamera {
  readonly place: DrawnCameraPlace;
  readonly focalPx: number;
  readonly eye: Vec3;
  readonly right: Vec3;
  readonly down: Vec3;
  readonly ahead: Vec3;
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** `v` turned by an angle about a unit axis, right-handed (Rodrigues). */
export function turnedAbout(v: Vec3, axis: Vec3, angleRad: number): Vec3 {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const across = cross(axis, v);
  const along = dot(axis, v) * (1 - c);
  return [0, 1, 2].map((i) => v[i] * c + across[i] * s + axis[i] * along) as unknown as Vec3;
}

const UP: Vec3 = [0, 0, 1];
const rad = (deg: number): number => (deg * Math.PI) / 180;

export function drawnCamera(place: DrawnCameraPlace): DrawnCamera {
  // Looks at the axis, level; right of the picture is then +y.
  let ahead: Vec3 = [-1, 0, 0];
  let right: Vec3 = [0, 1, 0];
  // Looking to the right is turning clockwise seen from above: negative about up.
  ahead = turnedAbout(ahead, UP, -rad(place.yawDeg));
  right = turnedAbout(right, UP, -rad(place.yawDeg));
  ahead = turnedAbout(ahead, right, -rad(place.downTiltDeg));
  // The scene turns clockwise when the camera turns counter-clockwise about its line of sight.
  right = turnedAbout(right, ahead, -rad(place.rollDeg));
  return {
    place,
    focalPx: place.widthPx / 2 / Math.tan(rad(place.horizontalFovDeg) / 2),
    eye: [place.distanceMm, 0, place.heightMm],
    right,
    down: cross(ahead, right),
    ahead,
  };
}

/** Direction through a pixel position, one unit along the optical axis. */
export function drawnRay(camera: DrawnCamera, xPx: number, yPx: number): Vec3 {
  const { place, focalPx, right, down, ahead } = camera;
  const seenA = (xPx - place.widthPx / 2) / focalPx;
  const seenB = (yPx - place.heightPx / 2) / focalPx;
  const shown = Math.hypot(seenA, seenB);
  const straight = shown > 0 ? straightened(shown, place.radial ?? 0) / shown : 1;
  const [a, b] = [seenA * straight, seenB * straight];
  return [0, 1, 2].map((i) => ahead[i] + a * right[i] + b * down[i]) as unknown as Vec3;
}

/** The r that a lens shows at `shown`: halving, since the drawing has time. */
function straightened(shown: number, radial: number): number {
  let [low, high] = [0, 2 * shown];
  for (let i = 0; i < 45; i++) {
    const r = (low + high) / 2;
    if (r * (1 + radial * r * r) < shown) low = r;
    else high = r;
  }
  return (low + high) / 2;
}

/** Pixel position of a point, by its coordinates along the camera's axes. */
export function drawnPixel(camera: DrawnCamera, point: Vec3): { xPx: number; yPx: number } {
  const from: Vec3 = [0, 1, 2].map((i) => point[i] - camera.eye[i]) as unknown as Vec3;
  const depth = dot(from, camera.ahead);
  const a = dot(from, camera.right) / depth;
  const b = dot(from, camera.down) / depth;
  const bent = camera.focalPx * (1 + (camera.place.radial ?? 0) * (a * a + b * b));
  return {
    xPx: camera.place.widthPx / 2 + bent * a,
    yPx: camera.place.heightPx / 2 + bent * b,
  };
}
