import { SECTOR_DEG } from '../../contract/sweep.ts';
import { sectorPath } from '../parts/polar.ts';
import { ValveStem } from '../parts/shapes.tsx';
import { formatNumber } from '../words/numbers.ts';
import { words } from '../words/words.ts';

const OUTER = 150;
const INNER = 116;
/** Gap between sectors, degrees: enough to count quarters, too little to look empty. */
const GAP_DEG = 0.7;

/** Where the stem stands, close to the ring: next to the figure it would look like a minus. */
const VALVE_FOOT = 97;

export interface TurnRingProps {
  readonly sectors: readonly boolean[];
  readonly coveredDeg: number;
  readonly enough: boolean;
  /** Turn since the valve stood at the sight: turns the small stem inside; null until it is known. */
  readonly valveTurnDeg: number | null;
}

/** Fills sector by sector as the wheel goes round; the figure inside says how far. */
export function TurnRing({ sectors, coveredDeg, enough, valveTurnDeg }: TurnRingProps) {
  const shownDeg = formatNumber(Math.min(Math.floor(coveredDeg), 360), 0);
  return (
    <svg
      className="turn-ring"
      data-enough={enough}
      viewBox="-160 -160 320 320"
      role="img"
      aria-label={`${words.sweep.turnCovered}: ${shownDeg}° ${words.sweep.ofTurn}`}
    >
      <circle className="ring-track" r={(OUTER + INNER) / 2} strokeWidth={OUTER - INNER} />
      {sectors.map(
        (covered, index) =>
          covered && (
            <path
              key={index}
              className="ring-sector"
              d={sectorPath(
                index * SECTOR_DEG + GAP_DEG / 2,
                (index + 1) * SECTOR_DEG - GAP_DEG / 2,
                INNER,
                OUTER,
              )}
            />
          ),
      )}
      <path className="ring-quarter" d="M0 -156 V-110 M156 0 H110 M0 156 V110 M-156 0 H-110" />
      {valveTurnDeg !== null && (
        // The sight is below, toward the person: a valve at turn 0 stands there.
        <g transform={`rotate(${(valveTurnDeg + 180).toFixed(1)}) translate(0 ${-VALVE_FOOT})`}>
          <ValveStem />
        </g>
      )}
      {enough ? (
        <path className="ring-tick" d="M-48 4 L-14 38 L52 -34" />
      ) : (
        <>
          <text className="ring-figure" y={18}>
            {shownDeg}°
          </text>
          <text className="ring-word" y={52}>
            {words.sweep.ofTurn}
          </text>
        </>
      )}
    </svg>
  );
}
