import type { Failure, Outcome } from '../contract/outcome.ts';

/**
 * Every reason for which a balancing figure is not given, in one place: what was found and what
 * to do about it. Words are meant for a person at the stand.
 */
export interface FailureWords {
  readonly cause: string;
  readonly remedy: string;
}

export const BALANCE_FAILURES = {
  'input-out-of-range': {
    cause: 'A value is missing or cannot be right.',
    remedy: 'Correct the value named below.',
  },
  'covariance-invalid': {
    cause: 'The stated uncertainty of a reading cannot be right.',
    remedy: 'Read the sweep again and use that reading.',
  },
  'trial-too-small': {
    cause: 'The trial weight is nothing, or its parts cancel one another.',
    remedy: 'Stick on one weight heavy enough to be seen, then sweep again.',
  },
  'sweeps-too-few': {
    cause: 'There are too few sweeps for this figure.',
    remedy: 'Sweep the wheel again.',
  },
} as const satisfies Record<string, FailureWords>;

export type BalanceFailureCode = keyof typeof BALANCE_FAILURES;
export type BalanceOutcome<T> = Outcome<T, BalanceFailureCode>;
export type BalanceFailed = { readonly ok: false; readonly failure: Failure<BalanceFailureCode> };

/** The words for a failure, with the name of the value where it is about one. */
export function failureWords(failure: Failure<BalanceFailureCode>): FailureWords {
  return BALANCE_FAILURES[failure.code];
}
