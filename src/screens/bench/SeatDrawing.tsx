import type { WheelRecord } from '../../contract/logbook.ts';
import { seatHeightMm } from '../../balance/ballSeat.ts';
import { boreOf } from '../../job/wheelOnBall.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface SeatDrawingProps {
  readonly wheel: WheelRecord;
  readonly units: Units;
}

/** Width and height of what is shown, mm of the stand: ball, bore and a hand's breadth around. */
const SHOWN_MM = 196;
const ABOVE_MM = 52;
const BELOW_MM = 62;
/** Thickness of the drawn hub and plate, mm. */
const HUB_MM = 9;
const PLATE_MM = 11;

/**
 * The seat from the side, to scale: plate, ball, the bore's edge on the ball, and how far the centre
 * of mass hangs below the ball's centre. Only the hub's reach and the thicknesses are not measured.
 */
export function SeatDrawing({ wheel, units }: SeatDrawingProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(560);
  const radiusMm = wheel.ballDiameterMm.value / 2;
  const bore = boreOf(wheel);
  const depthMm = wheel.pendulumDepthMm.value;
  const seat = seatHeightMm({ ballDiameterMm: 2 * radiusMm, boreDiameterMm: bore.value });
  // A ball that falls through is drawn level with the bore.
  const seatMm = seat.ok ? seat.value : 0;
  const tallMm = ABOVE_MM + Math.max(BELOW_MM, radiusMm + PLATE_MM + 14, depthMm + 16);
  const text = (textSizePx() * SHOWN_MM) / widthPx;
  const half = SHOWN_MM / 2;
  const length = (valueMm: number) => formatKnown('length', valueMm, units);
  return (
    <svg
      ref={ref}
      className="seat-drawing"
      viewBox={`${-half} ${-ABOVE_MM} ${SHOWN_MM} ${tallMm}`}
      role="img"
      aria-label={words.bench.drawingText(
        length(2 * radiusMm),
        length(bore.value),
        length(depthMm),
      )}
      style={{ fontSize: text }}
    >
      <rect
        className="seat-part"
        x={-58}
        y={radiusMm}
        width={116}
        height={PLATE_MM}
        vectorEffect="non-scaling-stroke"
      />
      <circle className="seat-ball" r={radiusMm} vectorEffect="non-scaling-stroke" />
      <Hub boreMm={bore.value} seatMm={seatMm} isAssumed={bore.origin === 'assumed'} />
      <path
        className="seat-plumb"
        d={`M0 ${-seatMm - HUB_MM - 10} V${Math.max(depthMm, 0)}`}
        vectorEffect="non-scaling-stroke"
      />
      <path className="seat-cross" d="M-4 0 H4 M0 -4 V4" vectorEffect="non-scaling-stroke" />
      <Depth depthMm={depthMm} radiusMm={radiusMm} text={text} name={length(depthMm)} />
      <text x={-half + 2} y={text * 0.35}>
        {words.bench.drawnBall}
      </text>
      <path className="seat-lead" d={leadTo(text, words.bench.drawnBall, half)} />
      <text x={-half + 2} y={radiusMm + PLATE_MM + text * 1.15}>
        {`⌀ ${length(2 * radiusMm)}`}
      </text>
      <text x={bore.value / 2} y={-seatMm - HUB_MM - text * 0.45} textAnchor="start">
        {`⌀ ${length(bore.value)}`}
      </text>
    </svg>
  );
}

/** From the end of the name at the left to the ball's centre. */
function leadTo(text: number, name: string, half: number): string {
  return `M${-half + 4 + name.length * text * LETTER_WIDTH} 0 H-6`;
}

/** Mean width of a letter in its own height. */
const LETTER_WIDTH = 0.56;

/** The hub's two halves, their inner lower edges on the ball. */
function Hub(props: {
  readonly boreMm: number;
  readonly seatMm: number;
  readonly isAssumed: boolean;
}) {
  const { boreMm, seatMm, isAssumed } = props;
  const reach = SHOWN_MM / 2 - 4;
  const half = (sign: 1 | -1) =>
    `M${(sign * boreMm) / 2} ${-seatMm} v${-HUB_MM} H${sign * reach} v${HUB_MM} Z`;
  return (
    <path
      className={isAssumed ? 'seat-hub seat-hub-assumed' : 'seat-hub'}
      d={`${half(1)} ${half(-1)}`}
      vectorEffect="non-scaling-stroke"
    />
  );
}

/** The centre of mass as a quartered disc, and the depth as a measure beside it. */
function Depth(props: {
  readonly depthMm: number;
  readonly radiusMm: number;
  readonly text: number;
  readonly name: string;
}) {
  const { depthMm, radiusMm, text, name } = props;
  const measureX = radiusMm + 5;
  const endX = SHOWN_MM / 2 - 2;
  const disc = 4.5;
  const textY = Math.max(depthMm / 2, text * 0.2) + text * 0.35;
  // On a narrow screen the name is as wide as the room beside the ball: it then stands by the plate.
  const isBeside = words.bench.drawnCentre.length * text * LETTER_WIDTH < endX - radiusMm;
  const nameY = isBeside ? textY + text * 1.1 : radiusMm + PLATE_MM + text * 1.15;
  return (
    <g>
      <g transform={`translate(0 ${depthMm})`}>
        <circle className="seat-centre" r={disc} vectorEffect="non-scaling-stroke" />
        <path className="seat-quarters" d={`M0 0 V${-disc} A${disc} ${disc} 0 0 1 ${disc} 0 Z`} />
        <path className="seat-quarters" d={`M0 0 V${disc} A${disc} ${disc} 0 0 1 ${-disc} 0 Z`} />
      </g>
      <path
        className="seat-measure"
        d={`M7 0 H${measureX + 3} M${disc + 3} ${depthMm} H${measureX + 3} M${measureX} 0 V${depthMm}`}
        vectorEffect="non-scaling-stroke"
      />
      <text className="seat-depth" x={endX} y={textY} textAnchor="end">
        {name}
      </text>
      <text x={endX} y={nameY} textAnchor="end">
        {words.bench.drawnCentre}
      </text>
    </g>
  );
}
