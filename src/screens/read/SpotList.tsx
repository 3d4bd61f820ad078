import { ShapeSign, type LegendShape } from '../parts/shapes.tsx';
import {
  formatClockAndDeg,
  formatKnownMass,
  formatMass,
  formatPlusMinusDeg,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { atMostFigure } from './adviceFor.ts';
import type { ReadingSummary } from './readingSummary.ts';

export interface SpotListProps {
  readonly summary: ReadingSummary;
  readonly units: Units;
}

/** Heavy spot, light spot, weights and what is left, with the shapes of the drawing. */
export function SpotList({ summary, units }: SpotListProps) {
  const { spots, weights } = summary;
  const left =
    spots === null
      ? `${words.reading.atMost} ${atMostFigure(summary.amountRangeG[1], units).text}`
      : formatMass(summary.leftG, units, summary.amountPlusMinusG).text;
  return (
    <dl className="spots">
      <Spot shape="heavy" name={words.reading.heavySpot}>
        {spots === null ? words.reading.unknown : placed(spots.heavyDeg, spots.plusMinusDeg)}
      </Spot>
      <Spot shape="light" name={words.reading.lightSpot}>
        {spots === null ? words.reading.unknown : placed(spots.lightDeg, spots.plusMinusDeg)}
      </Spot>
      <Spot shape="weight" name={words.reading.weights}>
        {weights.length === 0
          ? words.reading.noWeights
          : weights
              .map(
                (one) =>
                  `${formatKnownMass(one.massG, units)} · ${formatClockAndDeg(one.angleDeg)}`,
              )
              .join('; ')}
      </Spot>
      <Spot shape="left" name={words.reading.left}>
        {left}
      </Spot>
    </dl>
  );
}

function Spot(props: {
  readonly shape: LegendShape;
  readonly name: string;
  readonly children: string;
}) {
  return (
    <div className="spot">
      <dt>
        <ShapeSign shape={props.shape} />
        {props.name}
      </dt>
      <dd>{props.children}</dd>
    </div>
  );
}

function placed(angleDeg: number, plusMinusDeg: number): string {
  return `${formatClockAndDeg(angleDeg)} ${formatPlusMinusDeg(plusMinusDeg)}`;
}
