import type { Notice } from '../../contract/notice.ts';
import type { SweepSource } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { SweepResult } from '../../contract/sweep.ts';
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
  readonly units: Units;
  /** Names of values that were assumed for this sweep. */
  readonly assumed: readonly string[];
  readonly onSampleAgain: () => void;
  readonly onCameraAgain: () => void;
  /** Opens the form with this film's setup; null when no film is at hand. */
  readonly onChangeSetup: (() => void) | null;
  readonly onAnother: () => void;
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

/** The next step first: again with the camera; a film can only be read again with another setup. */
function ReadActions(props: ReadScreenProps) {
  const { source, result, setup, onChangeSetup } = props;
  const refused = result.reading.status === 'refused';
  return (
    <div className="read-actions">
      {source === 'camera' && (
        <button type="button" className="main" onClick={props.onCameraAgain}>
          {words.reading.sweepAgain}
        </button>
      )}
      {source === 'sample' && (
        <button type="button" className="main" onClick={props.onSampleAgain}>
          {words.reading.readSampleAgain}
        </button>
      )}
      {source === 'file' && refused && (
        <button type="button" className="main" onClick={props.onAnother}>
          {words.reading.sweepAgain}
        </button>
      )}
      {source === 'file' && onChangeSetup !== null && (
        <button type="button" className="plain" onClick={onChangeSetup}>
          {words.reading.readFilmAgain}
        </button>
      )}
      <DownloadReading reading={result.reading} label={setup.label} />
      {!(source === 'file' && refused) && (
        <button type="button" className="plain" onClick={props.onAnother}>
          {words.reading.another}
        </button>
      )}
    </div>
  );
}
