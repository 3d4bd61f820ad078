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

const TICK = 'M-48 4 L-14 38 L52 -34';
/** Where a figure stands below it. */
const TICK_ABOVE = 'M-38 -30 L-12 -4 L42 -60';

export interface TurnRingProps {
  readonly sectors: readonly boolean[];
  readonly coveredDeg: number;
  readonly enough: boolean;
  /** Turn since the valve stood at the sight: turns the small stem inside; null until it is known. */
  readonly valveTurnDeg: number | null;
  /** "112° to go"; without it "of 360°". */
  readonly toGo?: string | null;
  /** "± 1.2 g": how good it would be by now. */
  readonly soFar?: string | null;
}

/** Fills sector by sector as the wheel goes round; the figures inside say how far, and how good. */
export function TurnRing(props: TurnRingProps) {
  const { sectors, coveredDeg, enough, valveTurnDeg, toGo = null, soFar = null } = props;
  const shownDeg = formatNumber(Math.min(Math.floor(coveredDeg), 360), 0);
  const label = [
    `${words.sweep.turnCovered}: ${shownDeg}° ${words.sweep.ofTurn}`,
    ...(soFar === null ? [] : [`${soFar} ${words.sweep.soFar}`]),
  ].join(', ');
  return (
    <svg
      className="turn-ring"
      data-enough={enough}
      viewBox="-160 -160 320 320"
      role="img"
      aria-label={label}
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
        <path className="ring-tick" d={soFar === null ? TICK : TICK_ABOVE} />
      ) : (
        <>
          <text className="ring-figure" y={soFar === null ? 18 : -8}>
            {shownDeg}°
          </text>
          <text className="ring-word" y={soFar === null ? 48 : 18}>
            {toGo ?? words.sweep.ofTurn}
          </text>
        </>
      )}
      {soFar !== null && (
        <>
          <text className="ring-so-far" y={62}>
            {soFar}
          </text>
          <text className="ring-word" y={86}>
            {words.sweep.soFar}
          </text>
        </>
      )}
    </svg>
  );
}
