import { noticeFor } from '../contract/notice.ts';
import type { BrokenOffSweep, ShowPicture } from '../contract/session.ts';
import { earlierReadingFor } from './earlierReading.ts';
import type { MeasureWorker } from './measureWorker.ts';
import { readFilmSweep } from './readFilmSweep.ts';
import type { SweepRun } from './sessionStore.ts';

/**
 * Reads a sweep that broke off. Its notes come first: they reach as far as the sweep did, need no
 * decoder, and give the reading that it would have had. A film is read where there are none that can be
 * read, or where they are refused, since it can be looked at twice.
 */
export async function takeUpSweep(
  run: SweepRun,
  worker: MeasureWorker,
  { notes, film, setup, earlier: chosen, errand }: BrokenOffSweep,
  showPreview: ShowPicture,
): Promise<void> {
  const earlier = earlierReadingFor(setup, chosen);
  if (!earlier.ok) return run.fail(earlier.failure.code, earlier.failure.evidence);
  const notice = noticeFor('sweep-taken-up');
  const start = { errand, setup, notice };
  if (notes) {
    // Shown as a file that is read: there is no camera to be turned before.
    run.show({
      ...start,
      ...{ source: 'file', progress: null, fraction: 0, stream: null, framesDropped: 0 },
    });
    const read = await worker.readNotes(notes, setup, earlier.value);
    if (!run.isCurrent()) return;
    if (read.ok && (film === null || read.value.reading.status === 'ok')) {
      return run.showRead({ ...start, source: 'camera', result: read.value });
    }
    if (!read.ok && film === null) return run.fail('worker-failed', read.failure.evidence);
  }
  if (film === null) return run.fail('worker-failed', { sweep: 'nothing is left of it' });
  const files = { film, setup, earlier: chosen, errand };
  await readFilmSweep(run, worker, 'file', files, showPreview, notice);
}
