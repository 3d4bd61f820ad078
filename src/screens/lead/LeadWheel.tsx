import type { Weight } from '../../contract/reading.ts';
import { ValveStem } from '../parts/shapes.tsx';

export interface LeadWheelProps {
  readonly weight: Weight;
  /** Turn since the valve stood at the sight; null: drawn with the valve at twelve. */
  readonly turnDeg: number | null;
}

/** The wheel from above, turned as it lies: sight and person below, the weight's spot on the rim. */
export function LeadWheel({ weight, turnDeg }: LeadWheelProps) {
  // Azimuth 0 is toward the person, below in the drawing; by hand the valve stands at twelve.
  const valveDeg = turnDeg === null ? 0 : turnDeg + 180;
  return (
    <svg className="lead-wheel" viewBox="-160 -160 320 320" aria-hidden="true" focusable="false">
      <circle className="lead-tyre" r={120} />
      <circle className="lead-rim" r={82} />
      {turnDeg !== null && <path className="lead-sight" d="M0 126 l-14 26 h28 Z" />}
      <g transform={`rotate(${valveDeg.toFixed(1)}) translate(0 -52)`}>
        <ValveStem />
      </g>
      <g transform={`rotate(${(valveDeg + weight.angleDeg).toFixed(1)}) translate(0 -82)`}>
        <rect className="shape-weight" x={-20} y={-9} width={40} height={18} />
      </g>
    </svg>
  );
}
