import * as v from 'valibot';

import { failed, succeeded, type Outcome } from './outcome.ts';
import type { Reading } from './reading.ts';
import { TurnSenseSchema } from './setup.ts';

/**
 * Checks a `tiltsweep.reading/1` that comes back from a file. Fields beyond these are kept: a
 * reading may carry more. The schema is held to the type by the return of {@link readReading}.
 */
const finite = v.pipe(v.number(), v.finite());
const amount = v.pipe(finite, v.minValue(0));
const covariance = v.tuple([v.tuple([finite, finite]), v.tuple([finite, finite])]);
const refusalSchema = v.looseObject({ code: v.string(), message: v.string(), remedy: v.string() });
const warningSchema = refusalSchema;
const turnSchema = v.looseObject({
  coveredDeg: amount,
  sense: TurnSenseSchema,
  closureDeg: v.nullable(finite),
});

const ReadingSchema = v.variant('status', [
  v.looseObject({
    format: v.literal('tiltsweep.reading/1'),
    status: v.literal('refused'),
    refusals: v.array(refusalSchema),
    turn: v.nullable(turnSchema),
  }),
  v.looseObject({
    format: v.literal('tiltsweep.reading/1'),
    status: v.literal('ok'),
    refusals: v.tuple([]),
    warnings: v.optional(v.array(warningSchema)),
    turn: turnSchema,
    edge: v.optional(
      v.looseObject({
        kind: v.picklist(['rib', 'blocks', 'band', 'outline']),
        seenShare: amount,
        scatterMm: amount,
        bandOffSquareMm: v.optional(v.nullable(amount)),
      }),
    ),
    tilt: v.looseObject({
      edgeRiseMm: amount,
      highSpotDeg: finite,
      standMrad: finite,
      standHighAzimuthDeg: finite,
      standMradStandardError: v.optional(amount),
      covarianceMm2: covariance,
    }),
    unbalance: v.looseObject({
      amountGmm: amount,
      heavySpotDeg: finite,
      lightSpotDeg: finite,
      covarianceGmm2: covariance,
    }),
    response: v.looseObject({
      mmPerGmm: v.pipe(finite, v.gtValue(0)),
      source: v.picklist(['model', 'trial']),
      standardError: amount,
    }),
  }),
]);

/** A failure's evidence names the first value that is wrong and how. */
export function readReading(json: unknown): Outcome<Reading, 'reading-invalid'> {
  const parsed = v.safeParse(ReadingSchema, json);
  // Fields checked are those that a later sweep computes with; the rest is only shown.
  if (parsed.success) return succeeded(parsed.output as unknown as Reading);
  const issue = parsed.issues[0];
  return failed('reading-invalid', {
    where: v.getDotPath(issue) ?? 'the whole file',
    problem: issue.message,
  });
}
