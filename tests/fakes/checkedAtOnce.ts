import { checkLogbookJson } from '../../src/session/archive/readLogbookJson.ts';

/** The check of a logbook's records without a pause. */
export function checkedAtOnce(json: unknown, traces: Uint8Array) {
  const checking = checkLogbookJson(json, traces);
  for (;;) {
    const step = checking.next();
    if (step.done) return step.value;
  }
}
