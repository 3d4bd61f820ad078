import {
  getFirstEncodableVideoCodec,
  Mp4OutputFormat,
  Output,
  QUALITY_VERY_HIGH,
  StreamTarget,
  VideoSample,
  VideoSampleSource,
  WebMOutputFormat,
  type StreamTargetChunk,
  type VideoCodec,
} from 'mediabunny';

/** Where a film goes while it is recorded: piece after piece, in order, with nothing written twice. */
export interface FilmTaker {
  /** Resolves when the piece is stored; false when no more can be. */
  piece(bytes: Uint8Array<ArrayBuffer>, mimeType: string): Promise<boolean>;
}

/** `no-encoder`: this browser cannot record; `broke`: encoder or storage gave up on the way. */
type FilmEnding = 'whole' | 'no-encoder' | 'broke' | 'no-pictures';

export interface FilmSummary {
  readonly ending: FilmEnding;
  readonly pictures: number;
  /** Pictures that were due and are not in the film, because the encoder was behind. */
  readonly skipped: number;
}

/** Records the pictures of a live sweep beside its measuring, which never waits for it. */
export interface FilmRecorder {
  /** Takes a copy of the frame, of forty a second at most; the caller closes its own. */
  add(frame: VideoFrame, timeS: number): void;
  /** Writes what is still on its way, and ends the film. */
  end(): Promise<FilmSummary>;
}

/** H.264 is what most machines encode without their processor; VP8 costs least where none does. */
const CODECS: VideoCodec[] = ['avc', 'vp8', 'vp9'];
/** More waiting pictures than these would take the camera's own few buffers from it. */
const MOST_WAITING = 3;
/**
 * A wheel turned by hand is read as well from thirty pictures a second as from sixty, and coding them
 * takes more of a machine than measuring: those that come sooner after the last one are left out, s.
 */
const LEAST_STEP_S = 1 / 40;
/** A crash loses no more than what is not yet written: about this long. */
const PIECE_S = 1;

export function createFilmRecorder(
  taker: FilmTaker,
  codecs: readonly VideoCodec[] = CODECS,
): FilmRecorder {
  let source: Promise<OpenFilm | null> | null = null;
  let work: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  let pictures = 0;
  let skipped = 0;
  let lastS = -Infinity;
  let broke = false;
  let ended: Promise<FilmSummary> | null = null;

  const encode = async (sample: VideoSample): Promise<void> => {
    try {
      source ??= openFilm(sample, taker, codecs);
      const film = await source;
      if (film === null || broke) return;
      await film.add(sample);
      pictures += 1;
    } catch {
      broke = true;
    } finally {
      sample.close();
      waiting -= 1;
    }
  };

  return {
    add(frame, timeS) {
      if (ended || broke || timeS - lastS < LEAST_STEP_S) return;
      if (waiting >= MOST_WAITING) {
        skipped += 1;
        return;
      }
      waiting += 1;
      lastS = timeS;
      const sample = new VideoSample(frame.clone(), { timestamp: timeS });
      work = work.then(() => encode(sample));
    },
    end() {
      ended ??= work.then(async (): Promise<FilmSummary> => {
        const film = await (source ?? null);
        const whole = film === null ? false : await film.end().catch(() => false);
        if (pictures === 0) {
          const ending = source !== null && film === null ? 'no-encoder' : 'no-pictures';
          return { ending: broke ? 'broke' : ending, pictures, skipped };
        }
        return { ending: whole && !broke ? 'whole' : 'broke', pictures, skipped };
      });
      return ended;
    },
  };
}

interface OpenFilm {
  /** Resolves when the next picture may come. */
  add(sample: VideoSample): Promise<void>;
  /** True when all of it was stored. */
  end(): Promise<boolean>;
}

/** Null when the browser has no encoder for pictures of this size. */
async function openFilm(
  first: VideoSample,
  taker: FilmTaker,
  codecs: readonly VideoCodec[],
): Promise<OpenFilm | null> {
  if (!('VideoEncoder' in globalThis)) return null;
  const size = { width: first.codedWidth, height: first.codedHeight };
  const codec = await getFirstEncodableVideoCodec([...codecs], {
    ...size,
    quality: QUALITY_VERY_HIGH,
  });
  if (codec === null) return null;
  // Both are written in order and can be read as far as they go.
  const format =
    codec === 'avc'
      ? new Mp4OutputFormat({ fastStart: 'fragmented', minimumFragmentDuration: PIECE_S })
      : new WebMOutputFormat({ appendOnly: true, minimumClusterDuration: PIECE_S });
  const pieces = pieceStream(taker, format.mimeType);
  const output = new Output({ format, target: new StreamTarget(pieces) });
  const source = new VideoSampleSource({
    codec,
    // The edge is read to a fraction of a pixel: what a film loses, a later reading loses.
    quality: QUALITY_VERY_HIGH,
    keyFrameInterval: PIECE_S,
    latencyMode: 'realtime',
  });
  output.addVideoTrack(source);
  await output.start();
  return {
    add: (sample) => source.add(sample),
    async end() {
      await output.finalize();
      return true;
    },
  };
}

function pieceStream(taker: FilmTaker, mimeType: string): WritableStream<StreamTargetChunk> {
  let nextByte = 0;
  return new WritableStream({
    async write({ data, position }) {
      if (position !== nextByte) throw new Error('a film that is not written in order');
      nextByte += data.byteLength;
      // A copy: the writer goes on using its memory.
      if (!(await taker.piece(data.slice(), mimeType))) throw new Error('storage takes no more');
    },
  });
}
