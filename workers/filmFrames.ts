import {
  BlobSource,
  Input,
  MATROSKA,
  MP4,
  MPEG_TS,
  QTFF,
  VideoSampleSink,
  WEBM,
  type InputVideoTrack,
} from 'mediabunny';

import { failed, succeeded, type Outcome } from '../src/contract/outcome.ts';
import { createEventTurn } from './eventTurn.ts';
import { tablesAreWhole } from './filmTables.ts';
import { wholeMatroska } from './wholeMatroska.ts';
import type { Showing } from './turnedPicture.ts';

/** What cameras write. Play lists are left out: they would send the reader to other places. */
const FILM_FORMATS = [MP4, QTFF, MATROSKA, WEBM, MPEG_TS];

/** One in which the end of a picture's decoding arrives, one in which the next is sent after it. */
const TURNS_A_PICTURE = 2;

export type FilmTrouble = 'film-empty' | 'film-cut-off' | 'film-coding-unknown' | 'file-unreadable';

/** One decoded picture of a film; whoever takes it closes the frame. */
interface FilmFrame {
  readonly frame: VideoFrame;
  /** The film's own presentation time, seconds; steps may be uneven. */
  readonly timeS: number;
  readonly showing: Showing;
}

export interface Film {
  /** Length from the container, seconds; 0 when it does not say. */
  readonly durationS: number;
  /**
   * Pictures in the order of their times. The decoder works ahead of the taker: once pictures
   * wait, it stops at eight of them and packets together. Ends by throwing where the film breaks.
   */
  frames(): AsyncGenerator<FilmFrame>;
  close(): void;
}

/** Opens a recorded film for reading picture by picture, or says why that cannot be. */
export async function openFilm(file: Blob): Promise<Outcome<Film, FilmTrouble>> {
  if (file.size === 0) return failed('film-empty');
  if (!(await canTakeApart(file)))
    return failed(await withoutTrack(file), { sizeBytes: file.size });
  const whole = await wholeMatroska(file);
  const source = new BlobSource(whole?.film ?? file);
  const input = new Input({ source, formats: FILM_FORMATS });
  const opened = await openTrack(input, file);
  if (!opened.ok) {
    input.dispose();
    return opened;
  }
  const track = opened.value;
  const durationS = await track.getDurationFromMetadata().catch(() => null);
  const showing: Showing = {
    rotationDeg: await track.getRotation(),
    mirrored: await track.getFlip(),
  };
  return succeeded({
    durationS: durationS ?? 0,
    frames: () => framesOf(track, showing, whole?.isCut ?? false),
    close: () => input.dispose(),
  });
}

async function openTrack(input: Input, file: Blob): Promise<Outcome<InputVideoTrack, FilmTrouble>> {
  try {
    if (!(await input.canRead())) return failed('file-unreadable', { sizeBytes: file.size });
    const track = await input.getPrimaryVideoTrack();
    if (!track) return failed(await withoutTrack(file), { pictures: 'none in the file' });
    if (await track.canDecode()) return succeeded(track);
    return failed('film-coding-unknown', { coding: (await track.getCodec()) ?? 'unknown' });
  } catch (error) {
    const code = await withoutTrack(file);
    return failed(code, { reader: error instanceof Error ? error.message : String(error) });
  }
}

/** Whether the tables of an MP4 or MOV film can be taken apart; true for films of other kinds. */
async function canTakeApart(file: Blob): Promise<boolean> {
  const { contents } = await topBoxes(file);
  return contents === null || tablesAreWhole(file, contents.at, contents.size);
}

/**
 * Why a file has no picture track: broken off, or never a film. MP4 and MOV write their table of
 * contents (`moov`) last when recording, so without it the end is missing.
 */
async function withoutTrack(file: Blob): Promise<'film-cut-off' | 'file-unreadable'> {
  const { names, overrun } = await topBoxes(file);
  const brokenOff = names.includes('ftyp') && (overrun || !names.includes('moov'));
  return brokenOff ? 'film-cut-off' : 'file-unreadable';
}

interface TopBoxes {
  readonly names: readonly string[];
  /** Where the table of contents (`moov`) lies; null without one. */
  readonly contents: { readonly at: number; readonly size: number } | null;
  /** True when the last box is longer than the file. */
  readonly overrun: boolean;
}

/** The outermost boxes of an ISO base media file (ISO/IEC 14496-12, section 4.2). */
async function topBoxes(file: Blob): Promise<TopBoxes> {
  const names: string[] = [];
  let contents: TopBoxes['contents'] = null;
  let at = 0;
  // A film has a handful of outermost boxes, a fragmented one some hundreds: the bound ends a loop
  // over a file that is no box file at all.
  while (at + 8 <= file.size && names.length < 1000) {
    const header = new DataView(await file.slice(at, at + 16).arrayBuffer());
    names.push(String.fromCharCode(...[4, 5, 6, 7].map((i) => header.getUint8(i))));
    const size32 = header.getUint32(0);
    const size = size32 === 1 && header.byteLength >= 16 ? Number(header.getBigUint64(8)) : size32;
    if (names.at(-1) === 'moov') contents = { at, size: size === 0 ? file.size - at : size };
    // Size 0: the box runs to the end of the file.
    if (size === 0) return { names, contents, overrun: false };
    if (size < 8) break;
    at += size;
  }
  return { names, contents, overrun: at > file.size };
}

async function* framesOf(
  track: InputVideoTrack,
  showing: Showing,
  isCut: boolean,
): AsyncGenerator<FilmFrame> {
  const turn = createEventTurn();
  try {
    for await (const sample of new VideoSampleSink(track).samples()) {
      const frame = sample.toVideoFrame();
      const timeS = sample.timestamp;
      sample.close();
      // The decoder is given its next picture by this thread, in turns of their own after the last one
      // was handed out: without them it would stand idle while that is measured.
      for (let n = 0; n < TURNS_A_PICTURE; n++) await turn.next();
      yield { frame, timeS, showing };
    }
  } finally {
    turn.close();
  }
  if (isCut) throw new Error('the film breaks off');
}
