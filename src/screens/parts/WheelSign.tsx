import type { WheelStage } from '../../contract/logbook.ts';
import { sectorPath } from './polar.ts';
import { HeavyDrop, LightRing, ValveStem } from './shapes.tsx';

export interface WheelSignProps {
  readonly stage: WheelStage;
  /** Null while the wheel was never read. */
  readonly lightSpotDeg: number | null;
}

const TYRE = 112;
const RIM = 68;
const BORE = 15;
/** Length of the block drawn for weights, degrees: those of the shed's list are not known. */
const BLOCK_DEG = 34;

/**
 * A wheel and where it stands, small: never read, its rim is only a broken line; read, drop and
 * ring hang and float at their places; weights on, the block sits at the light spot; proved, a
 * level line runs through it with a tick.
 */
export function WheelSign({ stage, lightSpotDeg }: WheelSignProps) {
  const spotDeg = lightSpotDeg ?? 0;
  const shows = stage !== 'never-read' && lightSpotDeg !== null;
  return (
    <svg className="wheel-sign" viewBox="-130 -130 260 260" aria-hidden="true" focusable="false">
      <circle className="wheel-tyre" r={TYRE} />
      <circle className={stage === 'never-read' ? 'wheel-rim-unread' : 'wheel-rim'} r={RIM} />
      <circle className="wheel-bore" r={BORE} />
      <g className="valve-outside" transform={`translate(0 ${-RIM + 2})`}>
        <ValveStem />
      </g>
      {shows && stage === 'read' && (
        <>
          <g transform={`rotate(${spotDeg + 180}) translate(0 ${-RIM}) scale(1.25)`}>
            <HeavyDrop />
          </g>
          <g transform={`rotate(${spotDeg}) translate(0 ${-RIM - 4}) scale(1.1)`}>
            <LightRing />
          </g>
        </>
      )}
      {stage === 'weights-on' && (
        <path
          className="wheel-sign-block"
          d={sectorPath(spotDeg - BLOCK_DEG / 2, spotDeg + BLOCK_DEG / 2, RIM - 24, RIM - 2)}
        />
      )}
      {stage === 'proved' && (
        <>
          <path className="wheel-sign-level" d="M-128 0 H-30 M30 0 H128" />
          <circle className="wheel-sign-proved" r={30} />
          <path className="wheel-sign-tick" d="M-14 1 L-4 12 L15 -11" />
        </>
      )}
    </svg>
  );
}
