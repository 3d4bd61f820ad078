import type { ReactNode } from 'react';

import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { SweepTrace } from '../../contract/sweep.ts';
import { CautionIcon } from '../parts/icons.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import type { WeightPlan } from '../../job/weightPlan.ts';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { adviceFor } from './adviceFor.ts';
import { AmountScale } from './AmountScale.tsx';
import { EdgeTrace } from './EdgeTrace.tsx';
import { readingSummary } from './readingSummary.ts';
import { ReadingDetails } from './ReadingDetails.tsx';
import { SpotList } from './SpotList.tsx';
import { warningsFor } from './warningsFor.ts';
import { WheelFromAbove } from './WheelFromAbove.tsx';

export interface AcceptedReadingViewProps {
  readonly reading: AcceptedReading;
  readonly trace: SweepTrace | null;
  readonly setup: SweepSetup;
  /** What to stick on from the stock; null where it could not be worked out. */
  readonly plan: WeightPlan | null;
  readonly units: Units;
  readonly assumed: readonly string[];
  readonly actions: ReactNode;
  readonly notices: ReactNode;
}

/** Wheel on one side, answer on the other; how it was found lies below. */
export function AcceptedReadingView(props: AcceptedReadingViewProps) {
  const { reading, trace, setup, units, assumed } = props;
  const summary = readingSummary(reading, setup, props.plan);
  const advice = adviceFor(summary, setup.weightStepG, units);
  const warnings = warningsFor(reading, summary, setup, assumed, units);
  return (
    <div className="accepted">
      <section className="answer">
        <p className="answer-label">{setup.label ?? words.reading.unnamed}</p>
        <ScreenTitle className="answer-figure">
          {advice.before !== null && <small>{advice.before} </small>}
          <span className="figure">{advice.figure.figure}</span>
          <span className="figure-unit"> {advice.figure.unit}</span>
          {advice.figure.plusMinus !== null && (
            <span className="figure-spread"> ± {advice.figure.plusMinus}</span>
          )}
        </ScreenTitle>
        <p className="answer-where">{advice.where}</p>
        <p className="instruction">{advice.next}</p>
      </section>
      <section className="wheel">
        <WheelFromAbove summary={summary} setup={setup} units={units} />
      </section>
      <section className="answer-more">
        <AmountScale
          summary={summary}
          weightStepG={setup.weightStepG}
          units={units}
          figureText={advice.figure.text}
        />
        <SpotList summary={summary} units={units} />
        {props.actions}
      </section>
      {props.notices}
      {warnings.length > 0 && (
        <section className="warnings" aria-labelledby="warnings-title">
          <CautionIcon />
          <div>
            <h2 id="warnings-title">{words.reading.warningsTitle}</h2>
            <ul>
              {warnings.map((warning) => (
                <li key={warning}>{warning}</li>
              ))}
            </ul>
          </div>
        </section>
      )}
      {trace !== null && (
        <EdgeTrace trace={trace} reading={reading} summary={summary} units={units} />
      )}
      <ReadingDetails
        reading={reading}
        trace={trace}
        setup={setup}
        summary={summary}
        units={units}
      />
      <p className="couple">{words.reading.couple}</p>
    </div>
  );
}
