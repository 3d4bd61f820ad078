import { useRef, type PointerEvent } from 'react';

import type { EyeReading } from '../../balance/byEye.ts';
import type { Weight } from '../../contract/reading.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { sectorPath } from '../parts/polar.ts';
import { HeavyDrop, LightRing, ValveStem } from '../parts/shapes.tsx';
import { words } from '../words/words.ts';

export interface PracticeWheelProps {
  readonly weights: readonly Weight[];
  /** Weights to be stuck on next. */
  readonly proposed: readonly Weight[];
  readonly guess: EyeReading | null;
  /** Light spot as the tool reads it; null where it tells none. */
  readonly lightDeg: number | null;
  /** Heavy spot as it is; null while it is hidden. */
  readonly heavyDeg: number | null;
  /** Null while a touch sticks nothing on. */
  readonly onTouch: ((angleDeg: number) => void) | null;
}

/** Wide enough that the drop on the rim ends within it: chalk shows on the tyre only. */
const TYRE = 127;
const RIM = 84;
/** Length of a strip per gram at the usual radius, degrees. */
const DEG_PER_G = 0.87;

/** The wheel from above, valve up: what is on it, what was guessed, read and hidden. */
export function PracticeWheel(props: PracticeWheelProps) {
  const { weights, proposed, guess, lightDeg, heavyDeg, onTouch } = props;
  // A finger that came down elsewhere, on the sweep's strip just before this drawing was shown, means
  // nothing here when it is lifted.
  const isDown = useRef(false);
  const touch = (event: PointerEvent<SVGSVGElement>) => {
    if (!isDown.current || onTouch === null) return;
    isDown.current = false;
    const box = event.currentTarget.getBoundingClientRect();
    const x = event.clientX - box.left - box.width / 2;
    const y = event.clientY - box.top - box.height / 2;
    onTouch(wrapTurnDeg(Math.round((Math.atan2(x, -y) * 180) / Math.PI)));
  };
  return (
    <svg
      className="wheel-sign practice-wheel"
      data-touch={onTouch !== null}
      viewBox="-130 -130 260 260"
      role="img"
      aria-label={words.practice.rim}
      onPointerDown={() => {
        isDown.current = true;
      }}
      onPointerCancel={() => {
        isDown.current = false;
      }}
      onPointerLeave={() => {
        isDown.current = false;
      }}
      onPointerUp={touch}
    >
      <circle className="wheel-tyre" r={TYRE} />
      <circle className="wheel-rim" r={RIM} />
      <circle className="wheel-bore" r={15} />
      <g className="valve-outside" transform={`translate(0 ${-RIM + 2})`}>
        <ValveStem />
      </g>
      {weights.map((weight, index) => (
        <path key={index} className="wheel-sign-block" d={blockPath(weight)} />
      ))}
      {proposed.map((weight, index) => (
        <path key={index} className="practice-proposed" d={blockPath(weight)} />
      ))}
      {guess !== null && (
        <path
          className="practice-guess"
          d={`M0 ${-RIM + 24} V${-TYRE + 2}`}
          transform={`rotate(${guess.lightSpotDeg})`}
        />
      )}
      {lightDeg !== null && (
        <g transform={`rotate(${lightDeg}) translate(0 ${-RIM})`}>
          <LightRing />
        </g>
      )}
      {heavyDeg !== null && (
        <g transform={`rotate(${heavyDeg}) translate(0 ${-RIM})`}>
          <HeavyDrop />
        </g>
      )}
    </svg>
  );
}

function blockPath({ massG, angleDeg }: Weight): string {
  const half = Math.max(3, (massG * DEG_PER_G) / 2);
  return sectorPath(angleDeg - half, angleDeg + half, RIM - 20, RIM - 2);
}
