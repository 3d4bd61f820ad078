import { Link } from 'wouter';

import type { WheelRecord } from '../../contract/logbook.ts';
import { NAMED_ROAD_SPEED_KMH, type Proof } from '../../job/proof.ts';
import type { SweepPair } from '../../job/sweepPair.ts';
import { CautionIcon } from '../parts/icons.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { ShapeSign } from '../parts/shapes.tsx';
import { NORMAL_95, readingSummary } from '../read/readingSummary.ts';
import { places } from '../shell/places.ts';
import {
  formatClockAndDeg,
  formatFigure,
  formatKnown,
  formatKnownMass,
  formatLength,
  formatMass,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { BeforeAfterTrace } from './BeforeAfterTrace.tsx';
import { LeftScale } from './LeftScale.tsx';

export interface ProofViewProps {
  readonly pair: SweepPair;
  readonly proof: Proof;
  readonly wheel: WheelRecord;
  readonly units: Units;
}

/** Verdict and what is left first; then what that means, before and after, and the way home. */
export function ProofView({ pair, proof, wheel, units }: ProofViewProps) {
  const { after } = pair;
  const { verdict } = proof;
  const summary = readingSummary(after.reading, after.setup);
  const left = formatMass(summary.amountG, units, summary.amountPlusMinusG);
  return (
    <div className="proof" data-verdict={verdict.verdict}>
      <section className="proof-say">
        <p className="answer-label">{wheel.label}</p>
        <ScreenTitle className="proof-verdict">{words.proof.verdicts[verdict.verdict]}</ScreenTitle>
        <p className="proof-left-word">{words.proof.left}</p>
        <p className="proof-left">
          <ShapeSign shape="left" />
          <span className="figure">{left.figure}</span>
          <span className="figure-unit"> {left.unit}</span>
          {left.plusMinus !== null && <span className="figure-spread"> ± {left.plusMinus}</span>}
        </p>
        <p className="instruction">{nextWords(verdict.verdict)}</p>
        {verdict.isClose && <p>{words.proof.close}</p>}
        <ProofActions pair={pair} proof={proof} wheel={wheel} />
      </section>
      <LeftScale pair={pair} proof={proof} units={units} />
      {verdict.causes.length > 0 && (
        <section className="warnings">
          <CautionIcon />
          <ul>
            {verdict.causes.map((cause) => (
              <li key={cause}>{words.proof.causes[cause]}</li>
            ))}
          </ul>
        </section>
      )}
      <BeforeAfterTrace pair={pair} units={units} />
      <ProofFacts pair={pair} proof={proof} units={units} />
      <section className="proof-refit">
        <h2>{words.proof.refitTitle}</h2>
        <ul>
          {words.proof.refit.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <p className="couple">{words.proof.couple}</p>
      </section>
    </div>
  );
}

function nextWords(verdict: Proof['verdict']['verdict']): string {
  if (verdict === 'pass') return words.proof.nextPass;
  return verdict === 'trim' ? words.proof.nextTrim : words.proof.nextCause;
}

function ProofActions({ pair, proof, wheel }: Omit<ProofViewProps, 'units'>) {
  const passed = proof.verdict.verdict === 'pass';
  const toWheel = (
    <Link className={passed ? 'main' : 'plain'} href={places.wheel(wheel.id)}>
      {words.proof.toWheel}
    </Link>
  );
  // What to do next comes first.
  return (
    <div className="read-actions">
      {passed && toWheel}
      <Link
        className={passed ? 'plain' : 'main'}
        href={places.weights(wheel.id, pair.after.id)}
        data-role="trim"
      >
        {words.proof.trim}
      </Link>
      {!passed && toWheel}
      <Link className="plain" href={places.sight(wheel.id)}>
        {words.proof.sweepAgain}
      </Link>
      <Link className="plain" href={places.reading(wheel.id, pair.after.id)} data-role="to-reading">
        {words.proof.toReading}
      </Link>
    </div>
  );
}

function ProofFacts({ pair, proof, units }: Omit<ProofViewProps, 'wheel'>) {
  const { after, added } = pair;
  const summary = readingSummary(after.reading, after.setup);
  const rise = `${
    formatLength(summary.riseMmPerG, units, NORMAL_95 * summary.riseStandardErrorMmPerG).text
  }`;
  const speed = formatKnown('speed', NAMED_ROAD_SPEED_KMH, units);
  return (
    <dl className="details-list">
      <div>
        <dt>{words.proof.force}</dt>
        <dd>
          {words.proof.forceText(formatFigure('force', proof.meaning.forceN, units).text, speed)}
        </dd>
      </div>
      <div>
        <dt>{words.proof.response}</dt>
        <dd>
          {after.reading.response.source === 'trial'
            ? words.proof.responseMeasured(rise)
            : words.proof.responseModel(rise)}
        </dd>
      </div>
      <div>
        <dt>{words.proof.added}</dt>
        <dd>
          {added.length === 0
            ? words.proof.addedNone
            : added
                .map(
                  (one) =>
                    `${formatKnownMass(one.massG, units)} · ${formatClockAndDeg(one.angleDeg)}`,
                )
                .join('; ')}
        </dd>
      </div>
    </dl>
  );
}
