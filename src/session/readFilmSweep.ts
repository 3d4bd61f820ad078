import { noticeFor } from '../contract/notice.ts';
import type { ShowPicture, SourceKind, SweepErrand, SweepFiles } from '../contract/session.ts';
import { earlierReadingFor } from './earlierReading.ts';
import type { MeasureWorker } from './measureWorker.ts';
import type { SweepRun } from './sessionStore.ts';

/** Name of the User Timing entry that tells how long a film took: for the bench and the accuracy command. */
export const FILM_TIMING = 'tiltsweep.film';

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
): Promise<void> {
  const earlier = earlierReadingFor(setup, chosen);
  if (!earlier.ok) return run.fail(earlier.failure.code, earlier.failure.evidence);
  run.show({
    source,
    errand,
    setup,
    progress: null,
    fraction: 0,
    stream: null,
    framesDropped: 0,
    notice: null,
  });
  let restarted = false;
  for (;;) {
    const startMs = performance.now();
    const read = await worker.readFilm(film, setup, earlier.value, {
      progress: (progress, place) => run.update({ progress, ...place }),
      preview: (picture, overlay) =>
        run.isCurrent() ? showPreview({ picture, overlay }) : picture.close(),
    });
    if (!run.isCurrent()) return;
    if (read.ok) {
      const { result, cutOff, timing } = read.value;
      performance.measure(FILM_TIMING, { start: startMs, end: performance.now(), detail: timing });
      return run.showRead({
        source,
        errand,
        setup,
        result,
        notice: cutOff ? noticeFor('film-cut-off') : null,
      });
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
