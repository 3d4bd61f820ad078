import { DEG_PER_RAD, wrapTurnDeg } from '../../quantities/angle.ts';

/** Wheel angle, degrees, at which a finger or pointer touches a wheel drawing that fills its box. */
export function wheelAngleAt(event: {
  readonly clientX: number;
  readonly clientY: number;
  readonly currentTarget: Element;
}): number {
  const drawing = event.currentTarget.querySelector('svg') ?? event.currentTarget;
  const box = drawing.getBoundingClientRect();
  const x = event.clientX - (box.left + box.width / 2);
  const y = event.clientY - (box.top + box.height / 2);
  return wrapTurnDeg(Math.atan2(x, -y) * DEG_PER_RAD);
}
