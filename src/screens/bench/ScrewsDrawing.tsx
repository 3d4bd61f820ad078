import { clockPoint } from '../parts/polar.ts';
import { words } from '../words/words.ts';

/** The plate from above as the person stands: camera below, azimuths clockwise from there. */
export function ScrewsDrawing({ firstAzimuthDeg }: { readonly firstAzimuthDeg: number }) {
  return (
    <svg
      className="screws-drawing"
      viewBox="-120 -112 240 250"
      role="img"
      aria-label={words.stand.screwsDrawing}
    >
      <circle className="seat-part" r={104} />
      <circle className="seat-ball" r={26} />
      {[0, 120, 240].map((offset, index) => {
        // Azimuth 0 is at the camera, drawn below: half a turn from the drawing's top.
        const at = clockPoint(firstAzimuthDeg + offset + 180, 78);
        return (
          <g key={offset} transform={`translate(${at.x} ${at.y})`}>
            <path
              className={index === 0 ? 'screw screw-first' : 'screw'}
              d="M0 -21 L18 -10.5 V10.5 L0 21 L-18 10.5 V-10.5 Z"
            />
            <text
              className={index === 0 ? 'screw-first-name' : undefined}
              textAnchor="middle"
              y={7}
            >
              {index + 1}
            </text>
          </g>
        );
      })}
      <path className="lean-camera" d="M-18 118 h36 v18 h-36 Z M-8 118 v-7 h16 v7" />
    </svg>
  );
}
