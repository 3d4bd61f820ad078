import { useState, type DragEvent } from 'react';

import type { Notice } from '../../contract/notice.ts';
import { NoticePanel } from '../parts/NoticePanel.tsx';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import type { NoticeStreak } from '../state/refusalAdvice.ts';
import { words } from '../words/words.ts';
import { Cautions } from './Cautions.tsx';
import { Choices } from './Choices.tsx';
import { StandFromTheSide } from './StandFromTheSide.tsx';
import './start.css';

export interface StartScreenProps {
  readonly problem: Notice | null;
  readonly streak: NoticeStreak;
  readonly cautionsSeen: boolean;
  readonly onCautionsSeen: () => void;
  readonly onSample: () => void;
  readonly onFiles: (files: readonly File[]) => void;
  readonly onCamera: () => void;
  /** Opens the form for the film that was chosen last; null when there is none. */
  readonly onEnterSetup: (() => void) | null;
}

export function StartScreen(props: StartScreenProps) {
  const { problem, streak, cautionsSeen, onFiles, onEnterSetup } = props;
  const [dragging, setDragging] = useState(false);
  const [cautionsOpen, setCautionsOpen] = useState(!cautionsSeen);

  const drop = (event: DragEvent) => {
    event.preventDefault();
    setDragging(false);
    const files = [...event.dataTransfer.files];
    if (files.length > 0) onFiles(files);
  };
  const closeCautions = () => {
    setCautionsOpen(false);
    props.onCautionsSeen();
  };
  const offersForm = problem !== null && onEnterSetup !== null && problem.code.startsWith('setup-');

  return (
    <div
      className="start"
      data-dragging={dragging}
      onDragOver={(event) => {
        event.preventDefault();
        setDragging(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setDragging(false);
      }}
      onDrop={drop}
    >
      <div className="start-title">
        <ScreenTitle>{words.start.title}</ScreenTitle>
        <p>{words.start.lead}</p>
      </div>
      {problem !== null && (
        <div className="start-problem">
          <NoticePanel role="problem" notice={problem} streak={streak}>
            {offersForm && (
              <button type="button" className="plain" onClick={onEnterSetup}>
                {words.start.enterSetup}
              </button>
            )}
          </NoticePanel>
        </div>
      )}
      <Choices onSample={props.onSample} onFiles={onFiles} onCamera={props.onCamera} />
      <div className="start-side">
        {cautionsOpen ? (
          <Cautions onUnderstood={closeCautions} />
        ) : (
          <>
            <StandFromTheSide />
            <button type="button" className="plain" onClick={() => setCautionsOpen(true)}>
              {words.start.cautionsAgain}
            </button>
          </>
        )}
      </div>
      {dragging && <p className="start-drop">{words.start.dropHere}</p>}
    </div>
  );
}
