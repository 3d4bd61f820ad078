import { useState } from 'react';

import type { LogEntry, SourcedNumber, StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { wheelState, type AcceptedSweep } from '../../job/wheelState.ts';
import { WheelSign } from '../parts/WheelSign.tsx';
import { readingSummary } from '../read/readingSummary.ts';
import { WheelFromAbove } from '../read/WheelFromAbove.tsx';
import { useStand } from '../shell/useLogbook.ts';
import {
  formatClockAndDeg,
  formatKnown,
  formatKnownMass,
  formatMass,
  formatMoment,
  type Quantity,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { amountOf } from './amountOf.ts';

export interface WheelSheetProps {
  readonly wheel: WheelRecord;
  readonly entries: readonly LogEntry[];
  readonly units: Units;
}

/** One printed page a wheel; not on the screen. */
export function WheelSheet({ wheel, entries, units }: WheelSheetProps) {
  const [printedAt] = useState(() => new Date().toISOString());
  const { lastSweep, sweepBefore } = wheelState(entries, wheel);
  const log = words.logbook;
  // A check sweep's weights are drawn on the wheel as it was read before them.
  const isCheck = lastSweep?.setup.after !== undefined && sweepBefore !== null;
  const drawn = isCheck ? sweepBefore : lastSweep;
  const putOn = entries.flatMap((entry) =>
    entry.kind === 'weights' && drawn !== null && entry.at > drawn.at ? entry.added : [],
  );
  return (
    <article className="sheet" aria-hidden="true">
      <h1>
        {wheel.label || log.unnamed} · {log.printTitle}
      </h1>
      <p>{[wheel.place, wheel.tyre].filter(Boolean).join(' · ')}</p>
      <div className="sheet-top">
        {drawn === null ? (
          <WheelSign stage={wheel.stage} lightSpotDeg={null} />
        ) : (
          <WheelFromAbove
            summary={{
              ...readingSummary(drawn.reading, drawn.setup),
              weights: putOn.filter(({ massG }) => massG > 0),
            }}
            setup={drawn.setup}
            units={units}
          />
        )}
        <dl>
          <SweepLine name={log.before} sweep={sweepBefore} units={units} />
          <SweepLine name={log.after} sweep={lastSweep} units={units} />
          <div>
            <dt>{log.weightsOn}</dt>
            {putOn.length === 0 && <dd>{log.noWeightsOn}</dd>}
            {putOn.map(({ massG, angleDeg }, i) => (
              // oxlint-disable-next-line react/no-array-index-key -- a printed list never changes
              <dd key={i}>
                {formatKnownMass(massG, units)} · {formatClockAndDeg(angleDeg)}
              </dd>
            ))}
          </div>
        </dl>
      </div>
      <h2>{log.values}</h2>
      <ValueTable wheel={wheel} units={units} />
      <p>{words.reading.couple}</p>
      <p>
        {words.common.productName} · {formatMoment(printedAt)}
      </p>
    </article>
  );
}

/** What one sweep read, and when; nothing where there was none or it gave no figure. */
function SweepLine({
  name,
  sweep,
  units,
}: {
  readonly name: string;
  readonly sweep: AcceptedSweep | null;
  readonly units: Units;
}) {
  const amount = sweep && amountOf(sweep);
  if (!sweep || !amount) return null;
  return (
    <div>
      <dt>
        {name}, {formatMoment(sweep.at)}
      </dt>
      <dd>
        {words.logbook.sweepRead(
          formatMass(amount.amountG, units, amount.plusMinusG).text,
          formatClockAndDeg(amount.lightSpotDeg),
        )}
      </dd>
    </div>
  );
}

/** What the readings rest on: wheel, ball, stand and tablet, each with where it is from. */
function ValueTable({ wheel, units }: { readonly wheel: WheelRecord; readonly units: Units }) {
  const stand = useStand();
  const log = words.logbook;
  return (
    <table>
      <tbody>
        <Value name={log.mass} quantity="wheelMass" value={wheel.massKg} units={units} />
        <Value name={log.edgeRadius} quantity="length" value={wheel.edgeRadiusMm} units={units} />
        <Value
          name={log.weightRadius}
          quantity="length"
          value={wheel.rings[0]!.radiusMm}
          units={units}
        />
        <Value name={log.ball} quantity="length" value={wheel.ballDiameterMm} units={units} />
        <Value name={log.depth} quantity="length" value={wheel.pendulumDepthMm} units={units} />
        {stand?.ok && <StandRows stand={stand.value} units={units} />}
      </tbody>
    </table>
  );
}

/** Stand and tablet. */
function StandRows({ stand, units }: { readonly stand: StandRecord; readonly units: Units }) {
  const { lineAbovePlateMm, plateMaterial, camera } = stand;
  return (
    <>
      {plateMaterial !== null && (
        <tr>
          <th scope="row">{words.bench.plate}</th>
          <td>{words.bench.materials[plateMaterial]}</td>
          <td>{words.common.origins.entered}</td>
        </tr>
      )}
      {lineAbovePlateMm && (
        <Value name={words.stand.line} quantity="length" value={lineAbovePlateMm} units={units} />
      )}
      <Value
        name={words.stand.downTilt}
        quantity="angle"
        value={camera.downTiltDeg}
        units={units}
      />
    </>
  );
}

function Value({
  name,
  quantity,
  value,
  units,
}: {
  readonly name: string;
  readonly quantity: Quantity;
  readonly value: SourcedNumber;
  readonly units: Units;
}) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{formatKnown(quantity, value.value, units)}</td>
      <td>{words.common.origins[value.origin]}</td>
    </tr>
  );
}
