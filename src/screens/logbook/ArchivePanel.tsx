import { useRef, useState } from 'react';

import { ProgressLine } from '../parts/ProgressLine.tsx';
import type { OnOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';
import { bringIn, savedLogbook, savedTable, type BringingEnd } from './archiveSteps.ts';

type Said =
  | {
      readonly kind: 'working' | 'bringing-in' | 'undone' | 'save-failed' | 'save-too-large';
    }
  | BringingEnd;

/** The logbook to a file and back. */
export function ArchivePanel({ onOffer }: { readonly onOffer: OnOffer }) {
  const { logbook, shelf } = useApp();
  const [said, setSaid] = useState<Said | null>(null);
  const [fraction, setFraction] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const stopping = useRef<AbortController | null>(null);
  const undoable = useRef<(() => Promise<boolean>) | null>(null);
  const log = words.logbook;
  const save = async (make: () => Promise<File | null>) => {
    setSaid({ kind: 'working' });
    try {
      const file = await make();
      if (file !== null) download(file);
      setSaid(file === null ? { kind: 'save-failed' } : null);
    } catch (error) {
      setSaid({ kind: error instanceof RangeError ? 'save-too-large' : 'save-failed' });
    }
  };
  const open = async (file: File | undefined) => {
    if (!file) return;
    const stopped = new AbortController();
    stopping.current = stopped;
    setFraction(0);
    setSaid({ kind: 'bringing-in' });
    onOffer(null);
    const end = await bringIn(file, logbook, shelf, { told: setFraction, stop: stopped.signal });
    setSaid(end);
    // One that brought nothing leaves the one before it to be undone.
    if (end.kind === 'merged' && end.undo !== null) undoable.current = end.undo;
    if (undoable.current !== null) offerUndo(undoable.current);
    if (input.current) input.current.value = '';
  };
  const offerUndo = (undo: () => Promise<boolean>) => {
    const undoNow = async () => {
      onOffer(null);
      setSaid({ kind: 'working' });
      const isUndone = await undo();
      setSaid({ kind: isUndone ? 'undone' : 'save-failed' });
      if (isUndone) undoable.current = null;
      else offerUndo(undo);
    };
    onOffer({ text: log.broughtIn, undo: () => void undoNow() });
  };
  return (
    <section className="logbook-file">
      <h2>{log.fileTitle}</h2>
      <div className="logbook-buttons">
        <button
          type="button"
          className="main"
          data-role="save-logbook"
          onClick={() => void save(() => savedLogbook(logbook, null))}
        >
          {log.save}
        </button>
        <button
          type="button"
          className="plain"
          data-role="save-with-films"
          onClick={() => void save(() => savedLogbook(logbook, shelf))}
        >
          {log.saveWithFilms}
        </button>
        <button
          type="button"
          className="plain"
          data-role="save-table"
          onClick={() => void save(() => savedTable(logbook))}
        >
          {log.saveTable}
        </button>
        <label className="plain file-button logbook-open">
          {log.bringIn}
          <input
            ref={input}
            type="file"
            accept=".zip,application/zip"
            data-role="bring-in"
            disabled={said?.kind === 'bringing-in'}
            onChange={(event) => void open(event.currentTarget.files?.[0])}
          />
        </label>
      </div>
      {said?.kind === 'bringing-in' && (
        <div className="logbook-bringing">
          <ProgressLine name={log.bringingIn} fraction={fraction} />
          <button
            type="button"
            className="plain"
            data-role="stop-bringing-in"
            onClick={() => stopping.current?.abort()}
          >
            {log.stopBringingIn}
          </button>
        </div>
      )}
      <p className="logbook-rule">{log.mergeRule}</p>
      <div role="status" data-role="archive-said" data-kind={said?.kind}>
        {said !== null && sentences(said).map((text) => <p key={text}>{text}</p>)}
      </div>
    </section>
  );
}

function sentences(said: Said): string[] {
  const log = words.logbook;
  switch (said.kind) {
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
      return [log.archiveTroubles[said.code], ...(said.where === null ? [] : [said.where])];
    case 'merged': {
      const { merge, films } = said;
      return [
        log.mergeDone(merge.newWheels + merge.newerWheels, merge.newEntries, films),
        ...(merge.sameRecords > 0 ? [log.mergeSame(merge.sameRecords)] : []),
        ...(merge.doubledEntries > 0 ? [log.mergeDoubled(merge.doubledEntries)] : []),
        ...(merge.keptOwnStand ? [log.mergeOwnStand] : []),
      ];
    }
  }
}

function download(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  // Some browsers begin to read only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
