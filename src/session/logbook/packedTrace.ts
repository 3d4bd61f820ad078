import type { SweepTrace } from '../../contract/sweep.ts';

/**
 * A trace in two parts: what is said in words and numbers, and its three lists as one run of
 * 32-bit floats (angle, height, residual, one list after the other). Stored apart, since a logbook
 * is listed and searched a thousand times for each time that a trace is drawn.
 */
export interface PackedTrace {
  readonly head: TraceHead;
  readonly points: Float32Array<ArrayBuffer>;
}

export interface TraceHead extends Pick<SweepTrace, 'fit' | 'rockingPeriodS' | 'contributionsG'> {
  /** Length of each list. */
  readonly pointCount: number;
}

const LISTS = 3;

export function packedTrace(trace: SweepTrace): PackedTrace {
  const { wheelAngleDeg, heightMm, residualMm, fit, rockingPeriodS, contributionsG } = trace;
  const pointCount = wheelAngleDeg.length;
  const points = new Float32Array(LISTS * pointCount);
  [wheelAngleDeg, heightMm, residualMm].forEach((list, i) => points.set(list, i * pointCount));
  return { head: { pointCount, fit, rockingPeriodS, contributionsG }, points };
}

/** Null where head and points do not belong together. What comes out has still to be checked. */
export function unpackedTrace(head: TraceHead, points: Float32Array): SweepTrace | null {
  const { pointCount, ...rest } = head;
  if (points.length !== LISTS * pointCount) return null;
  const list = (i: number) => points.slice(i * pointCount, (i + 1) * pointCount);
  return { ...rest, wheelAngleDeg: list(0), heightMm: list(1), residualMm: list(2) };
}
