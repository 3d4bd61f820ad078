import { Link } from 'wouter';

import type { StandRecord } from '../../contract/logbook.ts';
import { deadBandFromFriction, HARD_SMOOTH_ROLLING_SHARE } from '../../balance/deadBand.ts';
import { checkPlate } from '../../balance/plateCheck.ts';
import { PLATE_MATERIALS } from '../../balance/plateMaterials.ts';
import { GRAMS_PER_OUNCE } from '../../quantities/units.ts';
import { ballsFor, behaviourOf, withBall } from '../../job/wheelOnBall.ts';
import { places } from '../shell/places.ts';
import { formatKnownMass, formatLength, formatNumber, formatSeconds } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { BallTiles } from './BallTiles.tsx';
import type { WheelPartProps } from './WheelFields.tsx';

export interface BallFindingsProps extends WheelPartProps {
  readonly stand: StandRecord;
}

/** Which ball to take, and what the one in use does to the wheel and the plate. */
export function BallFindings({ wheel, stand, units, edit }: BallFindingsProps) {
  const { bench } = words;
  const balls = ballsFor(wheel, stand);
  const behaviour = behaviourOf(wheel);
  const inUse = balls.ok
    ? balls.value.ranked.find(({ ballDiameterMm }) => ballDiameterMm === wheel.ballDiameterMm.value)
    : undefined;
  const finding = inUse?.finding ?? 'through-bore';
  return (
    <section className="findings" aria-labelledby="findings-title">
      <h2 id="findings-title" className="unseen">
        {bench.follows}
      </h2>
      <p className="finding-words" data-finding={finding} role="status">
        {bench.findingHelp[finding]}
      </p>
      {balls.ok && (
        <BallTiles
          choice={balls.value}
          inUseMm={wheel.ballDiameterMm.value}
          units={units}
          onBall={(ballDiameterMm) => {
            const onHand = stand.ballDiametersMm.find(({ value }) => value === ballDiameterMm);
            const ball = onHand ?? { value: ballDiameterMm, origin: 'entered' as const };
            edit.keepIfItStands(withBall(wheel, ball));
          }}
        />
      )}
      <dl className="finding-list">
        {behaviour.ok && (
          <>
            <Finding name={units === 'metric' ? bench.rise : bench.riseOz}>
              {riseText(behaviour.value.risePerGramMm, units)}
            </Finding>
            <Finding name={bench.period}>{formatSeconds(behaviour.value.rockingPeriodS)}</Finding>
            <Finding name={bench.slope}>
              {bench.slopeText(formatNumber(behaviour.value.slopeAmplification, 1))}
            </Finding>
          </>
        )}
        <Finding name={bench.plate}>
          {plateText(wheel, stand) ?? (
            <Link className="finding-link" href={places.stand}>
              {bench.plateUnknown}
            </Link>
          )}
        </Finding>
        <Finding name={bench.band}>{bandText(wheel, units)}</Finding>
      </dl>
    </section>
  );
}

function Finding({
  name,
  children,
}: {
  readonly name: string;
  readonly children: React.ReactNode;
}) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function riseText(risePerGramMm: number, units: WheelPartProps['units']): string {
  // Per gram to a person who thinks in grams, per quarter ounce to one who thinks in ounces.
  const weightG = units === 'metric' ? 1 : GRAMS_PER_OUNCE / 4;
  return formatLength(risePerGramMm * weightG, units).text;
}

function plateText(wheel: WheelPartProps['wheel'], stand: StandRecord): string | null {
  const { bench } = words;
  if (stand.plateMaterial === null) return null;
  const check = checkPlate({
    massKg: wheel.massKg.value,
    ballDiameterMm: wheel.ballDiameterMm.value,
    plate: PLATE_MATERIALS[stand.plateMaterial],
  });
  if (!check.ok) return null;
  return `${bench.materials[stand.plateMaterial]}: ${bench.plateFindings[check.value.finding]}`;
}

/** At a hard plate's most rolling friction. */
function bandText(wheel: WheelPartProps['wheel'], units: WheelPartProps['units']): string {
  const band = deadBandFromFriction({
    massKg: wheel.massKg.value,
    ballDiameterMm: wheel.ballDiameterMm.value,
    rollingShare: HARD_SMOOTH_ROLLING_SHARE[1],
    weightRadiusMm: wheel.rings[0]!.radiusMm.value,
  });
  return band.ok ? words.bench.bandText(formatKnownMass(band.value.deadBandG, units)) : '';
}
