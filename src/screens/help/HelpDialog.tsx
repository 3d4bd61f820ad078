import { useEffect, useRef } from 'react';
import { Link } from 'wouter';

import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';
import { HelpCard } from './HelpCard.tsx';
import type { HelpTopic } from './helpTopic.ts';

export interface HelpDialogProps {
  readonly topic: HelpTopic;
  readonly onClose: () => void;
}

/** Help over the screen that it is about: nothing there is lost, a running sweep goes on. */
export default function HelpDialog({ topic, onClose }: HelpDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const closer = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
    closer.current?.focus();
  }, []);
  return (
    <dialog ref={dialog} className="help-dialog" aria-labelledby="help-title" onClose={onClose}>
      <h2 id="help-title">{words.help.topics[topic].name}</h2>
      <HelpCard topic={topic} />
      <div className="help-end">
        {topic !== 'sweep' && (
          <Link className="plain" href={places.help} onClick={onClose}>
            {words.help.all}
          </Link>
        )}
        <button ref={closer} type="button" className="main" onClick={() => dialog.current?.close()}>
          {words.common.close}
        </button>
      </div>
    </dialog>
  );
}
