import type { WheelArcRecord, WheelRecord } from '../../contract/logbook.ts';
import { FACE_HALF, WheelFace } from '../read/WheelFace.tsx';
import { wheelLayout } from '../read/wheelLayout.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { words } from '../words/words.ts';
import { BlockedArc } from './BlockedArc.tsx';
import { useDrawnArc } from './useDrawnArc.ts';
import './rim.css';

export interface RimDrawingProps {
  readonly wheel: WheelRecord;
  readonly onArc: (arc: WheelArcRecord) => void;
}

/** The bare wheel from above: a finger along its rim bars a stretch for weights. */
export function RimDrawing({ wheel, onArc }: RimDrawingProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(480);
  const { drawn, ...finger } = useDrawnArc(onArc);
  const layout = wheelLayout({
    wheel: {
      edgeRadiusMm: wheel.edgeRadiusMm.value,
      weightRadiusMm: wheel.rings[0]!.radiusMm.value,
      ...(wheel.boreDiameterMm === null ? {} : { boreDiameterMm: wheel.boreDiameterMm.value }),
    },
  });
  return (
    <div className="plan-wheel rim-drawing" data-drawing="true" {...finger}>
      <WheelFace
        svgRef={ref}
        layout={layout}
        textUnits={(textSizePx() * 2 * FACE_HALF) / widthPx}
        label={words.weights.drawing}
        under={
          <>
            {wheel.forbiddenArcs.map((arc) => (
              <BlockedArc key={`${arc.fromDeg} ${arc.toDeg}`} arc={arc} layout={layout} />
            ))}
            {drawn !== null && <BlockedArc arc={drawn} layout={layout} />}
          </>
        }
      />
    </div>
  );
}
