import { Link } from 'wouter';

import type { LogEntry, WheelRecord } from '../../contract/logbook.ts';
import { isAcceptedSweep } from '../../job/wheelState.ts';
import { UndoIcon } from '../parts/icons.tsx';
import { places } from '../shell/places.ts';
import { formatMoment, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { entryText, type EntryText } from './entryText.ts';

export interface HistoryProps {
  readonly entries: readonly LogEntry[];
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly onTakeBack: (entry: LogEntry, name: string) => void;
}

/** All that was done to the wheel, the latest first; what was entered by hand can be taken back. */
export function History({ entries, wheel, units, onTakeBack }: HistoryProps) {
  return (
    <section className="history" aria-labelledby="history-title">
      <h2 id="history-title">{words.job.history}</h2>
      {entries.length === 0 && <p className="history-none">{words.job.nothingDone}</p>}
      <ul>
        {entries.toReversed().map((entry) => {
          const text = entryText(entry, units);
          return (
            <li key={entry.id} className="history-row">
              <EntryWords entry={entry} wheelId={wheel.id} text={text} />
              {entry.kind !== 'sweep' && (
                <button
                  type="button"
                  className="history-back"
                  aria-label={`${words.job.takeBack}: ${text.name}, ${text.what}`}
                  onClick={() => onTakeBack(entry, text.name)}
                >
                  <UndoIcon />
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function EntryWords(props: {
  readonly entry: LogEntry;
  readonly wheelId: string;
  readonly text: EntryText;
}) {
  const { entry, wheelId, text } = props;
  const inside = (
    <>
      <span className="history-name">{text.name}</span>
      <span className="history-what">{text.what}</span>
      <time dateTime={entry.at}>{formatMoment(entry.at)}</time>
    </>
  );
  if (entry.kind !== 'sweep') return <div className="history-words">{inside}</div>;
  const isCheck = isAcceptedSweep(entry) && entry.setup.after !== undefined;
  const href = isCheck ? places.proof(wheelId, entry.id) : places.reading(wheelId, entry.id);
  return (
    <Link className="history-words" href={href}>
      {inside}
    </Link>
  );
}
