/** One page in one engine, as far as the tests need it. */
export interface EnginePage {
  readonly version: string;
  goTo(url: string): Promise<void>;
  /** Runs the body of an async function in the page; what it returns must be JSON. */
  run<T>(body: string): Promise<T>;
  close(): Promise<void>;
}

/** A browser that is only being started takes some seconds to listen, on a busy machine more. */
const START_LIMIT_MS = 30_000;

/** Tries until it works or the browser has had its time to start. */
export async function onceListening<T>(tryIt: () => Promise<T>): Promise<T> {
  const untilMs = performance.now() + START_LIMIT_MS;
  for (;;) {
    try {
      return await tryIt();
    } catch (error) {
      if (performance.now() > untilMs) throw error;
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
  }
}
