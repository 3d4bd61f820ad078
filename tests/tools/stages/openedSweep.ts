import { FIRST_LOOK, lookAfter } from '../../../src/contract/filmLook.ts';
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
  let look = FIRST_LOOK;
  for (let passes = 1; ; passes++) {
    const reader = createOpenSweepReader(setup.value, { ...options, ...look });
    for await (const picture of filmPictures(entry.filmPath)) {
      if (reader.needs(picture.timeS)) reader.addFrame(picture);
    }
    const next = lookAfter(look, reader.secondLook());
    if (!next) return { reading: reader.finish().reading, inside: reader.inside(), passes };
    look = next;
  }
}
