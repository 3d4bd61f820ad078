import { NO_ERRAND, type SweepSession } from '../contract/session.ts';
import { sortChosenFiles } from './chosenFiles.ts';
import { runLiveSweep, type LiveSweepRun } from './liveSweep.ts';
import { createMeasureWorker, type MeasureWorker } from './measureWorker.ts';
import { readFilmSweep } from './readFilmSweep.ts';
import { loadSampleSweep } from './sampleSweep.ts';
import { createSessionStore } from './sessionStore.ts';

/** The session behind the screens: one sweep at a time, from a sample, from files or from a camera. */
export function createSweepSession(worker: MeasureWorker = createMeasureWorker()): SweepSession {
  const store = createSessionStore();
  let live: LiveSweepRun | null = null;
  let show: ((picture: ImageBitmap) => void) | null = null;
  const showPreview = (picture: ImageBitmap) => (show ? show(picture) : picture.close());

  const begin = () => {
    const run = store.begin();
    dropWhatRuns();
    return run;
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
    async startCamera(setup, options = {}) {
      const run = begin();
      live = runLiveSweep(run, worker, { setup, ...options });
      await live.done;
    },
    async finishSweep() {
      const running = live;
      running?.finish();
      await running?.done;
    },
    stop() {
      store.reset();
      dropWhatRuns();
    },
  };
}
