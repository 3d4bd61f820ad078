import * as v from 'valibot';

import { TurnSenseSchema } from './setup.ts';

/**
 * Notes: what the measuring core saw in each picture of a sweep, written piece by piece while the
 * sweep goes on, so that it can be read from them when it broke off. A piece is a head, told here,
 * and lists of numbers (`measure/notes/notePiece`).
 */
export const NOTES_FORMAT = 'tiltsweep.notes/1';

/** No tablet's picture is as wide or as high, px. */
const WIDEST_PX = 16_384;
/** More frames than a sweep keeps (`forgetOldFrames`), and more than a piece can hold. */
const MOST_FRAMES = 100_000;

const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.minValue(1e-6));
const sizePx = v.pipe(finite, v.integer(), v.minValue(16), v.maxValue(WIDEST_PX));
const count = v.pipe(finite, v.integer(), v.minValue(0), v.maxValue(MOST_FRAMES));
/** JSON knows no NaN: what is not known comes as null. */
const orUnknown = v.pipe(
  v.nullable(finite),
  v.transform((value) => value ?? NaN),
);

const LeanSchema = v.object({ liftMm: finite, toward: finite, across: finite });

/** View and edge with which a recording begins; all notes before it belong to another one. */
const NotesBeginSchema = v.object({
  pose: v.object({
    widthPx: sizePx,
    heightPx: sizePx,
    focalPx: positive,
    radial: finite,
    downTiltDeg: finite,
    yawDeg: finite,
    rollDeg: finite,
    distanceMm: positive,
    heightMm: finite,
  }),
  poseCovariance: v.pipe(v.array(orUnknown), v.maxLength(49)),
  poseResidualPx: finite,
  laserColour: v.picklist(['green', 'red']),
  lineSpreadPx: finite,
  originColumnPx: v.optional(finite),
  /** Bytes of a row of the pictures. */
  rowBytes: v.pipe(sizePx, v.maxValue(4 * WIDEST_PX)),
  edge: v.object({
    heightMm: finite,
    lean: LeanSchema,
    strength: finite,
    plainestMm: orUnknown,
    isAssumed: v.optional(v.boolean()),
    outline: v.optional(v.object({ planeMm: finite, isLighterBehind: v.boolean() })),
  }),
});
export type NotesBegin = v.InferOutput<typeof NotesBeginSchema>;

export const NoteHeadSchema = v.object({
  format: v.literal(NOTES_FORMAT),
  begin: v.nullable(NotesBeginSchema),
  /** Frames in this piece, and how many of them were followed in turn. */
  frames: count,
  followed: count,
  /** Blocks of azimuth, cells of a turn's texture, and columns of colour of each frame. */
  blocks: v.pipe(count, v.maxValue(200)),
  textureCells: count,
  colourColumns: v.pipe(count, v.maxValue(2000)),
  /** The turns told anew in this piece begin with this one. */
  turnsFrom: count,
  turns: count,
  /** Pictures so far that only repeated the one before. */
  repeated: v.pipe(finite, v.integer(), v.minValue(0)),
  /** What the light was like so far. */
  light: v.nullable(v.picklist(['too-dark', 'too-bright'])),
  /** How the sweep was begun: as for the reader that wrote the notes. */
  mayMirror: v.boolean(),
  askedSense: v.nullable(TurnSenseSchema),
});
export type NoteHead = v.InferOutput<typeof NoteHeadSchema>;

/** Null for a text that is no head of notes. */
export function readNoteHead(text: string): NoteHead | null {
  try {
    const read = v.safeParse(NoteHeadSchema, JSON.parse(text));
    return read.success ? read.output : null;
  } catch {
    return null;
  }
}

/** A piece of notes, and how much of the turn the sweep's notes tell with it. */
export interface NotePiece {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly coveredDeg: number;
}

/** What there is of a sweep's notes on the shelf. */
export const KeptNotesSchema = v.object({
  pieceCount: v.pipe(v.number(), v.integer(), v.minValue(0)),
  sizeBytes: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** Turn that they tell, degrees. */
  coveredDeg: v.pipe(finite, v.minValue(0)),
});
export type KeptNotes = v.InferOutput<typeof KeptNotesSchema>;
