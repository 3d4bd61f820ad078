/** How much is done with one picture beside measuring it. */
export interface Pace {
  /** Steps of work that was put aside. */
  readonly steps: number;
  /** Kept pictures that are measured again. */
  readonly again: number;
}

/** A film waits: all is done at once. */
export const AT_ONCE: Pace = { steps: Infinity, again: Infinity };

/**
 * Time between two pictures that one step more is worth, s: at 60 a second one step goes with each
 * picture, at 24 three, and a tablet a third as fast as the machine this was tried on keeps pace.
 */
const STEP_S = 0.012;
/** After a gap no more than so many: pictures that queued up in it want their turn. */
const MOST_STEPS = 4;

/** A camera does not wait: what its pictures leave over. */
export function cameraPace(elapsedS: number): Pace {
  const steps = Math.max(1, Math.min(MOST_STEPS, Math.floor(elapsedS / STEP_S)));
  return { steps, again: 1 + steps };
}
