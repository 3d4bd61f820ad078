import { ProgressLine } from '../parts/ProgressLine.tsx';
import type { OnOffer } from '../parts/UndoBar.tsx';
import { words } from '../words/words.ts';
import { useArchive, type ArchiveState } from './useArchive.ts';

/** The logbook to a file and back. */
export function ArchivePanel({ onOffer }: { readonly onOffer: OnOffer }) {
  const { state, fraction, save, open, stop } = useArchive(onOffer);
  const log = words.logbook;
  const isBringingIn = state?.kind === 'bringing-in';
  return (
    <section className="logbook-file">
      <h2>{log.fileTitle}</h2>
      <div className="logbook-buttons">
        <button
          type="button"
          className="main"
          data-role="save-logbook"
          onClick={() => void save('records')}
        >
          {log.save}
        </button>
        <button
          type="button"
          className="plain"
          data-role="save-with-films"
          onClick={() => void save('records-and-films')}
        >
          {log.saveWithFilms}
        </button>
        <button
          type="button"
          className="plain"
          data-role="save-table"
          onClick={() => void save('table')}
        >
          {log.saveTable}
        </button>
        <BringInButton isOff={isBringingIn} onFile={(file) => void open(file)} />
      </div>
      {isBringingIn && (
        <div className="logbook-bringing">
          <ProgressLine name={log.bringingIn} fraction={fraction} />
          <button type="button" className="plain" data-role="stop-bringing-in" onClick={stop}>
            {log.stopBringingIn}
          </button>
        </div>
      )}
      <p className="logbook-rule">{log.mergeRule}</p>
      <div role="status" data-role="archive-said" data-kind={state?.kind}>
        {state !== null && sentences(state).map((text) => <p key={text}>{text}</p>)}
      </div>
    </section>
  );
}

interface BringInButtonProps {
  readonly isOff: boolean;
  readonly onFile: (file: File) => void;
}

function BringInButton({ isOff, onFile }: BringInButtonProps) {
  return (
    <label className="plain file-button logbook-open">
      {words.logbook.bringIn}
      <input
        type="file"
        accept=".zip,application/zip"
        data-role="bring-in"
        disabled={isOff}
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          // The same file chosen again is a choice as well.
          currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}

function sentences(state: ArchiveState): string[] {
  const log = words.logbook;
  switch (state.kind) {
    case 'working':
      return [log.working];
    // The bar beside it says the rest.
    case 'bringing-in':
      return [];
    case 'stopped':
      return [log.stopped];
    case 'undone':
      return [log.bringingUndone];
    case 'save-failed':
      return [log.saveFailed];
    case 'save-too-large':
      return [log.saveTooLarge];
    case 'refused':
      return [log.archiveTroubles[state.code], ...(state.where === null ? [] : [state.where])];
    case 'merged': {
      const { merge, films } = state;
      return [
        log.mergeDone(merge.newWheels + merge.newerWheels, merge.newEntries, films),
        ...(merge.sameRecords > 0 ? [log.mergeSame(merge.sameRecords)] : []),
        ...(merge.doubledEntries > 0 ? [log.mergeDoubled(merge.doubledEntries)] : []),
        ...(merge.keptOwnStand ? [log.mergeOwnStand] : []),
      ];
    }
  }
}
