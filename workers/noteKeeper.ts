import type { SweepReader } from '../src/contract/sweep.ts';
import type { NotePiece } from '../src/contract/sweepNotes.ts';

/** Where a sweep's notes go while it is measured. */
export interface NoteTaker {
  /** Resolves when they are stored; false when no more can be. */
  note(piece: NotePiece): Promise<boolean>;
}

export interface NoteKeeper {
  /** Called after each picture: passes on what is new when the last notes are old enough. */
  afterPicture(timeS: number): void;
  /** Passes on what is new at once: the sweep is over. */
  end(): void;
}

/** A crash loses no more than this of what was measured, as of the film. */
const NOTES_EVERY_S = 1;

/** The measuring never waits for it: while a piece is being stored the next one grows. */
export function createNoteKeeper(
  reader: Pick<SweepReader, 'takeNotes'>,
  taker: NoteTaker,
): NoteKeeper {
  let isStoring = false;
  let isOver = false;
  let lastS = -Infinity;
  const pass = () => {
    if (isOver) return;
    const piece = reader.takeNotes();
    if (!piece) return;
    isStoring = true;
    void taker
      .note(piece)
      .then((isStored) => (isOver ||= !isStored))
      // The page is gone, or could not take it: the sweep goes on without notes.
      .catch(() => (isOver = true))
      .finally(() => (isStoring = false));
  };
  return {
    afterPicture(timeS) {
      if (isStoring || timeS - lastS < NOTES_EVERY_S) return;
      lastS = timeS;
      pass();
    },
    end() {
      pass();
      isOver = true;
    },
  };
}
