/**
 * A measurement or a fit that cannot be made is a value, never an exception: it crosses the worker
 * boundary as plain data and says why. Misuse by a programmer throws.
 */
export type Outcome<T, Code extends string = string> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: Failure<Code> };

export interface Failure<Code extends string = string> {
  readonly code: Code;
  /** What was seen, by name with its unit: for the log and for the second line on the screen. */
  readonly evidence: Readonly<Record<string, number | string | boolean>>;
}

export function succeeded<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function failed<Code extends string>(
  code: Code,
  evidence: Failure['evidence'] = {},
): { readonly ok: false; readonly failure: Failure<Code> } {
  return { ok: false, failure: { code, evidence } };
}
