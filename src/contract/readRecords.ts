import * as v from 'valibot';

import { readReading } from './readReading.ts';
import type { Reading } from './reading.ts';
import { REFUSALS, type RefusalCode } from './refusals.ts';
import {
  EyeEntrySchema,
  NoteEntrySchema,
  StandSchema,
  SweepEntryHeadSchema,
  WeightsEntrySchema,
  WheelSchema,
  type LogEntry,
  type PackedTrace,
  type StandRecord,
  type SweepEntry,
  type WheelRecord,
} from './logbook.ts';
import { failed, succeeded, type Outcome } from './outcome.ts';
import type { SweepTrace } from './sweep.ts';

/**
 * The door for records that come back from storage or from a file: what passes is what this program
 * could have written. A failure's evidence names the first value that is wrong and how.
 */
export type RecordTrouble = 'record-invalid';

export function readStand(json: unknown): Outcome<StandRecord, RecordTrouble> {
  return checked(StandSchema, json);
}

export function readWheel(json: unknown): Outcome<WheelRecord, RecordTrouble> {
  return checked(WheelSchema, json);
}

/** `trace` must already be there in its own form: typed arrays (see {@link SweepTrace}). */
export function readEntry(json: unknown): Outcome<LogEntry, RecordTrouble> {
  switch (kindOf(json)) {
    case 'weights':
      return checked(WeightsEntrySchema, json);
    case 'by-eye':
      return checked(EyeEntrySchema, json);
    case 'note':
      return checked(NoteEntrySchema, json);
    case 'sweep':
      return readSweepEntry(json);
    default:
      return failed('record-invalid', { where: 'kind', problem: 'no kind of entry' });
  }
}

function kindOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null && 'kind' in json ? json.kind : null;
}

function readSweepEntry(json: unknown): Outcome<SweepEntry, RecordTrouble> {
  const head = checked(SweepEntryHeadSchema, json);
  if (!head.ok) return head;
  const { reading, trace } = json as { reading?: unknown; trace?: unknown };
  const read = readKeptReading(reading);
  if (!read.ok) return read;
  const drawn = trace === null ? succeeded(null) : readTrace(trace);
  if (!drawn.ok) return drawn;
  return succeeded({ ...head.value, reading: read.value, trace: drawn.value });
}

const finite = v.pipe(v.number(), v.finite());
const amount = v.pipe(finite, v.minValue(0));
const refusalCodes = Object.keys(REFUSALS) as RefusalCode[];
/** Far more than any reading names. */
const MOST_WEIGHTS = 60;

/** What a reading of the program's own carries beyond what a foreign one must. */
const KeptReadingSchema = v.variant('status', [
  v.looseObject({
    status: v.literal('refused'),
    refusals: v.pipe(
      v.array(v.looseObject({ code: v.picklist(refusalCodes) })),
      v.minLength(1),
      v.maxLength(refusalCodes.length),
    ),
  }),
  v.looseObject({
    status: v.literal('ok'),
    unbalance: v.looseObject({
      ci95: v.looseObject({
        amountGmm: v.tuple([amount, amount]),
        angleDeg: v.nullable(v.tuple([finite, finite])),
      }),
    }),
    correction: v.pipe(
      v.array(v.looseObject({ massG: finite, radiusMm: amount, angleDeg: finite })),
      v.maxLength(MOST_WEIGHTS),
    ),
    residualGmm: amount,
  }),
]);

/** A reading as this program writes it into its logbook: all fields that its screens show. */
export function readKeptReading(json: unknown): Outcome<Reading, RecordTrouble> {
  const common = readReading(json);
  if (!common.ok) return failed('record-invalid', common.failure.evidence);
  const own = checked(KeptReadingSchema, json);
  return own.ok ? common : own;
}

const floats = v.instance(Float32Array);
/** One point a degree is drawn; anything beyond ten a degree was not made here. */
const MOST_TRACE_POINTS = 3600;
const MOST_WAVES = 16;

const said = {
  fit: v.pipe(
    v.object({
      offsetMm: finite,
      cosMm: v.pipe(v.array(finite), v.maxLength(MOST_WAVES)),
      sinMm: v.pipe(v.array(finite), v.maxLength(MOST_WAVES)),
    }),
    v.check(({ cosMm, sinMm }) => cosMm.length === sinMm.length, 'waves of different number'),
  ),
  rockingPeriodS: v.nullable(amount),
  contributionsG: v.record(v.pipe(v.string(), v.maxLength(100)), finite),
};

const TraceSchema = v.pipe(
  v.object({ wheelAngleDeg: floats, heightMm: floats, residualMm: floats, ...said }),
  v.check(
    (trace) =>
      trace.wheelAngleDeg.length <= MOST_TRACE_POINTS &&
      trace.heightMm.length === trace.wheelAngleDeg.length &&
      trace.residualMm.length === trace.wheelAngleDeg.length,
    'lists of different length',
  ),
  v.check(
    ({ wheelAngleDeg, heightMm, residualMm }) =>
      [wheelAngleDeg, heightMm, residualMm].every(allFinite),
    'a number that is none',
  ),
);

const pointCount = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_TRACE_POINTS));
const TraceHeadSchema = v.object({ pointCount, ...said });

/** One sum instead of a question for each: ten thousand traces have seven million points. */
function allFinite(list: Float32Array): boolean {
  let none = 0;
  // x − x is 0 for every number, NaN for an infinite one and for one that is none.
  for (let i = 0; i < list.length; i++) none += list[i] - list[i];
  return none === 0;
}

/** A trace as it is kept; that its points are as many as its head says is the caller's to see. */
export function readPackedTrace({
  head,
  points,
}: PackedTrace): Outcome<PackedTrace, RecordTrouble> {
  const read = checked(TraceHeadSchema, head);
  if (!read.ok) return read;
  if (allFinite(points)) return succeeded({ head: read.value, points });
  return failed('record-invalid', { where: 'trace', problem: 'a number that is none' });
}

function readTrace(value: unknown): Outcome<SweepTrace, RecordTrouble> {
  return checked(TraceSchema, value);
}

function checked<Schema extends v.GenericSchema>(
  schema: Schema,
  json: unknown,
): Outcome<v.InferOutput<Schema>, RecordTrouble> {
  const parsed = v.safeParse(schema, json);
  if (parsed.success) return succeeded(parsed.output);
  const issue = parsed.issues[0];
  return failed('record-invalid', {
    where: v.getDotPath(issue) ?? 'the whole record',
    problem: issue.message,
  });
}
