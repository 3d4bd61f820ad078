import { Link } from 'wouter';

import { useShelf } from '../logbook/useShelf.ts';
import { CautionIcon } from '../parts/icons.tsx';
import { places } from '../shell/places.ts';
import { words } from '../words/words.ts';

/**
 * On the first screen after a crash: what was measured is not lost, and where it is. A sweep that was
 * stopped on purpose is in the logbook as well, without a word here.
 */
export function BrokenOffNotice() {
  const unfinished = useShelf('unfinished');
  if (unfinished.every(({ stoppedAt }) => stoppedAt !== undefined)) return null;
  return (
    <aside className="notice" role="status" data-role="broken-off">
      <CautionIcon />
      <div>
        <p className="notice-cause">{words.shed.brokenOff}</p>
        <Link className="plain" href={places.logbook}>
          {words.logbook.toLogbook}
        </Link>
      </div>
    </aside>
  );
}
