import { Link } from 'wouter';

import type { Notice } from '../../contract/notice.ts';
import type { SweepSource } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { SweepResult } from '../../contract/sweep.ts';
import type { WeightPlan } from '../../job/weightPlan.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import type { NoticeStreak } from '../state/refusalAdvice.ts';
import type { Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { AcceptedReadingView } from './AcceptedReadingView.tsx';
import { DownloadReading } from './DownloadReading.tsx';
import { RefusedReadingView } from './RefusedReadingView.tsx';
import './read.css';

export interface ReadScreenProps {
  readonly source: SweepSource;
  readonly setup: SweepSetup;
  readonly result: SweepResult;
  /** Set when the sweep ended otherwise than by itself. */
  readonly notice: Notice | null;
  readonly streak: NoticeStreak;
  /** What to stick on from the stock; null where it could not be worked out. */
  readonly plan: WeightPlan | null;
  readonly units: Units;
  /** Paths of values in the setup that were assumed for this sweep. */
  readonly assumed: readonly string[];
  /** Where the job goes on from here. */
  readonly next: {
    readonly main: string;
    readonly lead: string;
    readonly byEye: string;
    readonly wheel: string;
  };
  readonly onAgain: () => void;
  /** Opens the form with this film's setup; null when no film is at hand. */
  readonly onChangeSetup: (() => void) | null;
}

export function ReadScreen(props: ReadScreenProps) {
  const { result, setup, notice, streak, units, assumed } = props;
  const actions = <ReadActions {...props} />;
  const notices = notice !== null && <NoticePanel role="notice" notice={notice} streak={streak} />;
  return result.reading.status === 'ok' ? (
    <AcceptedReadingView
      reading={result.reading}
      trace={result.trace}
      setup={setup}
      plan={props.plan}
      units={units}
      assumed={assumed}
      actions={actions}
      notices={notices}
    />
  ) : (
    <RefusedReadingView
      reading={result.reading}
      streak={streak}
      actions={actions}
      notices={notices}
    />
  );
}

/** The next step first: weights or proof after a reading, another sweep after a refusal. */
function ReadActions(props: ReadScreenProps) {
  const { source, result, setup, next, onChangeSetup } = props;
  const refused = result.reading.status === 'refused';
  // The wheel still lies before the camera, and the screen says what goes where: no need to choose.
  const canLead =
    source === 'camera' && setup.after === undefined && (props.plan?.places.length ?? 0) > 0;
  return (
    <div className="read-actions">
      {!refused && canLead && (
        <Link className="main" href={next.lead} data-role="lead">
          {words.weights.lead}
        </Link>
      )}
      {!refused && (
        <Link className={canLead ? 'plain' : 'main'} href={next.main} data-role="next-step">
          {setup.after === undefined ? words.reading.toWeights : words.reading.toProof}
        </Link>
      )}
      {refused && (
        <button type="button" className="main" onClick={props.onAgain}>
          {source === 'sample' ? words.reading.readSampleAgain : words.reading.sweepAgain}
        </button>
      )}
      {!refused && (
        <Link className="plain" href={next.byEye}>
          {words.reading.toByEye}
        </Link>
      )}
      {source === 'file' && onChangeSetup !== null && (
        <button type="button" className="plain" onClick={onChangeSetup}>
          {words.reading.readFilmAgain}
        </button>
      )}
      <DownloadReading reading={result.reading} label={setup.label} />
      <Link className="plain" href={next.wheel}>
        {words.reading.toWheel}
      </Link>
    </div>
  );
}
