import * as v from 'valibot';

import { MarkColourSchema, SetupSchema, AddedWeightSchema, SightTestsSchema } from './setup.ts';
import type { Outcome } from './outcome.ts';
import type { Reading } from './reading.ts';
import type { KeepingTrouble, StorageWatch } from './storageState.ts';
import type { SweepTrace } from './sweep.ts';

/**
 * What is kept: the stand, the wheels, and for each wheel all that was done to it, in order of
 * time. Entries are only added; a slip is undone by taking the entry back, never by writing over a
 * reading. Bounds are those of anything a person could own; a value outside them is a slip.
 */

const between = (low: number, high: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(64));
const shortText = v.pipe(v.string(), v.maxLength(200));
/** ISO 8601 in UTC, as `Date.toISOString` writes it. */
const instant = v.pipe(v.string(), v.isoTimestamp());
const angleDeg = between(-720, 720);

/** How a number came to be known: it goes with every figure that rests on it. */
const OriginSchema = v.picklist(['measured', 'entered', 'assumed']);
export type Origin = v.InferOutput<typeof OriginSchema>;

const sourced = (low: number, high: number) =>
  v.object({ value: between(low, high), origin: OriginSchema });
export interface SourcedNumber {
  readonly value: number;
  readonly origin: Origin;
}

export const StockPieceSchema = v.object({
  label: shortText,
  massG: between(0.1, 500),
  lengthMm: between(0, 300),
  fitting: v.picklist(['adhesive', 'clip-on']),
  onHand: v.optional(between(0, 10000)),
});

export const StandSchema = v.object({
  /** Balls on hand, by diameter. */
  ballDiametersMm: v.pipe(v.array(sourced(20, 200)), v.maxLength(40)),
  plateMaterial: v.nullable(
    v.picklist([
      'hard-steel',
      'mild-steel',
      'hard-aluminium',
      'soft-aluminium',
      'glass',
      'granite',
    ]),
  ),
  /** The three levelling screws; azimuths clockwise from the sight, degrees. */
  screws: v.nullable(
    v.object({
      firstAzimuthDeg: angleDeg,
      circleRadiusMm: between(20, 1000),
      threadPitchMm: between(0.1, 10),
      clockwiseLifts: v.boolean(),
    }),
  ),
  lineAbovePlateMm: v.nullable(sourced(0, 400)),
  camera: v.object({
    downTiltDeg: sourced(3, 80),
    horizontalFovDeg: v.nullable(sourced(20, 120)),
    deviceId: v.nullable(v.pipe(v.string(), v.maxLength(500))),
    /** How the trials by hand came out, and before which camera. Older records lack it. */
    tested: v.optional(
      v.object({
        ...SightTestsSchema.entries,
        /** Device and name of it, as `cameraOf` writes them. */
        camera: v.pipe(v.string(), v.maxLength(1000)),
      }),
    ),
  }),
  stock: v.pipe(v.array(StockPieceSchema), v.maxLength(60)),
});
export type StandRecord = v.InferOutput<typeof StandSchema>;
/** The stand's trials by hand. */
export type KeptSightTests = NonNullable<StandRecord['camera']['tested']>;

const WheelArcSchema = v.object({ fromDeg: angleDeg, toDeg: angleDeg });

/** A circle of the rim on which weights may sit. */
export const WeightRingSchema = v.object({
  radiusMm: sourced(50, 600),
  accepts: v.pipe(v.array(v.picklist(['adhesive', 'clip-on'])), v.minLength(1), v.maxLength(2)),
});

/** Where a wheel stands in its job. */
const WheelStageSchema = v.picklist(['never-read', 'read', 'weights-on', 'proved']);
export type WheelStage = v.InferOutput<typeof WheelStageSchema>;

export const WheelSchema = v.object({
  id,
  label: shortText,
  /** Where it sits on the vehicle, free text. */
  place: shortText,
  /** Size as printed on the tyre; empty when not entered. */
  tyre: shortText,
  createdAt: instant,
  changedAt: instant,
  /** Set when the person took it out of the shed; it can be brought back. */
  removedAt: v.nullable(instant),
  massKg: sourced(2, 80),
  edgeRadiusMm: sourced(120, 600),
  boreDiameterMm: v.nullable(sourced(20, 200)),
  ballDiameterMm: sourced(20, 200),
  /** h: centre of mass below the ball's centre. */
  pendulumDepthMm: sourced(0.5, 100),
  mark: v.object({ widthMm: between(3, 120), colour: MarkColourSchema }),
  /** The first ring is the one that the grams of a reading are meant for. */
  rings: v.pipe(v.array(WeightRingSchema), v.minLength(1), v.maxLength(4)),
  forbiddenArcs: v.pipe(v.array(WheelArcSchema), v.maxLength(40)),
  weightStepG: between(0.1, 100),
  /** Kept beside the entries so that the shed's list needs none of them. */
  stage: WheelStageSchema,
  lastReading: v.nullable(
    v.object({
      entryId: id,
      at: instant,
      /** Amount at the first ring, g, and its 95 % half width. */
      amountG: between(0, 100000),
      plusMinusG: between(0, 100000),
      lightSpotDeg: angleDeg,
      /** True for a check sweep: the figure is what the weights left. Older records lack it. */
      isCheck: v.optional(v.boolean()),
    }),
  ),
});
export type WheelRecord = v.InferOutput<typeof WheelSchema>;

const entryHead = { id, wheelId: id, at: instant };

/** Where the pictures came from. */
const SweepSourceSchema = v.picklist(['camera', 'file', 'sample', 'practice']);
export type SweepSource = v.InferOutput<typeof SweepSourceSchema>;

/** A weight that is on the wheel (negative mass: taken off); wheel angle as everywhere. */
const PlacedWeightSchema = AddedWeightSchema;

export const WeightsEntrySchema = v.object({
  ...entryHead,
  kind: v.literal('weights'),
  added: v.pipe(v.array(PlacedWeightSchema), v.minLength(1), v.maxLength(40)),
  note: v.optional(shortText),
});

/** The person's own reading, by eye. */
export const EyeEntrySchema = v.object({
  ...entryHead,
  kind: v.literal('by-eye'),
  lightSpotDeg: angleDeg,
  massG: between(0, 2000),
  radiusMm: between(50, 600),
  /** True when it was entered before the measured one was shown. */
  blind: v.boolean(),
});

export const NoteEntrySchema = v.object({
  ...entryHead,
  kind: v.literal('note'),
  text: v.pipe(v.string(), v.maxLength(4000)),
});

/** Reading and trace are checked by their own readers (`readReading`, `readTrace`). */
export const SweepEntryHeadSchema = v.object({
  ...entryHead,
  kind: v.literal('sweep'),
  source: SweepSourceSchema,
  setup: SetupSchema,
  /** Names of the setup's values that were assumed. */
  assumed: v.pipe(v.array(shortText), v.maxLength(20)),
  /** Film of the sweep on the film shelf; null when none was kept. */
  filmId: v.nullable(id),
});

export type WeightsEntry = v.InferOutput<typeof WeightsEntrySchema>;
export type EyeEntry = v.InferOutput<typeof EyeEntrySchema>;
export type NoteEntry = v.InferOutput<typeof NoteEntrySchema>;
export type SweepEntry = v.InferOutput<typeof SweepEntryHeadSchema> & {
  readonly reading: Reading;
  readonly trace: SweepTrace | null;
};
export type LogEntry = SweepEntry | WeightsEntry | EyeEntry | NoteEntry;

/** Why something could not be kept or had; all but the last are storage troubles with words. */
export type LogbookTrouble = KeepingTrouble | 'not-found';

/** Everything that the logbook holds. */
export interface LogbookContents {
  readonly stand: StandRecord | null;
  readonly wheels: readonly WheelRecord[];
  readonly entries: readonly LogEntry[];
}

/** What is said of a trace in words and numbers. */
export interface TraceHead extends Pick<SweepTrace, 'fit' | 'rockingPeriodS' | 'contributionsG'> {
  /** Length of each of the trace's three lists. */
  readonly pointCount: number;
}

/** A trace as it is kept: `points` holds angles, heights and residuals, one list after the other. */
export interface PackedTrace {
  readonly head: TraceHead;
  readonly points: Float32Array<ArrayBuffer>;
}

/** An entry with its trace beside it; the entry's own `trace` is null. */
export interface PackedEntry {
  readonly entry: LogEntry;
  readonly trace: PackedTrace | null;
}

/** Everything that the logbook holds, traces as they are kept. */
export interface PackedContents {
  readonly stand: StandRecord | null;
  readonly wheels: readonly WheelRecord[];
  readonly entries: readonly PackedEntry[];
}

/** What is asked of an `AbortSignal`, which types without a DOM do not know. */
interface StopSignal {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void): void;
  removeEventListener(type: 'abort', listener: () => void): void;
}

/** Follows work that takes seconds, and can stop it. */
export interface WorkWatch {
  /** Told how much of it is done, 0 to 1. */
  readonly told: (fraction: number) => void;
  readonly stop: StopSignal;
}

/** What undoes a `putIn`. */
export interface TakenOut {
  /** Wheels whose values it changed, as they were before. */
  readonly wheels: readonly WheelRecord[];
  /** Wheels that it brought, by id. */
  readonly removedWheels: readonly string[];
  /** Entries that it brought. */
  readonly removed: readonly EntryName[];
  /** True where the stand came with it. */
  readonly removesStand: boolean;
}

/** An entry by its id, and the wheel whose it is. */
export interface EntryName {
  readonly id: string;
  readonly wheelId: string;
}

/** All of it is in, or it was stopped and nothing is. */
export type PutIn = 'in' | 'stopped';

/**
 * The logbook as the rest of the program sees it. Every write is whole or not at all, and is in
 * storage when its promise resolves; where storage fails, it is held in the page instead, read as if
 * it were stored, stored together with the next change that can be, and `storage` says so.
 * `onChange` calls back after each change, also for those that another tab made.
 */
export interface Logbook {
  readonly storage: StorageWatch;
  stand(): Promise<Outcome<StandRecord, LogbookTrouble>>;
  saveStand(stand: StandRecord): Promise<Outcome<void, LogbookTrouble>>;
  /** All wheels, also those taken out of the shed, newest change first. */
  wheels(): Promise<Outcome<readonly WheelRecord[], LogbookTrouble>>;
  wheel(wheelId: string): Promise<Outcome<WheelRecord, LogbookTrouble>>;
  saveWheel(wheel: WheelRecord): Promise<Outcome<void, LogbookTrouble>>;
  /** One wheel's entries in order of time. */
  entriesOf(wheelId: string): Promise<Outcome<readonly LogEntry[], LogbookTrouble>>;
  entry(entryId: string): Promise<Outcome<LogEntry, LogbookTrouble>>;
  /** Adds an entry and brings the wheel's stage and last reading up to date, in one step. */
  addEntry(entry: LogEntry): Promise<Outcome<void, LogbookTrouble>>;
  /** Takes an entry back; `addEntry` with the same entry undoes that. */
  removeEntry(entryId: string): Promise<Outcome<void, LogbookTrouble>>;
  /** Everything, for a file or to be compared with one: ten thousand traces are not unpacked for it. */
  packed(): Promise<Outcome<PackedContents, LogbookTrouble>>;
  /** Puts in all of it or nothing; a record with a known id takes the place of the old one. */
  putIn(contents: PackedContents, watch?: WorkWatch): Promise<Outcome<PutIn, LogbookTrouble>>;
  /** Undoes a `putIn`, in one step. */
  takeOut(taken: TakenOut): Promise<Outcome<void, LogbookTrouble>>;
  onChange(changed: () => void): () => void;
}

/** From `fromDeg` clockwise to `toDeg`. */
export type WheelArcRecord = v.InferOutput<typeof WheelArcSchema>;
