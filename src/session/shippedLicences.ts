import { array, nullable, object, safeParse, string, type InferOutput } from 'valibot';

import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

/** One package that is part of the app, as `src/build/licenceList.ts` writes it. */
const SHIPPED_LICENCE = object({
  name: string(),
  version: string(),
  /** SPDX expression. */
  licence: string(),
  /** Full text with its copyright lines; null for what is in the public domain. */
  text: nullable(string()),
  /** Address of its source. */
  source: nullable(string()),
});

export type ShippedLicence = InferOutput<typeof SHIPPED_LICENCE>;

/** The packages that are part of the app; they are listed when it is built. */
export async function loadShippedLicences(): Promise<
  Outcome<readonly ShippedLicence[], 'licences-unreachable'>
> {
  try {
    const answer = await fetch('./licences.json');
    if (!answer.ok) return failed('licences-unreachable', { httpStatus: answer.status });
    const read = safeParse(array(SHIPPED_LICENCE), await answer.json());
    return read.success ? succeeded(read.output) : failed('licences-unreachable');
  } catch (error) {
    return failed('licences-unreachable', {
      browser: error instanceof Error ? error.message : String(error),
    });
  }
}
