/**
 * Work that may be put aside between its steps, so that a picture that comes meanwhile need not
 * wait: finding a camera takes as long as several pictures last. Each step takes a few milliseconds
 * at most, less than a picture of a camera at 60 a second leaves over.
 */
export type SlicedWork<T> = Generator<undefined, T, undefined>;

/** All of it at once. */
export function finished<T>(work: SlicedWork<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** Work that is done before it begins. */
// oxlint-disable-next-line require-yield -- a generator only for its type
export function* nothingLeft<T>(value: T): SlicedWork<T> {
  return value;
}
