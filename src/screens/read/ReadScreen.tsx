import type { SessionState } from '../../contract/session.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import type { NoticeStreak } from '../state/refusalAdvice.ts';
import type { MassUnit } from '../words/numbers.ts';
import { readingWords } from '../words/readingWords.ts';
import { AcceptedReadingView } from './AcceptedReadingView.tsx';
import { DownloadReading } from './DownloadReading.tsx';
import { RefusedReadingView } from './RefusedReadingView.tsx';
import './read.css';

export type ReadState = Extract<SessionState, { phase: 'read' }>;

export interface ReadScreenProps {
  readonly state: ReadState;
  readonly streak: NoticeStreak;
  readonly unit: MassUnit;
  /** Names of values that were assumed for this sweep. */
  readonly assumed: readonly string[];
  readonly onSampleAgain: () => void;
  readonly onCameraAgain: () => void;
  /** Opens the form with this film's setup; null when no film is at hand. */
  readonly onChangeSetup: (() => void) | null;
  readonly onAnother: () => void;
}

export function ReadScreen(props: ReadScreenProps) {
  const { state, streak, unit, assumed } = props;
  const { result, setup, notice } = state;
  const actions = <ReadActions {...props} />;
  const notices = notice !== null && <NoticePanel role="notice" notice={notice} streak={streak} />;
  return result.reading.status === 'ok' ? (
    <AcceptedReadingView
      reading={result.reading}
      trace={result.trace}
      setup={setup}
      unit={unit}
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
  const { state, onChangeSetup } = props;
  const refused = state.result.reading.status === 'refused';
  return (
    <div className="read-actions">
      {state.source === 'camera' && (
        <button type="button" className="main" onClick={props.onCameraAgain}>
          {readingWords.sweepAgain}
        </button>
      )}
      {state.source === 'sample' && (
        <button type="button" className="main" onClick={props.onSampleAgain}>
          {readingWords.readSampleAgain}
        </button>
      )}
      {state.source === 'file' && refused && (
        <button type="button" className="main" onClick={props.onAnother}>
          {readingWords.sweepAgain}
        </button>
      )}
      {state.source === 'file' && onChangeSetup !== null && (
        <button type="button" className="plain" onClick={onChangeSetup}>
          {readingWords.readFilmAgain}
        </button>
      )}
      <DownloadReading reading={state.result.reading} label={state.setup.label} />
      {!(state.source === 'file' && refused) && (
        <button type="button" className="plain" onClick={props.onAnother}>
          {readingWords.another}
        </button>
      )}
    </div>
  );
}
