import { noticeFor, type Notice } from '../contract/notice.ts';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import type { AcceptedReading } from '../contract/reading.ts';
import type { ShowPicture, SourceKind, SweepErrand, SweepFiles } from '../contract/session.ts';
import type { SweepSetup } from '../contract/setup.ts';
import type { SweepResult } from '../contract/sweep.ts';
import type { SweepListener } from '../../workers/pictureReport.ts';
import type { FilmTrouble } from '../../workers/filmFrames.ts';
import type { FilmRead } from '../../workers/readFilm.ts';
import { earlierReadingFor } from './earlierReading.ts';
import type { MeasureWorker, WorkerFailure } from './measureWorker.ts';
import { playFilm } from './playedFilm.ts';
import type { SweepRun } from './sessionStore.ts';

/** Name of the User Timing entry that tells how long a film took: for the bench and the accuracy command. */
const FILM_TIMING = 'tiltsweep.film';

interface FilmToRead {
  readonly film: Blob;
  readonly setup: SweepSetup;
  readonly earlier: AcceptedReading | null;
}

/** Reads a recorded sweep; when the worker dies on it, once more from its beginning. */
export async function readFilmSweep(
  run: SweepRun,
  worker: MeasureWorker,
  source: SourceKind,
  {
    film,
    setup,
    earlier: chosen,
    errand,
  }: Omit<SweepFiles, 'film'> & { readonly film: Blob; readonly errand: SweepErrand },
  showPreview: ShowPicture,
  /** Said while nothing else is to be said of the film. */
  calm: Notice | null = null,
): Promise<void> {
  const earlier = earlierReadingFor(setup, chosen);
  if (!earlier.ok) return run.fail(earlier.failure.code, earlier.failure.evidence);
  const toRead = { film, setup, earlier: earlier.value };
  run.show({
    source,
    errand,
    setup,
    progress: null,
    fraction: 0,
    stream: null,
    framesDropped: 0,
    notice: calm,
  });
  let restarted = false;
  for (;;) {
    const read = await readOnce(run, worker, toRead, showPreview);
    if (!run.isCurrent()) return;
    if (read.ok) {
      const { result, notice } = read.value;
      return run.showRead({ source, errand, setup, result, notice: notice ?? calm });
    }
    const { code, evidence } = read.failure;
    // Only something newer stops a film, and that shows itself.
    if (code === 'stopped') return;
    if (code !== 'worker-crashed') return run.fail(code, evidence);
    if (restarted) return run.fail('worker-failed', evidence);
    restarted = true;
    run.update({
      progress: null,
      fraction: 0,
      pass: 1,
      notice: noticeFor('worker-restarted', evidence),
    });
  }
}

type ReadOnce = Outcome<
  { readonly result: SweepResult; readonly notice: Notice | null },
  FilmTrouble | 'stopped' | WorkerFailure
>;

/** Picture by picture; where the browser has no decoder for that, by playing the film. */
async function readOnce(
  run: SweepRun,
  worker: MeasureWorker,
  toRead: FilmToRead,
  showPreview: ShowPicture,
): Promise<ReadOnce> {
  const listener: SweepListener = {
    progress: (progress, place) => run.update({ progress, ...place }),
    preview: (picture, overlay) =>
      run.isCurrent() ? showPreview({ picture, overlay }) : picture.close(),
  };
  const startMs = performance.now();
  const { film, setup, earlier } = toRead;
  const read = await worker.readFilm(film, setup, earlier, listener);
  if (read.ok) {
    const { result, timing } = read.value;
    performance.measure(FILM_TIMING, { start: startMs, end: performance.now(), detail: timing });
    return succeeded({ result, notice: noticeOf(read.value) });
  }
  if (read.failure.code !== 'film-coding-unknown' || !run.isCurrent()) return read;
  return (await readPlayed(run, worker, toRead, listener)) ?? read;
}

const PLAYED_NOTICES = {
  played: 'film-played',
  stopped: 'film-played',
  'broken-off': 'film-cut-off',
} as const;

/** Null where the film cannot be played either. */
async function readPlayed(
  run: SweepRun,
  worker: MeasureWorker,
  { film, setup, earlier }: FilmToRead,
  listener: SweepListener,
): Promise<ReadOnce | null> {
  const started = await worker.startLive(setup, earlier ? { earlier } : {}, listener);
  if (!started.ok) return started;
  let crash: ReadOnce | null = null;
  const end = await playFilm(film, async (picture, timeS, fraction) => {
    const fate = await worker.addPicture(picture, timeS);
    if (!fate.ok) crash = fate;
    if (run.isCurrent()) run.update({ fraction });
    return fate.ok && fate.value === 'taken' && run.isCurrent();
  });
  if (crash !== null) return crash;
  if (end === 'unplayable') return null;
  const finished = await worker.finishLive();
  if (!finished.ok) return finished;
  return finished.value === null
    ? failed('stopped')
    : succeeded({ result: finished.value.result, notice: noticeFor(PLAYED_NOTICES[end]) });
}

function noticeOf({ ending, timing }: FilmRead): Notice | null {
  switch (ending) {
    case 'whole':
      return null;
    case 'cut-off':
      return noticeFor('film-cut-off');
    case 'too-long':
      return noticeFor('film-too-long', { readUntilS: Math.round(timing.filmS) });
  }
}
