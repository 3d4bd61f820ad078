import { FIRST_LOOK, lookAfter, type FilmLook } from '../src/contract/filmLook.ts';
import { failed, succeeded, type Outcome } from '../src/contract/outcome.ts';
import type { SweepReader, SweepResult } from '../src/contract/sweep.ts';
import { openFilm, type Film, type FilmTrouble } from './filmFrames.ts';
import type { PictureReport } from './pictureReport.ts';
import type { YuvCopier } from './yuvCopier.ts';

export interface FilmRead {
  readonly result: SweepResult;
  /** How the film ended: of one that was cut off, or too long, only the first part was read. */
  readonly ending: FilmEnding;
  readonly timing: FilmTiming;
}

/** For the bench and the accuracy command. */
export interface FilmTiming {
  /** Pictures in the film, as far as it could be read. */
  readonly pictures: number;
  /** How often the film was read: again when the first pass taught a better look at the wheel. */
  readonly passes: number;
  /** From the first picture to the result, seconds. */
  readonly seconds: number;
  /** Of that, at work on a picture or the fit rather than waiting for the decoder, seconds. */
  readonly workingS: number;
  /** Of that, in the measuring core, seconds. */
  readonly measuringS: number;
  /** Length of what was read, seconds. */
  readonly filmS: number;
}

type FilmEnding = 'whole' | 'cut-off' | 'too-long';

export interface FilmTools {
  readonly copy: YuvCopier;
  readonly report: PictureReport;
  /** Asked before each picture. */
  readonly stopped: () => boolean;
}

/** A new reader for the same film; `look` holds what a first pass over it has taught. */
export type MakeReader = (look: FilmLook) => SweepReader;

type FilmOutcome = Outcome<FilmRead, FilmTrouble | 'stopped'>;

/** A film that breaks before this many pictures has nothing to read: less than half a second. */
const FEWEST_PICTURES = 10;
/** A second: the last picture's own length and a sound track that runs on are well below it. */
const SHORT_BY_S = 1;

/**
 * A wheel turned by hand does nothing that sixty pictures a second do not show: of a film with more,
 * those that come sooner after the last one than this are left out, s.
 */
const LEAST_STEP_S = 1 / 70;
/** What the core keeps of so many pictures takes 300 MB; it is five minutes at thirty a second. */
export const MOST_PICTURES = 9000;

/** Reads a whole film, and again when the reader asks for a second look. */
export async function readFilm(
  file: Blob,
  makeReader: MakeReader,
  tools: FilmTools,
): Promise<FilmOutcome> {
  const opened = await openFilm(file);
  if (!opened.ok) return opened;
  const film = opened.value;
  try {
    return await readPasses(film, makeReader, tools);
  } finally {
    film.close();
  }
}

/** Reads an opened film from its first picture to the result. */
export async function readPasses(
  film: Film,
  makeReader: MakeReader,
  tools: FilmTools,
): Promise<FilmOutcome> {
  const startMs = performance.now();
  let look = FIRST_LOOK;
  let reader = makeReader(look);
  const once = await readPass(film, reader, tools, 1);
  if (once === 'stopped') return failed('stopped');
  const { pictures, broke } = once;
  if (pictures === 0 || (broke !== null && pictures < FEWEST_PICTURES)) {
    const code = broke === null ? 'file-unreadable' : 'film-cut-off';
    return failed(code, { pictures, ...reasonOf(broke) });
  }
  let fitMs = 0;
  const fit = <T>(make: () => T): T => {
    const beforeMs = performance.now();
    const made = make();
    fitMs += performance.now() - beforeMs;
    return made;
  };
  const passes = [once];
  for (;;) {
    const next = lookAfter(
      look,
      fit(() => reader.secondLook()),
    );
    if (!next) break;
    look = next;
    reader = makeReader(look);
    const again = await readPass(film, reader, tools, 2);
    if (again === 'stopped') return failed('stopped');
    passes.push(again);
  }
  const result = fit(() => reader.finish());
  return succeeded({
    result,
    ending: endingOf(film, once),
    timing: {
      pictures,
      passes: passes.length,
      seconds: (performance.now() - startMs) / 1000,
      workingS: (sumOf(passes.map((p) => p.workingMs)) + fitMs) / 1000,
      measuringS: (sumOf(passes.map((p) => p.measuringMs)) + fitMs) / 1000,
      filmS: Math.max(0, once.lastS - once.firstS),
    },
  });
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function endingOf(film: Film, { broke, tooLong, lastS }: Pass): FilmEnding {
  if (tooLong) return 'too-long';
  return broke !== null || film.durationS - lastS > SHORT_BY_S ? 'cut-off' : 'whole';
}

interface Pass {
  readonly pictures: number;
  readonly firstS: number;
  readonly lastS: number;
  readonly workingMs: number;
  readonly measuringMs: number;
  /** What the decoder threw where the film broke; null when it came to its end. */
  readonly broke: unknown;
  /** True when it went on past the last picture that is read. */
  readonly tooLong: boolean;
}

async function readPass(
  film: Film,
  reader: SweepReader,
  { copy, report, stopped }: FilmTools,
  pass: 1 | 2,
): Promise<Pass | 'stopped'> {
  let measuringMs = 0;
  let workingMs = 0;
  let pictures = 0;
  let firstS = 0;
  let lastS = -Infinity;
  let broke: unknown = null;
  let tooLong = false;
  const frames = film.frames();
  for (;;) {
    const next = await frames.next().catch((error: unknown) => {
      broke = error ?? 'unknown';
      return { done: true as const, value: undefined };
    });
    if (next.done) break;
    const { frame, timeS, showing } = next.value;
    const takenMs = performance.now();
    try {
      if (stopped()) {
        await frames.return(undefined);
        return 'stopped';
      }
      // Pictures before time 0 are there for the decoder only; a time that stands still is no picture.
      if (timeS < 0 || timeS - lastS < LEAST_STEP_S) continue;
      if (pictures === MOST_PICTURES) {
        tooLong = true;
        await frames.return(undefined);
        break;
      }
      if (pictures === 0) firstS = timeS;
      lastS = timeS;
      pictures += 1;
      if (!reader.needs(timeS)) continue;
      const picture = await copy(frame, timeS, showing);
      const beforeMs = performance.now();
      const progress = reader.addFrame(picture);
      measuringMs += performance.now() - beforeMs;
      const fraction = film.durationS > 0 ? Math.min(1, timeS / film.durationS) : 0;
      report.progress(progress, { fraction, pass });
      await report.preview(frame, progress.overlay, showing);
    } finally {
      frame.close();
      workingMs += performance.now() - takenMs;
    }
  }
  return { pictures, firstS, lastS, workingMs, measuringMs, broke, tooLong };
}

function reasonOf(broke: unknown): Record<string, string> {
  if (broke === null) return {};
  return { reader: broke instanceof Error ? broke.message : String(broke) };
}
