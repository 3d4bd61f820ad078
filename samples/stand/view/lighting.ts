/**
 * Light of the shed, one set of numbers for both renderers. Linear light in parts of what a white
 * surface sends back under the lamps; directions in the room (x to the sight, y right, z up).
 */
export const LIGHTING = {
  /** Two broad lamps: above to the left behind the camera, and a window far to the right. */
  lamp: [0.42, -0.5, 0.757],
  lampLight: 0.78,
  window: [-0.25, 0.85, 0.46],
  windowLight: 0.28,
  /** Light from everywhere, and how much more from above. */
  ambient: 0.4,
  skyShare: 0.3,
  /** How far round a surface a broad lamp still reaches. */
  lampWrap: 0.3,
  /** Sheen of rubber at grazing sight. */
  sheen: 0.05,
  /** Darkening per mm of depth in a cut, and the least that is left. */
  depthShade: 0.42,
  /** Walls of grooves send back so much of what the face does: one turned up, others. */
  upperFacing: 0.75,
  otherWalls: 0.5,
  /** Paint and metal of the rim: how much they scatter, and how much they mirror. */
  rimFalling: 0.62,
  rimMirrored: 1.15,
  /** Gain of the camera at exposure 1. */
  gain: 1.28,
} as const;

/** Camera's answer to the laser in red, green, blue; what leaks whitens a strong core. */
export const LASER_RGB = {
  green: [0.11, 1, 0.24],
  red: [1, 0.1, 0.09],
} as const;

/** Reflectance of clean rubber, for which `laser.peak` holds; dust and tape send back more. */
export const PLAIN_RUBBER = 0.037;
/** Rubber's gloss makes bright and dark less different for a laser than for a lamp. */
export const LASER_REFLECTANCE_POWER = 0.75;
/** Speckle of laser light on rough rubber, share. */
export const SPECKLE = 0.3;
/** The rim's slope is told over so many texels to either side: its walls are a texel or two wide. */
export const RIM_SLOPE_TEXELS = 1.8;
/**
 * Steps of a line of sight inside a cut or groove, mm, and how many at most: shorter than the
 * thinnest block, long enough for the longest way through a groove.
 */
export const RELIEF_STEP_MM = 1.1;
export const RELIEF_STEPS = 26;

/**
 * Camera curve from linear light to 8 bit: gamma 2.2 with a soft shoulder, so that the laser's core
 * runs into white and not into a hard edge.
 */
export function cameraSteps(light: number): number {
  const shoulder = light / Math.cbrt(1 + (light / 1.25) ** 3);
  return 255 * Math.min(1, shoulder ** (1 / 2.2));
}
