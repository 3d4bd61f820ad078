import { failed, succeeded } from '../contract/outcome.ts';
import { wrapTurnDeg } from '../quantities/angle.ts';
import type { BalanceOutcome } from './failures.ts';
import { DIRECTION_DEG, rejectNumbers } from './inputs.ts';

const DEG_PER_HOUR = 30;
const MINUTES_PER_TURN = 12 * 60;
/** Half an hour of clock (15°) is as fine as a clock position is said by eye. */
const SPOKEN_STEP_MINUTES = 30;

const CLOCK = /^(\d{1,2})(?:[:.h ](\d{2}))?(?: ?o['’]?clock)?$/;
const DEGREES = /^(-?\d+(?:[.,]\d+)?) ?(?:°|deg|degrees)$/;

/**
 * Wheel angle from a place as people say it: "8:30", "12", "7 o'clock" (valve at 12, 30° an hour) or
 * "255°", "255 deg". Degrees in [0, 360).
 */
export function wheelAngleFromText(text: string): BalanceOutcome<number> {
  const plain = text.trim().toLowerCase();
  const degrees = DEGREES.exec(plain);
  if (degrees) {
    const angleDeg = Number(degrees[1]!.replace(',', '.'));
    return (
      rejectNumbers({ angleDeg: [angleDeg, DIRECTION_DEG] }) ?? succeeded(wrapTurnDeg(angleDeg))
    );
  }
  const clock = CLOCK.exec(plain);
  if (!clock) return failed('clock-unreadable', { text });
  const hours = Number(clock[1]);
  const minutes = Number(clock[2] ?? 0);
  if (hours > 12 || minutes > 59) return failed('clock-unreadable', { text });
  return succeeded(wrapTurnDeg((hours + minutes / 60) * DEG_PER_HOUR));
}

/** A wheel angle as a clock position to the half hour: 255 → "8:30", 0 → "12:00". */
export function clockFromWheelAngle(angleDeg: number): BalanceOutcome<string> {
  const bad = rejectNumbers({ angleDeg: [angleDeg, DIRECTION_DEG] });
  if (bad) return bad;
  const exact = (wrapTurnDeg(angleDeg) / 360) * MINUTES_PER_TURN;
  const minutes =
    (Math.round(exact / SPOKEN_STEP_MINUTES) * SPOKEN_STEP_MINUTES) % MINUTES_PER_TURN;
  const hours = Math.floor(minutes / 60);
  return succeeded(`${hours === 0 ? 12 : hours}:${String(minutes % 60).padStart(2, '0')}`);
}
