import type { WheelRecord } from '../../contract/logbook.ts';
import { LightRing } from '../parts/shapes.tsx';
import { FACE_HALF, WheelFace } from '../read/WheelFace.tsx';
import { stripLabel, WeightStrip } from '../read/WeightStrip.tsx';
import { wheelLayout } from '../read/wheelLayout.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { wheelAngleAt } from '../weights/wheelAngleAt.ts';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface EyeWheelProps {
  readonly wheel: WheelRecord;
  readonly lightDeg: number;
  readonly massG: number;
  readonly units: Units;
  readonly onTouch?: (angleDeg: number) => void;
}

/** The wheel with the weight as the eye would place it; a touch moves it. */
export function EyeWheel({ wheel, lightDeg, massG, units, onTouch }: EyeWheelProps) {
  const [svg, widthPx] = useMeasuredWidth<SVGSVGElement>(540);
  const radiusMm = wheel.rings[0]!.radiusMm.value;
  const layout = wheelLayout({
    wheel: {
      edgeRadiusMm: wheel.edgeRadiusMm.value,
      weightRadiusMm: radiusMm,
      ...(wheel.boreDiameterMm === null ? {} : { boreDiameterMm: wheel.boreDiameterMm.value }),
    },
  });
  const textUnits = (textSizePx() * 2 * FACE_HALF) / widthPx;
  const weight = { massG, radiusMm, angleDeg: lightDeg };
  const label = stripLabel(weight, layout, units, textUnits);
  const face = (
    <WheelFace
      svgRef={svg}
      layout={layout}
      textUnits={textUnits}
      label={words.byEye.wheelText(formatClockAndDeg(lightDeg), formatKnownMass(massG, units))}
    >
      <WeightStrip {...{ weight, label, layout, textUnits }} />
      <g transform={`rotate(${lightDeg}) translate(0 ${-layout.rim - 9})`}>
        <LightRing />
      </g>
    </WheelFace>
  );
  if (onTouch === undefined) return face;
  return (
    <div
      className="eye-wheel"
      title={words.byEye.touch}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onTouch(Math.round(wheelAngleAt(event)));
      }}
      onPointerMove={(event) => {
        if (event.buttons > 0) onTouch(Math.round(wheelAngleAt(event)));
      }}
    >
      {face}
    </div>
  );
}
