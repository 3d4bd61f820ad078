import { wrapTurnDeg } from '../../quantities/angle.ts';

/**
 * Directions in the room as the person at the camera would say them. Azimuth 0 is the side by the
 * camera; clockwise seen from above it goes to the left, the far side and the right.
 */
const DIRECTIONS = [
  'toward the camera',
  'toward the camera and to the left',
  'to the left',
  'to the far left',
  'away from the camera',
  'to the far right',
  'to the right',
  'toward the camera and to the right',
] as const;

const DIRECTION_STEP_DEG = 360 / DIRECTIONS.length;

export function formatRoomDirection(azimuthDeg: number): string {
  const index = Math.round(wrapTurnDeg(azimuthDeg) / DIRECTION_STEP_DEG) % DIRECTIONS.length;
  return DIRECTIONS[index];
}
