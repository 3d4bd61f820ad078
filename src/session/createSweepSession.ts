import type { FilmShelf } from '../contract/filmShelf.ts';
import { NO_ERRAND, type ShowPicture, type SweepSession } from '../contract/session.ts';
import { sortChosenFiles } from './chosenFiles.ts';
import { runLiveSweep, type LiveAsk, type LiveSweepRun } from './liveSweep.ts';
import { createMeasureWorker, type MeasureWorker } from './measureWorker.ts';
import { readFilmSweep } from './readFilmSweep.ts';
import { loadSampleSweep } from './sampleSweep.ts';
import { createSessionStore } from './sessionStore.ts';
import { takeUpSweep } from './takeUpSweep.ts';
import { createSightKeeper } from './sightKeeper.ts';
import { createSignKeeper } from './signKeeper.ts';

export interface FilmKeeping {
  readonly shelf: FilmShelf;
  /** Whether films are wanted: asked at the start of each live sweep. */
  readonly isWanted: () => boolean;
}

/** The session behind the screens: one sweep at a time, from a sample, from files or from a camera. */
export function createSweepSession(
  films: FilmKeeping | null = null,
  worker: MeasureWorker = createMeasureWorker(),
): SweepSession {
  const store = createSessionStore();
  let live: LiveSweepRun | null = null;
  const known = createSightKeeper();
  const signs = createSignKeeper();
  let show: ShowPicture | null = null;
  const showPreview: ShowPicture = (shown) => (show ? show(shown) : shown.picture.close());

  const begin = () => {
    const run = store.begin();
    dropWhatRuns();
    return run;
  };
  const startLive = async (ask: LiveAsk) => {
    const keeping = { shelf: films?.shelf ?? null, isFilmWanted: films?.isWanted() ?? false };
    const tools = { worker, known, signs, showPreview, ...keeping };
    const mine = runLiveSweep(begin(), tools, ask);
    live = mine;
    await mine.done;
    if (live === mine) live = null;
  };
  const dropWhatRuns = () => {
    live?.abandon();
    live = null;
    worker.stop();
  };

  return {
    getState: store.getState,
    subscribe: store.subscribe,
    onPreview(next) {
      show = next;
    },
    async readSample() {
      const run = begin();
      const sample = await loadSampleSweep();
      if (!sample.ok) return run.fail(sample.failure.code, sample.failure.evidence);
      if (!run.isCurrent()) return;
      await readFilmSweep(
        run,
        worker,
        'sample',
        { ...sample.value, earlier: null, errand: NO_ERRAND },
        showPreview,
      );
    },
    async readFiles(files, errand = NO_ERRAND) {
      const run = begin();
      const chosen = await sortChosenFiles(files);
      if (!chosen.ok) return run.fail(chosen.failure.code, chosen.failure.evidence);
      if (!run.isCurrent()) return;
      await readFilmSweep(run, worker, 'file', { ...chosen.value, errand }, showPreview);
    },
    async takeUp(sweep) {
      await takeUpSweep(begin(), worker, sweep, showPreview);
    },
    async startCamera(setup, options = {}) {
      await startLive({ ...options, setup, sightFirst: false });
    },
    async openSight(setup, options = {}) {
      await startLive({ ...options, setup, sightFirst: true });
    },
    changeSight(setup, change, assumed) {
      live?.changeSight(setup, change, assumed);
    },
    noteTests(tests) {
      live?.noteTests(tests);
    },
    beginSweep() {
      live?.beginSweep();
    },
    async finishSweep() {
      const running = live;
      running?.finish();
      await running?.done;
    },
    leaveCamera() {
      const { phase } = store.getState();
      if (live === null || phase === 'sweeping') return;
      // What is shown of an earlier sweep stays.
      if (phase === 'sighting') store.reset();
      else store.begin();
      dropWhatRuns();
    },
    stop() {
      store.reset();
      dropWhatRuns();
    },
  };
}
