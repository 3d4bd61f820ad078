import type { LogEntry } from '../../contract/logbook.ts';
import { formatClock, formatKnownMass, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** An entry of the logbook in two short texts: what it is, and what it says. */
export interface EntryText {
  readonly name: string;
  readonly what: string;
}

export function entryText(entry: LogEntry, units: Units): EntryText {
  const { job } = words;
  switch (entry.kind) {
    case 'sweep':
      return {
        name: entry.setup.after === undefined ? job.sweepEntry : job.checkEntry,
        what: sweepText(entry, units),
      };
    case 'weights': {
      const { added } = entry;
      const name = added.every(({ massG }) => massG < 0) ? job.takenOff : job.putOn;
      const each = added.map(({ massG, angleDeg }) =>
        job.at(formatKnownMass(Math.abs(massG), units), formatClock(angleDeg)),
      );
      return { name, what: each.join(', ') };
    }
    case 'by-eye':
      return {
        name: job.eyeEntry,
        what: job.at(formatKnownMass(entry.massG, units), formatClock(entry.lightSpotDeg)),
      };
    case 'note':
      return { name: job.note, what: entry.text };
  }
}

function sweepText({ reading, setup }: Extract<LogEntry, { kind: 'sweep' }>, units: Units): string {
  if (reading.status !== 'ok') return words.job.refused;
  const { amountGmm, lightSpotDeg, ci95 } = reading.unbalance;
  const radiusMm = setup.wheel.weightRadiusMm;
  const [low, high] = ci95.amountGmm;
  const spreadG = Math.max(high - amountGmm, amountGmm - low) / radiusMm;
  const amount = formatMass(amountGmm / radiusMm, units, spreadG).text;
  // Where no side is clearly heavy there is no place to name.
  return ci95.angleDeg === null ? amount : words.job.at(amount, formatClock(lightSpotDeg));
}
