import { clockPoint } from '../parts/polar.ts';
import { words } from '../words/words.ts';

export interface StandLeanDrawingProps {
  /** Null where no direction can be told. */
  readonly highAzimuthDeg: number | null;
}

/** The stand from above as the person stands: camera below, azimuth clockwise from there. */
export function StandLeanDrawing({ highAzimuthDeg }: StandLeanDrawingProps) {
  return (
    <svg
      className="lean-drawing"
      viewBox="-100 -100 200 200"
      role="img"
      aria-label={
        highAzimuthDeg === null ? words.reading.standDrawing : words.reading.standLeanDrawing
      }
    >
      <circle className="lean-plate" r={72} />
      {highAzimuthDeg !== null && <HighSide azimuthDeg={highAzimuthDeg} />}
      <path className="lean-camera" d="M-14 82 h28 v14 h-28 Z M-6 82 v-6 h12 v6" />
    </svg>
  );
}

function HighSide({ azimuthDeg }: { readonly azimuthDeg: number }) {
  // Azimuth 0 is at the camera, which is drawn below: half a turn from the drawing's top.
  const high = clockPoint(azimuthDeg + 180, 62);
  const low = clockPoint(azimuthDeg, 62);
  return (
    <>
      <path className="lean-arrow" d={`M${low.x} ${low.y} L${high.x} ${high.y}`} />
      <circle className="lean-high" cx={high.x} cy={high.y} r={11} />
    </>
  );
}
