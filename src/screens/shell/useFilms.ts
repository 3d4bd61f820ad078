import { useCallback, useRef, useState } from 'react';
import { useLocation } from 'wouter';

import { NO_ERRAND, type SweepErrand, type SweepSession } from '../../contract/session.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { draftOf, type SetupDraft } from '../setup/setupDraft.ts';
import {
  filmWithoutSetup,
  readingAmong,
  withOwnFiles,
  withSetupFile,
} from '../start/filmWithoutSetup.ts';
import { unlockHearing } from '../sweep/giveSignal.ts';
import { places } from './places.ts';

/** A film that waits for its setup to be entered by hand. */
interface FilmForForm {
  readonly film: File;
  readonly draft: SetupDraft | null;
  /** Name of the earlier sweep's reading among the files; null where there is none. */
  readonly earlier: string | null;
}

/** A sweep of a wheel in the logbook, as far as it is known without a file. */
interface SweepOfWheel {
  readonly wheelId: string;
  readonly setup: SweepSetup;
  readonly assumed: readonly string[];
  /** The wheel's latest reading: a check sweep builds on it. */
  readonly earlier: AcceptedReading | null;
}

export interface Films {
  /** Reads the sweep in the chosen files; a film alone first gets its setup by hand. */
  open(chosen: readonly File[], errand?: SweepErrand): void;
  /** Reads a film of that wheel; what its files do not say is taken from the logbook. */
  openFor(sweep: SweepOfWheel, chosen: readonly File[]): void;
  readonly forForm: FilmForForm | null;
  /** Takes the reading of the sweep before the waiting film's; a file that is none is left out. */
  addEarlier(chosen: readonly File[]): void;
  /** Reads the waiting film with a setup entered by hand. */
  readWith(setup: SweepSetup, assumed: readonly string[]): void;
  /** Opens the form for the film that was read last; null when there is none any more. */
  readonly changeSetup: ((setup: SweepSetup | null) => void) | null;
}

/** The files last chosen live as long as the page does: a browser gives no way to find them again. */
export function useFilms(session: SweepSession): Films {
  const [, goTo] = useLocation();
  const files = useRef<readonly File[]>([]);
  const errand = useRef<SweepErrand>(NO_ERRAND);
  const [forForm, setForForm] = useState<FilmForForm | null>(null);
  const [hasFilm, setHasFilm] = useState(false);

  const showForm = useCallback(
    async (film: File, draft: SetupDraft | null) => {
      const earlier = await readingAmong(files.current);
      setForForm({ film, draft, earlier: earlier?.name ?? null });
      goTo(places.filmSetup);
    },
    [goTo],
  );

  const open = useCallback(
    (chosen: readonly File[], forWheel: SweepErrand = NO_ERRAND) => {
      unlockHearing();
      files.current = chosen;
      errand.current = forWheel;
      setHasFilm(filmIn(chosen) !== null);
      void filmWithoutSetup(chosen).then((film) => {
        if (film === null) return session.readFiles(chosen, forWheel);
        void showForm(film, null);
      });
    },
    [session, showForm],
  );

  const openFor = ({ wheelId, setup, assumed, earlier }: SweepOfWheel, chosen: readonly File[]) => {
    void withOwnFiles(chosen, setup, earlier).then(({ files: complete, ownSetup }) =>
      open(complete, { wheelId, assumed: ownSetup ? assumed : [] }),
    );
  };

  const readWith = (setup: SweepSetup, assumed: readonly string[]) => {
    const film = forForm?.film;
    if (film === undefined) return;
    void withSetupFile(files.current, film, setup).then((complete) => {
      files.current = complete;
      return session.readFiles(complete, { ...errand.current, assumed });
    });
  };

  const changeSetup = (setup: SweepSetup | null) => {
    const film = filmIn(files.current);
    if (film === null) return;
    void showForm(film, setup === null ? null : draftOf(setup));
  };

  const addEarlier = (chosen: readonly File[]) => {
    void readingAmong(chosen).then(async (reading) => {
      if (reading === null) return;
      const before = await readingAmong(files.current);
      files.current = [...files.current.filter((file) => file !== before), reading];
      setForForm((form) => form && { ...form, earlier: reading.name });
    });
  };
  return {
    open,
    openFor,
    forForm,
    addEarlier,
    readWith,
    changeSetup: hasFilm ? changeSetup : null,
  };
}

function filmIn(files: readonly File[]): File | null {
  return files.find((file) => !file.name.endsWith('.json')) ?? null;
}
