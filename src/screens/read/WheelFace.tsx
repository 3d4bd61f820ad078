import type { ReactNode, Ref } from 'react';

import { clockPoint } from '../parts/polar.ts';
import { ValveStem } from '../parts/shapes.tsx';
import type { WheelLayout } from './wheelLayout.ts';

/** Half the width of the drawing, in its units: the tyre and a little air. */
export const FACE_HALF = 240;

export interface WheelFaceProps {
  readonly layout: WheelLayout;
  readonly textUnits: number;
  readonly label: string;
  readonly svgRef: Ref<SVGSVGElement>;
  /** True where something on the rim would hide the valve: it is then drawn inside. */
  readonly valveInside?: boolean;
  /** Drawn on the rim, under its circle. */
  readonly under?: ReactNode;
  readonly children?: ReactNode;
}

/** The wheel from above as a clock face, valve at 12: what every wheel drawing shares. */
export function WheelFace(props: WheelFaceProps) {
  const { layout, valveInside = false } = props;
  return (
    <svg
      ref={props.svgRef}
      className="wheel-drawing"
      viewBox={`${-FACE_HALF} ${-FACE_HALF} ${2 * FACE_HALF} ${2 * FACE_HALF}`}
      role="img"
      aria-label={props.label}
      style={{ fontSize: props.textUnits }}
    >
      <circle className="wheel-tyre" r={layout.tyre} />
      <circle className="wheel-rim" r={layout.rim} />
      {props.under}
      <circle className="wheel-circle" r={layout.weights} />
      <circle className="wheel-bore" r={layout.bore} />
      <Dial layout={layout} />
      <g
        className={valveInside ? 'valve-inside' : 'valve-outside'}
        transform={`translate(0 ${-layout.rim + (valveInside ? 26 : 2)})`}
      >
        <ValveStem />
      </g>
      {props.children}
    </svg>
  );
}

/** The clock face on the tyre, in chalk: a figure at every quarter, a stroke at every hour. */
function Dial({ layout }: { readonly layout: WheelLayout }) {
  const hours = Array.from({ length: 12 }, (_, index) => index + 1);
  return (
    <g className="wheel-dial">
      {hours.map((hour) => {
        const at = clockPoint(hour * 30, layout.tyre - 18);
        return hour % 3 === 0 ? (
          <text key={hour} x={at.x} y={at.y}>
            {hour}
          </text>
        ) : (
          <path
            key={hour}
            transform={`rotate(${hour * 30})`}
            d={`M0 ${-layout.tyre + 9} V${-layout.tyre + 25}`}
          />
        );
      })}
    </g>
  );
}
