import { useState, type CSSProperties, type ReactNode } from 'react';

import type { Notice } from '../../contract/notice.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { useApp } from '../shell/appContext.ts';
import type { InstructionTone } from './instructionFor.ts';
import { PictureView } from './PictureView.tsx';
import './sweep.css';

export interface LiveFrameProps {
  /** What is largest: the picture while it is aimed, the ring in a sweep, the figure in leading. */
  readonly mode: 'aim' | 'sweep' | 'lead';
  readonly title: string;
  readonly say: string;
  /** Told to those who hear the screen instead of a line that changes many times a second. */
  readonly told?: string | null;
  readonly tone: InstructionTone;
  /** Told below the line, where the line alone would leave one at a loss. */
  readonly cause?: string | null;
  readonly notice: Notice | null;
  /** The camera's stream; null for a film. */
  readonly stream: MediaStream | null;
  readonly progress: SweepProgress | null;
  readonly overPicture?: ReactNode;
  /** Names the kind of source, for the style sheet and for tests. */
  readonly source: string;
  readonly children: ReactNode;
}

/** Width over height of the picture before the first one has come. */
const USUAL_SHAPE = 16 / 9;

/** The common frame of all that is done before a running picture: one line to read, then the rest. */
export function LiveFrame(props: LiveFrameProps) {
  const { session, streak } = useApp();
  const [shape, setShape] = useState(USUAL_SHAPE);
  const { mode, say, told = null, tone, cause = null, notice } = props;
  return (
    <div
      className="live"
      data-mode={mode}
      data-source={props.source}
      style={{ '--shape': shape } as CSSProperties}
    >
      <div className="live-say" data-tone={tone}>
        <ScreenTitle className="unseen">{props.title}</ScreenTitle>
        {told !== null && (
          <p className="unseen" role="status">
            {told}
          </p>
        )}
        <p
          className="instruction"
          {...(told === null ? { role: 'status' } : { 'aria-hidden': true })}
        >
          {say}
        </p>
        {cause !== null && <p className="live-cause">{cause}</p>}
      </div>
      {notice !== null && (
        <div className="live-notice">
          <NoticePanel role="notice" notice={notice} streak={streak} />
        </div>
      )}
      <PictureView
        session={session}
        stream={props.stream}
        isMeasuring={props.progress !== null}
        onShape={setShape}
      >
        {props.overPicture}
      </PictureView>
      {props.children}
    </div>
  );
}
