import { DEG_PER_RAD, RAD_PER_DEG } from './angle.ts';

/**
 * How far below the horizontal a tablet's rear camera looks, degrees in [−90, 90], from the angles
 * that a browser tells of the device: β about its short side, γ about its long side. The rear camera
 * looks along the device's −z; z's share of "up" is cos β·cos γ, whichever way the screen is
 * turned, so the tilt is asin(cos β·cos γ). Flat on a table, screen up: 90. Source: W3C Device
 * Orientation, rotation Z-X′-Y″ (from memory).
 */
export function downTiltFromOrientationDeg(betaDeg: number, gammaDeg: number): number {
  const up = Math.cos(betaDeg * RAD_PER_DEG) * Math.cos(gammaDeg * RAD_PER_DEG);
  return Math.asin(Math.min(1, Math.max(-1, up))) * DEG_PER_RAD;
}
