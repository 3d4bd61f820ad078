import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import type { AcceptedReading, RefusedReading } from '../../../src/contract/reading.ts';
import { readSetup, type SweepSetup } from '../../../src/contract/setup.ts';
import { earlierReadingFor } from '../../../src/session/earlierReading.ts';

function setupOf(name: string): SweepSetup {
  const setup = readSetup(JSON.parse(readFileSync(`samples/${name}.setup.json`, 'utf8')));
  if (!setup.ok) throw new Error(`${name}: not a setup`);
  return setup.value;
}
const first = setupOf('shed-rear-right');
const check = setupOf('shed-rear-right-trial');
const good = { format: 'tiltsweep.reading/1', status: 'ok' } as AcceptedReading;
const refused: RefusedReading = {
  format: 'tiltsweep.reading/1',
  status: 'refused',
  refusals: [],
  turn: null,
};

describe('earlierReadingFor', () => {
  it('hands an earlier reading to a check sweep only', () => {
    expect(earlierReadingFor(check, good)).toEqual({ ok: true, value: good });
    expect(earlierReadingFor(first, good)).toEqual({ ok: true, value: null });
    expect(earlierReadingFor(first, null)).toEqual({ ok: true, value: null });
  });

  it('refuses a check sweep without a good earlier reading and names the sweep', () => {
    for (const [earlier, reading] of [
      [null, 'not among the files'],
      [refused, 'was refused'],
    ] as const) {
      expect(earlierReadingFor(check, earlier)).toEqual({
        ok: false,
        failure: { code: 'earlier-sweep-missing', evidence: { sweep: 'shed-rear-right', reading } },
      });
    }
  });
});
