import { RAD_PER_DEG } from '../../quantities/angle.ts';

/** Points on a clock face: 0° up, clockwise; x right, y down, in drawing units. */
export interface DrawingPoint {
  readonly x: number;
  readonly y: number;
}

export function clockPoint(angleDeg: number, radius: number): DrawingPoint {
  const angle = angleDeg * RAD_PER_DEG;
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

/** Path of a ring's sector from one angle clockwise to another, between two radii. */
export function sectorPath(
  fromDeg: number,
  toDeg: number,
  innerRadius: number,
  outerRadius: number,
): string {
  const large = toDeg - fromDeg > 180 ? 1 : 0;
  const outerFrom = clockPoint(fromDeg, outerRadius);
  const outerTo = clockPoint(toDeg, outerRadius);
  const innerTo = clockPoint(toDeg, innerRadius);
  const innerFrom = clockPoint(fromDeg, innerRadius);
  return [
    `M${fixed(outerFrom)}`,
    `A${outerRadius} ${outerRadius} 0 ${large} 1 ${fixed(outerTo)}`,
    `L${fixed(innerTo)}`,
    `A${innerRadius} ${innerRadius} 0 ${large} 0 ${fixed(innerFrom)}`,
    'Z',
  ].join('');
}

function fixed(point: DrawingPoint): string {
  return `${point.x.toFixed(2)} ${point.y.toFixed(2)}`;
}
