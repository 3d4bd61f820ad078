import { FIRST_LOOK, lookAfter } from '../../src/contract/filmLook.ts';
import { noticeFor } from '../../src/contract/notice.ts';
import type { AcceptedReading, Reading } from '../../src/contract/reading.ts';
import { readSetup } from '../../src/contract/setup.ts';
import type { CreateSweepReader, SweepReader, SweepResult } from '../../src/contract/sweep.ts';
import { filmPictures } from './filmPictures.ts';
import type { SweepEntry } from './sweepFolder.ts';

export interface NodeRun {
  readonly result: SweepResult;
  /** Pictures decoded, over all looks. */
  readonly frames: number;
  /** Time in the reader alone, ms. */
  readonly readerMs: number;
}

export interface NodeReading {
  readonly createSweepReader: CreateSweepReader;
  /** Readings made before, by name: a check sweep needs the one it builds on. */
  readonly readings: ReadonlyMap<string, Reading>;
  /** Pictures after which each look ends; missing: all. */
  readonly first?: number;
  /** A filter of ffmpeg's that spoils the film on purpose. */
  readonly filter?: string;
}

/** Reads one film of a folder as the worker would, looks and all, with the installed ffmpeg as decoder. */
export async function readSweepNode(entry: SweepEntry, how: NodeReading): Promise<NodeRun> {
  const setup = readSetup(entry.setupJson);
  if (!setup.ok) return refusedRun('setup-invalid');
  let earlier: AcceptedReading | undefined;
  if (entry.afterSweep !== null) {
    const before = how.readings.get(entry.afterSweep);
    if (before?.status !== 'ok') return refusedRun('earlier-sweep-missing');
    earlier = before;
  }
  const options = earlier ? { earlier } : {};
  let frames = 0;
  let readerMs = 0;
  for (let look = FIRST_LOOK; ;) {
    const reader = how.createSweepReader(setup.value, { ...options, ...look });
    const pass = await readPass(entry.filmPath, reader, how);
    frames += pass.frames;
    readerMs += pass.readerMs;
    const next = lookAfter(look, reader.secondLook());
    if (!next) return { result: reader.finish(), frames, readerMs };
    const left = `${pass.frames} pictures, ${pass.taken} of them measured`;
    console.error(`${entry.name}: ${left}; ${next.sight ? 'second look' : 'all of them again'}`);
    look = next;
  }
}

async function readPass(
  filmPath: string,
  reader: SweepReader,
  { first = Infinity, filter }: NodeReading,
) {
  let frames = 0;
  let taken = 0;
  let readerMs = 0;
  for await (const picture of filmPictures(filmPath, filter)) {
    const startMs = performance.now();
    if (reader.needs(picture.timeS)) {
      reader.addFrame(picture);
      taken++;
    }
    readerMs += performance.now() - startMs;
    if (++frames >= first) break;
  }
  return { frames, taken, readerMs };
}

function refusedRun(code: 'setup-invalid' | 'earlier-sweep-missing'): NodeRun {
  const reading: Reading = {
    format: 'tiltsweep.reading/1',
    status: 'refused',
    refusals: [noticeFor(code)],
    turn: null,
  };
  return { result: { reading, trace: null }, frames: 0, readerMs: 0 };
}
