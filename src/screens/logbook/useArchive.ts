import { useRef, useState } from 'react';

import type { OnOffer } from '../parts/UndoBar.tsx';
import { useApp } from '../shell/appContext.ts';
import { words } from '../words/words.ts';
import { bringIn, savedLogbook, savedTable, type BringingEnd } from './archiveSteps.ts';

/** What is going on with the logbook's file, or how it ended. */
export type ArchiveState =
  | {
      readonly kind: 'working' | 'bringing-in' | 'undone' | 'save-failed' | 'save-too-large';
    }
  | BringingEnd;

export interface Archive {
  /** Null before anything was asked for, and once a file was saved. */
  readonly state: ArchiveState | null;
  /** How much of bringing in is done, 0 to 1. */
  readonly fraction: number;
  readonly save: (what: 'records' | 'records-and-films' | 'table') => Promise<void>;
  readonly open: (file: File) => Promise<void>;
  /** Stops bringing in. */
  readonly stop: () => void;
}

/** Saves the logbook to a file, brings one in, and offers to undo that. */
export function useArchive(onOffer: OnOffer): Archive {
  const { logbook, shelf } = useApp();
  const [state, setState] = useState<ArchiveState | null>(null);
  const [fraction, setFraction] = useState(0);
  const stopping = useRef<AbortController | null>(null);
  const undoable = useRef<(() => Promise<boolean>) | null>(null);

  const save: Archive['save'] = async (what) => {
    setState({ kind: 'working' });
    try {
      const withFilms = what === 'records-and-films' ? shelf : null;
      const made = what === 'table' ? savedTable(logbook) : savedLogbook(logbook, withFilms);
      const file = await made;
      if (file !== null) download(file);
      setState(file === null ? { kind: 'save-failed' } : null);
    } catch (error) {
      setState({ kind: error instanceof RangeError ? 'save-too-large' : 'save-failed' });
    }
  };

  const offerUndo = (undo: () => Promise<boolean>) => {
    const undoNow = async () => {
      onOffer(null);
      setState({ kind: 'working' });
      const isUndone = await undo();
      setState({ kind: isUndone ? 'undone' : 'save-failed' });
      if (isUndone) undoable.current = null;
      else offerUndo(undo);
    };
    onOffer({ text: words.logbook.broughtIn, undo: () => void undoNow() });
  };

  const open: Archive['open'] = async (file) => {
    const stopped = new AbortController();
    stopping.current = stopped;
    setFraction(0);
    setState({ kind: 'bringing-in' });
    onOffer(null);
    const end = await bringIn(file, logbook, shelf, { told: setFraction, stop: stopped.signal });
    setState(end);
    // One that brought nothing leaves the one before it to be undone.
    if (end.kind === 'merged' && end.undo !== null) undoable.current = end.undo;
    if (undoable.current !== null) offerUndo(undoable.current);
  };

  return { state, fraction, save, open, stop: () => stopping.current?.abort() };
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
