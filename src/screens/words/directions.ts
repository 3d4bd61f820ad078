import { wrapTurnDeg } from '../../quantities/angle.ts';
import { words } from './words.ts';

/**
 * Directions in the room as the person at the camera would say them. Azimuth 0 is the side by the
 * camera; clockwise seen from above it goes to the left, the far side and the right.
 */
export function formatRoomDirection(azimuthDeg: number): string {
  const { directions } = words;
  const stepDeg = 360 / directions.length;
  return directions[Math.round(wrapTurnDeg(azimuthDeg) / stepDeg) % directions.length];
}
