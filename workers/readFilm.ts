import { failed, succeeded, type Outcome } from '../src/contract/outcome.ts';
import type { SweepReader, SweepResult } from '../src/contract/sweep.ts';
import { openFilm, type Film, type FilmTrouble } from './filmFrames.ts';
import type { PictureReport } from './pictureReport.ts';
import type { YuvCopier } from './yuvCopier.ts';

export interface FilmRead {
  readonly result: SweepResult;
  /** True when the film broke off and only what came before was read. */
  readonly cutOff: boolean;
  readonly timing: FilmTiming;
}

/** For the bench and the accuracy command. */
export interface FilmTiming {
  readonly pictures: number;
  /** From the first picture to the result, seconds. */
  readonly seconds: number;
  /** Of that, at work on a picture or the fit rather than waiting for the decoder, seconds. */
  readonly workingS: number;
  /** Of that, in the measuring core, seconds. */
  readonly measuringS: number;
  /** Length of what was read, seconds. */
  readonly filmS: number;
}

/** A film that breaks before this many pictures has nothing to read: less than half a second. */
const FEWEST_PICTURES = 10;

/** Reads a whole film with `reader`; `stopped` is asked before each picture. */
export async function readFilm(
  file: Blob,
  reader: SweepReader,
  tools: { copy: YuvCopier; report: PictureReport; stopped: () => boolean },
): Promise<Outcome<FilmRead, FilmTrouble | 'stopped'>> {
  const opened = await openFilm(file);
  if (!opened.ok) return opened;
  const film = opened.value;
  try {
    return await readFrames(film, reader, tools);
  } finally {
    film.close();
  }
}

async function readFrames(
  film: Film,
  reader: SweepReader,
  { copy, report, stopped }: Parameters<typeof readFilm>[2],
): Promise<Outcome<FilmRead, FilmTrouble | 'stopped'>> {
  const startMs = performance.now();
  let measuringMs = 0;
  let workingMs = 0;
  let pictures = 0;
  let firstS = 0;
  let lastS = -Infinity;
  const frames = film.frames();
  let broke: unknown = null;
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
        return failed('stopped');
      }
      // Pictures before time 0 are there for the decoder only; a time that stands still is no picture.
      if (timeS < 0 || timeS <= lastS) continue;
      if (pictures === 0) firstS = timeS;
      lastS = timeS;
      const picture = await copy(frame, timeS, showing);
      const beforeMs = performance.now();
      const progress = reader.addFrame(picture);
      measuringMs += performance.now() - beforeMs;
      pictures += 1;
      report.progress(progress, film.durationS > 0 ? Math.min(1, timeS / film.durationS) : 0);
      await report.preview(frame, showing);
    } finally {
      frame.close();
      workingMs += performance.now() - takenMs;
    }
  }
  if (pictures < FEWEST_PICTURES && (broke || pictures === 0)) {
    return failed(broke ? 'film-cut-off' : 'file-unreadable', { pictures, ...reasonOf(broke) });
  }
  const beforeMs = performance.now();
  const result = reader.finish();
  const fitMs = performance.now() - beforeMs;
  return succeeded({
    result,
    cutOff: broke !== null || isShort(film, lastS),
    timing: {
      pictures,
      seconds: (performance.now() - startMs) / 1000,
      workingS: (workingMs + fitMs) / 1000,
      measuringS: (measuringMs + fitMs) / 1000,
      filmS: Math.max(0, lastS - firstS),
    },
  });
}

/** A second: the last picture's own length and a sound track that runs on are well below it. */
const SHORT_BY_S = 1;

function isShort(film: Film, lastS: number): boolean {
  return film.durationS - lastS > SHORT_BY_S;
}

function reasonOf(broke: unknown): Record<string, string> {
  if (broke === null) return {};
  return { reader: broke instanceof Error ? broke.message : String(broke) };
}
