import { Suspense, lazy, useState } from 'react';
import { Link } from 'wouter';

import { HelpIcon } from '../parts/icons.tsx';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';
import { helpTopicOf } from './helpTopic.ts';

/** Fetched at the first touch: the first glance needs no help. */
const HelpDialog = lazy(() => import('./HelpDialog.tsx'));

/** One touch to the help for the screen at hand; to all of it where there is none of its own. */
export function HelpButton({ path }: { readonly path: string }) {
  const [isOpen, setOpen] = useState(false);
  const topic = helpTopicOf(path);
  const face = (
    <>
      <HelpIcon />
      <span className="switch-word">{words.common.help}</span>
    </>
  );
  if (topic === null) {
    return (
      <Link className="switch" href={places.help}>
        {face}
      </Link>
    );
  }
  return (
    <>
      <button
        type="button"
        className="switch"
        aria-haspopup="dialog"
        data-role="help"
        onClick={() => setOpen(true)}
      >
        {face}
      </button>
      {isOpen && (
        <Suspense fallback={null}>
          <HelpDialog topic={topic} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  );
}
