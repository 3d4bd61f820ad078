import filmUrl from '../../samples/shed-front-left.mp4?url';
import setupJson from '../../samples/shed-front-left.setup.json';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import { readSetup, type SweepSetup } from '../contract/setup.ts';

/** The built-in sweep: film and setup as they would lie on a disk. */
export async function loadSampleSweep(): Promise<
  Outcome<{ film: Blob; setup: SweepSetup }, 'sample-unreachable' | 'setup-invalid'>
> {
  const setup = readSetup(setupJson);
  if (!setup.ok) return setup;
  try {
    const answer = await fetch(filmUrl);
    if (!answer.ok) return failed('sample-unreachable', { httpStatus: answer.status });
    return succeeded({ film: await answer.blob(), setup: setup.value });
  } catch (error) {
    return failed('sample-unreachable', {
      browser: error instanceof Error ? error.message : String(error),
    });
  }
}
