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
  'ball-through-bore': {
    cause: 'The ball is no larger than the bore, so the wheel falls over it.',
    remedy: 'Take a ball that is larger than the bore.',
  },
  'wheel-tips-over': {
    cause: 'The wheel’s centre of mass lies above the ball’s centre, so it will not stand.',
    remedy: 'Take a smaller ball.',
  },
  'no-balls': {
    cause: 'No ball was given to choose from.',
    remedy: 'Enter the diameter of at least one ball.',
  },
  'diameter-unreadable': {
    cause: 'The ball’s diameter could not be read.',
    remedy: 'Write it like 63.5 mm or 2 1/2 in.',
  },
  'diameter-unit-missing': {
    cause: 'The ball’s diameter could be inches or millimetres.',
    remedy: 'Add mm or in.',
  },
  'screws-too-close': {
    cause: 'Two of the levelling screws stand at nearly the same place.',
    remedy: 'Enter where each of the three screws stands round the plate.',
  },
  'responses-too-alike': {
    cause: 'The two balls act too much alike to tell the parts apart.',
    remedy: 'Sweep on a ball of clearly different size.',
  },
  'amounts-contradict': {
    cause: 'The amounts given contradict one another.',
    remedy: 'Read them again, and make the trial weight heavier.',
  },
  'places-not-either-side': {
    cause: 'The two places do not stand on either side of the spot, less than half a turn apart.',
    remedy: 'Choose one place on each side of the spot.',
  },
  'stock-empty': {
    cause: 'There is no weight or no place to choose from.',
    remedy: 'Enter at least one weight and one radius where it may sit.',
  },
  'stock-too-large': {
    cause: 'There are too many kinds of weight or places to try them all.',
    remedy: 'Leave out the weights you would not use here.',
  },
  'tyre-turn-too-small': {
    cause: 'The tyre was turned too little on the rim to tell the two apart.',
    remedy: 'Turn it by about half a turn, then sweep again.',
  },
  'clock-unreadable': {
    cause: 'The place could not be read.',
    remedy: 'Write a clock position like 8:30, or degrees like 255°.',
  },
  'tyre-size-unreadable': {
    cause: 'The tyre size could not be read.',
    remedy: 'Write it as on the sidewall, like 205/55 R16 or 31x10.50 R15.',
  },
  'tyre-size-impossible': {
    cause: 'No tyre of that size is made.',
    remedy: 'Check the figure named below against the sidewall.',
  },
} as const satisfies Record<string, FailureWords>;

export type BalanceFailureCode = keyof typeof BALANCE_FAILURES;
export type BalanceOutcome<T> = Outcome<T, BalanceFailureCode>;
export type BalanceFailed = { readonly ok: false; readonly failure: Failure<BalanceFailureCode> };

/** The words for a failure, with the name of the value where it is about one. */
export function failureWords(failure: Failure<BalanceFailureCode>): FailureWords {
  return BALANCE_FAILURES[failure.code];
}
