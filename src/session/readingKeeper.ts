import type { FilmShelf } from '../contract/filmShelf.ts';
import type { Logbook, LogbookTrouble, SweepEntry } from '../contract/logbook.ts';
import { succeeded, type Outcome } from '../contract/outcome.ts';
import type { SessionState, SweepSession } from '../contract/session.ts';
import type { SweepResult } from '../contract/sweep.ts';
import { wheelOfSetup } from '../job/proposals.ts';

/** What became of the latest reading: where it stands in the logbook, or why it could not be kept. */
export interface KeptReading {
  /** The session's own result, to know which reading this is about. */
  readonly result: SweepResult;
  readonly kept: Outcome<{ readonly wheelId: string; readonly entryId: string }, LogbookTrouble>;
}

export interface ReadingKeeper {
  /** Null until a sweep was read and written. */
  getKept(): KeptReading | null;
  subscribe(onChange: () => void): () => void;
}

type Read = Extract<SessionState, { phase: 'read' }>;

/**
 * Writes every reading into the logbook as soon as it is there, whatever screen is open: refused
 * ones too, since nothing that was recorded may be lost.
 */
export function createReadingKeeper(
  session: SweepSession,
  logbook: Logbook,
  shelf: FilmShelf | null = null,
): ReadingKeeper {
  const listeners = new Set<() => void>();
  let kept: KeptReading | null = null;
  let seen: SweepResult | null = null;

  session.subscribe(() => {
    const state = session.getState();
    if (state.phase !== 'read' || state.result === seen) return;
    seen = state.result;
    void keep(state, logbook, shelf).then((outcome) => {
      kept = { result: state.result, kept: outcome };
      for (const listener of listeners) listener();
    });
  });

  return {
    getKept: () => kept,
    subscribe(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
  };
}

async function keep(
  state: Read,
  logbook: Logbook,
  shelf: FilmShelf | null,
): Promise<KeptReading['kept']> {
  const now = new Date().toISOString();
  const wheelId = await wheelFor(state, logbook, now);
  if (!wheelId.ok) return wheelId;
  const { film } = state.errand;
  const filmId = state.filmId ?? (film?.isNotes ? null : film?.filmId) ?? null;
  const entry: SweepEntry = {
    id: crypto.randomUUID(),
    wheelId: wheelId.value,
    at: await timeOfEntry(state, logbook, wheelId.value, now),
    kind: 'sweep',
    source: state.source,
    setup: state.setup,
    assumed: [...state.errand.assumed],
    filmId,
    reading: state.result.reading,
    trace: state.result.trace,
  };
  const added = await logbook.addEntry(entry);
  if (!added.ok) return added;
  const sweepId = state.sweepId ?? film?.filmId;
  // What it was made of goes only once the reading lies in storage: held in the page it may be lost.
  if (sweepId !== undefined) {
    const linked = whenStored(logbook).then(() => shelf?.link(sweepId, entry.id));
    if (logbook.storage.state().heldCount === 0) await linked;
  }
  return succeeded({ wheelId: wheelId.value, entryId: entry.id });
}

/** Resolves when nothing is held in the page any more. */
function whenStored({ storage }: Logbook): Promise<void> {
  return new Promise((resolve) => {
    const look = () => {
      if (storage.state().heldCount > 0) return;
      stop();
      resolve();
    };
    const stop = storage.subscribe(look);
    look();
  });
}

/**
 * A film that is read again belongs where its sweep was made, not where the wheel stands today: just
 * behind the latest reading of the same film.
 */
async function timeOfEntry(
  { errand }: Read,
  logbook: Logbook,
  wheelId: string,
  now: string,
): Promise<string> {
  if (!errand.film) return now;
  const { filmId, sweptAt } = errand.film;
  const entries = await logbook.entriesOf(wheelId);
  const before = entries.ok
    ? entries.value.filter((entry) => entry.kind === 'sweep' && entry.filmId === filmId)
    : [];
  const latest = before.at(-1)?.at;
  return latest === undefined ? sweptAt : new Date(Date.parse(latest) + 1).toISOString();
}

/**
 * The wheel that the sweep was started for; else the one in the shed that bears the setup's label,
 * since a film's label names its wheel; else a new one made from the setup.
 */
async function wheelFor(
  state: Read,
  logbook: Logbook,
  now: string,
): Promise<Outcome<string, LogbookTrouble>> {
  const wanted = state.errand.wheelId;
  const wheels = await logbook.wheels();
  if (!wheels.ok) return wheels;
  const known = wheels.value.find(({ id, label, removedAt }) =>
    wanted === null
      ? removedAt === null && label !== '' && label === state.setup.label
      : id === wanted,
  );
  if (known) return succeeded(known.id);
  // A wheel that is gone (storage was cleared meanwhile) is made again: the reading needs its place.
  const wheel = wheelOfSetup(wanted ?? crypto.randomUUID(), state.setup, now);
  const saved = await logbook.saveWheel(wheel);
  return saved.ok ? succeeded(wheel.id) : saved;
}
