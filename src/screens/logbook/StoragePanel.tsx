import { words } from '../words/words.ts';
import { formatBytes } from './formatBytes.ts';
import { useShelf } from './useShelf.ts';
import { useStorage } from './useStorage.ts';

/** How much is kept, how much fits, and what the browser promises. */
export function StoragePanel() {
  const { usedBytes, quotaBytes, reserveBytes, persisted, unreadableCount, heldCount } =
    useStorage();
  const films = useShelf('films');
  const log = words.logbook;
  const filmBytes = films.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0);
  return (
    <section className="logbook-storage">
      <h2>{log.storageTitle}</h2>
      {usedBytes !== null && quotaBytes !== null && (
        <p>
          {log.storageUse(
            formatBytes(Math.max(usedBytes - reserveBytes, 0)),
            formatBytes(quotaBytes - usedBytes),
          )}
        </p>
      )}
      {reserveBytes > 0 && <p>{log.reserveUse(formatBytes(reserveBytes))}</p>}
      {films.length > 0 && <p>{log.filmsUse(films.length, formatBytes(filmBytes))}</p>}
      <p>{persisted ? log.persisted : log.notPersisted}</p>
      {heldCount > 0 && <p>{log.held(heldCount)}</p>}
      {unreadableCount > 0 && <p>{log.unreadable(unreadableCount)}</p>}
    </section>
  );
}
