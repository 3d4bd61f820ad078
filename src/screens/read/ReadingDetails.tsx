import type { FollowedEdge } from '../../contract/followedEdge.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { SweepTrace } from '../../contract/sweep.ts';
import { levellingAdvice } from '../../job/standLevelling.ts';
import { useStand } from '../shell/useLogbook.ts';
import { formatRoomDirection } from '../words/directions.ts';
import {
  formatKnown,
  formatLength,
  formatMass,
  formatMrad,
  formatNumber,
  formatSeconds,
} from '../words/numbers.ts';
import type { Units } from '../words/numbers.ts';
import { signsText } from '../words/signsText.ts';
import { words } from '../words/words.ts';
import { NORMAL_95, type ReadingSummary } from './readingSummary.ts';
import { StandLeanDrawing } from './StandLeanDrawing.tsx';

export interface ReadingDetailsProps {
  readonly reading: AcceptedReading;
  readonly trace: SweepTrace | null;
  readonly setup: SweepSetup;
  readonly summary: ReadingSummary;
  readonly units: Units;
}

/** Stand lean, response and turn: what the figures rest on. */
export function ReadingDetails({ reading, trace, setup, summary, units }: ReadingDetailsProps) {
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
        <StandLeanDrawing highAzimuthDeg={summary.isStandTold ? tilt.standHighAzimuthDeg : null} />
        <div>
          <h3>{words.reading.standLean}</h3>
          <p>{leanText(reading, summary, units)}</p>
          <p>{words.reading.standLeanNote}</p>
          <Levelling reading={reading} setup={setup} />
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
        {reading.edge !== undefined && (
          <Detail name={words.reading.edge}>{edgeText(reading.edge, units)}</Detail>
        )}
        <Detail name={words.reading.signs}>{signsText(setup.sight.tested)}</Detail>
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

/** What was followed and how good it is. */
function edgeText(edge: FollowedEdge, units: Units): string {
  const { kind, seenShare, scatterMm, bandOffSquareMm } = edge;
  const text = words.reading.edgeText(
    words.reading.edgeKinds[kind],
    `${formatNumber(100 * seenShare, 0)} %`,
    lengthAlone(scatterMm, units),
  );
  if (kind !== 'band') return text;
  const told =
    typeof bandOffSquareMm === 'number'
      ? words.reading.bandTold(lengthAlone(bandOffSquareMm, units))
      : words.reading.bandUntold;
  return `${text}; ${told}`;
}

/** Told to a tenth of a millimetre: it is a scatter itself, or a bound. */
function lengthAlone(lengthMm: number, units: Units): string {
  return formatKnown('length', Math.round(10 * lengthMm) / 10, units);
}

function leanText({ tilt }: AcceptedReading, summary: ReadingSummary, units: Units): string {
  const { standRiseMm, standPlusMinusMm, isStandTold } = summary;
  const sdMrad = tilt.standMradStandardError;
  const lean = formatMrad(tilt.standMrad, sdMrad && NORMAL_95 * sdMrad);
  const rise = formatLength(standRiseMm, units, standPlusMinusMm ?? undefined).text;
  return isStandTold
    ? words.reading.standLeanText(lean, rise, formatRoomDirection(tilt.standHighAzimuthDeg))
    : words.reading.standLeanUntold(lean, rise);
}

/** Which screw to turn and how far, as far as the lean's own ± allows. */
function Levelling({
  reading,
  setup,
}: {
  readonly reading: AcceptedReading;
  readonly setup: SweepSetup;
}) {
  const stand = useStand();
  const screws = stand?.ok ? stand.value.screws : null;
  const advice = levellingAdvice(reading.tilt, setup.stand, screws);
  if (advice === null) return null;
  if (advice.kind === 'unsure') return <p>{words.reading.screwsUnsure}</p>;
  const turns = advice.screws.map(({ screw, clockwiseTurns }) =>
    words.reading.screwTurn(screw, formatNumber(Math.abs(clockwiseTurns), 2), clockwiseTurns > 0),
  );
  return <p>{words.reading.screwTurns(turns.join(', '))}</p>;
}

function Detail({ name, children }: { readonly name: string; readonly children: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** Less than this adds nothing to a ± that is shown to whole grams or tenths, g. */
const LEAST_CONTRIBUTION_G = 0.05;

/** Largest first, as half widths of 95 % ranges like every other ± on the screen. */
function contributionsText(trace: SweepTrace, units: Units): string {
  return Object.entries(trace.contributionsG)
    .map(([name, sdG]) => ({ name, halfG: NORMAL_95 * sdG }))
    .filter(({ halfG }) => halfG >= LEAST_CONTRIBUTION_G)
    .toSorted((a, b) => b.halfG - a.halfG)
    .map(({ name, halfG }) => `${contributionName(name)} ${formatMass(halfG, units).text}`)
    .join(', ');
}

/** Traces of other versions may name a part that this one has no word for. */
function contributionName(name: string): string {
  return words.reading.contributionNames[name] ?? name;
}
