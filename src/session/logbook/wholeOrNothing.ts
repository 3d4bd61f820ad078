/** What is needed of a transaction that writes. */
interface Writing {
  readonly done: Promise<void>;
  readonly error: DOMException | null;
  abort(): void;
}

/**
 * Does the work in a transaction and waits until it is in storage. When any of it fails, also by a
 * throw before the browser saw it, nothing of it is stored.
 */
export async function wholeOrNothing<T>(writing: Writing, work: () => Promise<T>): Promise<T> {
  const worked = work().catch((error: unknown) => {
    abort(writing);
    throw error;
  });
  try {
    const [value] = await Promise.all([worked, writing.done]);
    return value;
  } catch (error) {
    // What made the transaction fail, rather than that it was broken off.
    throw writing.error ?? error;
  }
}

/** A transaction that has failed by itself cannot be taken back once more. */
export function abort(writing: Pick<Writing, 'abort'>): void {
  try {
    writing.abort();
  } catch {
    // Nothing of it is in storage, which is what was wanted.
  }
}
