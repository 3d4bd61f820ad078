import { NOTES_FORMAT, readNoteHead, type NoteHead } from '../../contract/sweepNotes.ts';
import { BAND_ROWS } from '../band/treadBand.ts';

/**
 * One piece of notes as bytes: a word that tells notes from anything else and the machine's order
 * of bytes, the head's length, the head as JSON, then lists of numbers, the widest first so that each
 * lies where its numbers may lie. Lists are as long as the head says, and nothing follows.
 */
export interface NoteLists {
  /** Per frame. */
  readonly timeS: Float64Array;
  readonly lineShare: Float64Array;
  /** Per frame: lift, toward, across, residual, blocks used; NaN where the tread was not seen. */
  readonly lean: Float64Array;
  /** Per turn told anew, degrees. */
  readonly turnDeg: Float64Array;
  /** Per followed frame. */
  readonly correlation: Float64Array;
  /** Frames × blocks. */
  readonly lineOffsetPx: Float32Array;
  readonly shiftMm: Float32Array;
  readonly standardErrorMm: Float32Array;
  /** Frames × blocks × rows, luma in steps of {@link LUMA_STEP}. */
  readonly profiles: Uint16Array;
  /** Per frame, 1 where it was followed in turn. */
  readonly isFollowed: Uint8Array;
  /** Followed frames × cells. */
  readonly textures: Int8Array;
  /** Frames × columns. */
  readonly colourY: Uint8Array;
  readonly colourU: Int8Array;
  readonly colourV: Int8Array;
}

export const LEAN_NUMBERS = 5;
/** A profile's luma is kept in 16 bits: a hundredth of the noise of a mean over a block. */
export const LUMA_STEP = 1 / 256;
export const UNSEEN_LUMA_CODE = 0xffff;

/** "TSNT", read as a number of this machine. */
const WORD = 0x544e5354;
const HEAD_AT = 12;
/** A head is some hundreds of letters long. */
const LONGEST_HEAD_BYTES = 1 << 16;

type Sized = Pick<
  NoteHead,
  'frames' | 'followed' | 'blocks' | 'textureCells' | 'colourColumns' | 'turns'
>;

/** The lists of a piece within `buffer` from `at` on; null when they would reach beyond `end`. */
function listsIn(head: Sized, buffer: ArrayBuffer, start: number, end: number) {
  const { frames, followed, blocks, textureCells, colourColumns, turns } = head;
  let at = start;
  const place = (count: number, bytes: number) => {
    const from = at;
    at += count * bytes;
    return [buffer, from, count] as const;
  };
  const places = {
    timeS: place(frames, 8),
    lineShare: place(frames, 8),
    lean: place(frames * LEAN_NUMBERS, 8),
    turnDeg: place(turns, 8),
    correlation: place(followed, 8),
    lineOffsetPx: place(frames * blocks, 4),
    shiftMm: place(frames * blocks, 4),
    standardErrorMm: place(frames * blocks, 4),
    profiles: place(frames * blocks * BAND_ROWS, 2),
    isFollowed: place(frames, 1),
    textures: place(followed * textureCells, 1),
    colourY: place(frames * colourColumns, 1),
    colourU: place(frames * colourColumns, 1),
    colourV: place(frames * colourColumns, 1),
  };
  if (at > end) return null;
  const lists: NoteLists = {
    timeS: new Float64Array(...places.timeS),
    lineShare: new Float64Array(...places.lineShare),
    lean: new Float64Array(...places.lean),
    turnDeg: new Float64Array(...places.turnDeg),
    correlation: new Float64Array(...places.correlation),
    lineOffsetPx: new Float32Array(...places.lineOffsetPx),
    shiftMm: new Float32Array(...places.shiftMm),
    standardErrorMm: new Float32Array(...places.standardErrorMm),
    profiles: new Uint16Array(...places.profiles),
    isFollowed: new Uint8Array(...places.isFollowed),
    textures: new Int8Array(...places.textures),
    colourY: new Uint8Array(...places.colourY),
    colourU: new Int8Array(...places.colourU),
    colourV: new Int8Array(...places.colourV),
  };
  return { lists, end: at };
}

function bytesOfLists(head: Sized): number {
  const { frames, followed, blocks, textureCells, colourColumns, turns } = head;
  const perFrame = 8 * (2 + LEAN_NUMBERS) + blocks * (12 + 2 * BAND_ROWS) + 1 + 3 * colourColumns;
  return frames * perFrame + followed * (8 + textureCells) + 8 * turns;
}

/** Pieces follow on each other in one file: each is filled up so that the next lies as well. */
const padded = (bytes: number) => (bytes + 7) & ~7;

/** A head is numbers and codes, plain ASCII: a byte a character. */
const bytesOf = (text: string) => Uint8Array.from(text, (character) => character.charCodeAt(0));
const textOf = (bytes: Uint8Array) => Array.from(bytes, (b) => String.fromCharCode(b)).join('');

/** An empty piece of this head, its lists still to be filled. */
export function newPiece(head: Omit<NoteHead, 'format'>): {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly lists: NoteLists;
} {
  const text = bytesOf(JSON.stringify({ ...head, format: NOTES_FORMAT }));
  const listsAt = padded(HEAD_AT + text.length);
  const sizeBytes = padded(listsAt + bytesOfLists(head));
  const buffer = new ArrayBuffer(sizeBytes);
  new Uint32Array(buffer, 0, 3).set([WORD, text.length, sizeBytes]);
  new Uint8Array(buffer, HEAD_AT).set(text);
  const made = listsIn(head, buffer, listsAt, sizeBytes);
  if (!made) throw new Error('newPiece: lists larger than their piece');
  return { bytes: new Uint8Array(buffer), lists: made.lists };
}

/** The pieces in a file of notes, in order, as far as they are whole. */
export function* piecesOf(
  notes: ArrayBuffer,
): Generator<{ readonly head: NoteHead; readonly lists: NoteLists }> {
  let at = 0;
  while (at + HEAD_AT <= notes.byteLength) {
    const [word, headBytes, sizeBytes] = new Uint32Array(notes, at, 3);
    const end = at + sizeBytes!;
    if (word !== WORD || headBytes! > LONGEST_HEAD_BYTES || end > notes.byteLength) return;
    const listsAt = padded(HEAD_AT + headBytes!);
    if (at + listsAt > end || sizeBytes! % 8 !== 0) return;
    const text = textOf(new Uint8Array(notes, at + HEAD_AT, headBytes));
    const head = readNoteHead(text);
    if (!head || padded(listsAt + bytesOfLists(head)) !== sizeBytes) return;
    const found = listsIn(head, notes, at + listsAt, end);
    if (!found) return;
    yield { head, lists: found.lists };
    at = end;
  }
}
