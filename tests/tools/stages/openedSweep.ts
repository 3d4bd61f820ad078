import { noticeFor } from '../../../src/contract/notice.ts';
import type { AcceptedReading, Reading } from '../../../src/contract/reading.ts';
import { readSetup } from '../../../src/contract/setup.ts';
import { createOpenSweepReader, type SweepInside } from '../../../src/measure/sweepReader.ts';
import { filmPictures } from '../filmPictures.ts';
import type { SweepEntry } from '../sweepFolder.ts';

/** A film read as the program reads it, with what the reader held at the end. */
export interface OpenedSweep {
  readonly reading: Reading;
  readonly inside: SweepInside;
  readonly passes: number;
}

export async function openSweep(
  entry: SweepEntry,
  earlier: AcceptedReading | undefined,
): Promise<OpenedSweep> {
  const setup = readSetup(entry.setupJson);
  if (!setup.ok) {
    const refusals = [noticeFor('setup-invalid')];
    return {
      reading: { format: 'tiltsweep.reading/1', status: 'refused', refusals, turn: null },
      inside: { recording: null, geometry: null, solved: null },
      passes: 0,
    };
  }
  const options = earlier ? { earlier } : {};
  let reader = createOpenSweepReader(setup.value, options);
  for await (const picture of filmPictures(entry.filmPath)) reader.addFrame(picture);
  const sight = reader.secondLook();
  if (sight) {
    reader = createOpenSweepReader(setup.value, { ...options, sight });
    for await (const picture of filmPictures(entry.filmPath)) reader.addFrame(picture);
  }
  return { reading: reader.finish().reading, inside: reader.inside(), passes: sight ? 2 : 1 };
}
