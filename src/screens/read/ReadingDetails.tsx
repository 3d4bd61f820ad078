import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepTrace } from '../../contract/sweep.ts';
import { formatRoomDirection } from '../words/directions.ts';
import {
  formatLength,
  formatMass,
  formatMrad,
  formatNumber,
  formatSeconds,
} from '../words/numbers.ts';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { NORMAL_95, type ReadingSummary } from './readingSummary.ts';
import { StandLeanDrawing } from './StandLeanDrawing.tsx';

export interface ReadingDetailsProps {
  readonly reading: AcceptedReading;
  readonly trace: SweepTrace | null;
  readonly summary: ReadingSummary;
  readonly units: Units;
}

/** Stand lean, response and turn: what the figures rest on. */
export function ReadingDetails({ reading, trace, summary, units }: ReadingDetailsProps) {
  const { tilt, turn, response } = reading;
  const rise = formatLength(
    summary.riseMmPerG,
    units,
    NORMAL_95 * summary.riseStandardErrorMmPerG,
  ).text;
  const sense =
    turn.sense === 'clockwise' ? words.reading.clockwise : words.reading.counterClockwise;
  return (
    <section className="details" aria-labelledby="details-title">
      <h2 id="details-title">{words.reading.detailsTitle}</h2>
      <div className="details-lean">
        <StandLeanDrawing highAzimuthDeg={tilt.standHighAzimuthDeg} />
        <div>
          <h3>{words.reading.standLean}</h3>
          <p>
            {words.reading.standLeanText(
              formatMrad(tilt.standMrad),
              formatLength(summary.standRiseMm, units).text,
              formatRoomDirection(tilt.standHighAzimuthDeg),
            )}
          </p>
          <p>{words.reading.standLeanNote}</p>
        </div>
      </div>
      <dl className="details-list">
        <Detail name={words.reading.response}>
          {`${words.reading.responseText(rise)}, ${
            response.source === 'trial' ? words.reading.responseTrial : words.reading.responseModel
          }`}
        </Detail>
        <Detail name={words.reading.turn}>
          {`${words.reading.turnText(`${formatNumber(turn.coveredDeg, 0)}°`, sense)}${
            turn.closureDeg === null
              ? ''
              : `, ${words.reading.closure(`${formatNumber(Math.abs(turn.closureDeg), 1)}°`)}`
          }`}
        </Detail>
        {trace !== null && trace.rockingPeriodS !== null && (
          <Detail name={words.reading.rocking}>
            {words.reading.rockingText(formatSeconds(trace.rockingPeriodS))}
          </Detail>
        )}
        {trace !== null && Object.keys(trace.contributionsG).length > 0 && (
          <Detail name={words.reading.contributions}>{contributionsText(trace, units)}</Detail>
        )}
      </dl>
      <p className="details-note">{words.reading.plusMinusNote}</p>
    </section>
  );
}

function Detail({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** Largest first, as half widths of 95 % ranges like every other ± on the screen. */
function contributionsText(trace: SweepTrace, units: Units): string {
  return Object.entries(trace.contributionsG)
    .toSorted(([, a], [, b]) => b - a)
    .map(([name, sdG]) => `${name} ${formatMass(NORMAL_95 * sdG, units).text}`)
    .join(', ');
}
