import {
  FAST_ABOVE_DEG_PER_S,
  SLOW_BELOW_DEG_PER_S,
  turnSpeedOf,
  type TurnSpeed,
} from '../../contract/turnSpeed.ts';
import { formatDegPerS } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** The scale ends at one and a half times "too fast": beyond, the pointer rests at the end. */
const SCALE_END_DEG_PER_S = FAST_ABOVE_DEG_PER_S * 1.5;
const WIDTH = 300;

/** Asked for when shown: the language may have changed since the start. */
const SPEED_WORDS = {
  still: () => words.sweep.speedStill,
  slow: () => words.sweep.speedSlow,
  good: () => words.sweep.speedGood,
  fast: () => words.sweep.speedFast,
} as const;

/** A gauge with the good range marked, and the same in words. */
export function SpeedHint({
  turningDegPerS,
  speed = turnSpeedOf(turningDegPerS),
}: {
  readonly turningDegPerS: number;
  readonly speed?: TurnSpeed | undefined;
}) {
  const x = (degPerS: number) =>
    (WIDTH * Math.min(degPerS, SCALE_END_DEG_PER_S)) / SCALE_END_DEG_PER_S;
  const now = x(Math.abs(turningDegPerS));
  return (
    <div className="speed" data-speed={speed}>
      <p>
        {words.sweep.speed}: <strong>{SPEED_WORDS[speed]()}</strong> ·{' '}
        {formatDegPerS(turningDegPerS)}
      </p>
      <svg viewBox={`-10 0 ${WIDTH + 20} 34`} aria-hidden="true" focusable="false">
        <path className="speed-scale" d={`M0 22 H${WIDTH}`} />
        <path
          className="speed-good"
          d={`M${x(SLOW_BELOW_DEG_PER_S)} 22 H${x(FAST_ABOVE_DEG_PER_S)}`}
        />
        <path className="speed-now" d={`M${now} 20 l-9 -16 h18 Z`} />
      </svg>
    </div>
  );
}
