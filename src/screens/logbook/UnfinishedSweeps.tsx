import type { FilmRecord } from '../../contract/filmShelf.ts';
import type { OnOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { formatMoment, formatTurned } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { formatBytes } from './formatBytes.ts';
import { useTakeUp } from './useTakeUp.ts';
import { useShelf } from './useShelf.ts';

/** Sweeps that broke off before their reading: what was measured and recorded of them can be read. */
export function UnfinishedSweeps({ onOffer }: { readonly onOffer: OnOffer }) {
  const { shelf } = useApp();
  const unfinished = useShelf('unfinished');
  const takeUp = useTakeUp();
  const remove = async (filmId: string) => {
    const removed = await shelf.remove(filmId);
    if (!removed.ok) return;
    const undo = () => {
      onOffer(null);
      void shelf.restore(filmId);
    };
    onOffer({ text: words.logbook.sweepDeleted, undo });
  };
  if (unfinished.length === 0) return null;
  return (
    <section className="notice" data-role="unfinished-sweeps">
      <div>
        <h2>{words.logbook.unfinishedTitle}</h2>
        <ul>
          {unfinished.map((film) => (
            <li key={film.id} className="logbook-row">
              <span>
                {whatIsLeft(film)}
                {film.setup.label ? ` · ${film.setup.label}` : ''}
              </span>
              <button type="button" className="main" onClick={() => void takeUp(film)}>
                {words.logbook.readFilm}
              </button>
              <button type="button" className="plain" onClick={() => void remove(film.id)}>
                {words.logbook.deleteFilm}
              </button>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

function whatIsLeft({ at, notes, pieceCount, sizeBytes }: FilmRecord): string {
  return words.logbook.unfinished(
    formatMoment(at),
    notes ? formatTurned(notes.coveredDeg) : null,
    pieceCount > 0 ? formatBytes(sizeBytes) : null,
  );
}
