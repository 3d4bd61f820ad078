import { Link } from 'wouter';

import type { FilmRecord } from '../../contract/filmShelf.ts';
import type { LogEntry, SweepEntry } from '../../contract/logbook.ts';
import { places } from '../shell/places.ts';
import {
  formatClockAndDeg,
  formatKnownMass,
  formatMass,
  formatMoment,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { amountOf } from './amountOf.ts';
import { formatBytes } from './formatBytes.ts';
import { useReadFilm } from './useReadFilm.ts';

export interface TimelineEntryProps {
  readonly entry: LogEntry;
  readonly units: Units;
  /** The film of a sweep, where it is on the shelf. */
  readonly film: FilmRecord | null;
  readonly onRemove: () => void;
}

/** One thing that was done: when, what came of it, and what can be done with it now. */
export function TimelineEntry({ entry, units, film, onRemove }: TimelineEntryProps) {
  const readFilm = useReadFilm();
  const log = words.logbook;
  return (
    <li className="logbook-row" data-kind={entry.kind}>
      <span className="logbook-line-words">
        <span className="logbook-time">{formatMoment(entry.at)}</span>
        {linesOf(entry, units).map((line) => (
          <strong key={line}>{line}</strong>
        ))}
        {film !== null && <span>{log.filmSize(formatBytes(film.sizeBytes))}</span>}
        {film === null && entry.kind === 'sweep' && entry.filmId !== null && (
          <span>{log.filmGone}</span>
        )}
      </span>
      {entry.kind === 'sweep' && (
        <Link className="plain" href={places.reading(entry.wheelId, entry.id)}>
          {log.openReading}
        </Link>
      )}
      {film !== null && (
        <button
          type="button"
          className="plain"
          onClick={() => void readFilm({ ...film, wheelId: entry.wheelId })}
        >
          {log.filmAgain}
        </button>
      )}
      <button type="button" className="plain" onClick={onRemove}>
        {log.deleteEntry}
      </button>
    </li>
  );
}

function linesOf(entry: LogEntry, units: Units): string[] {
  const log = words.logbook;
  switch (entry.kind) {
    case 'sweep':
      return sweepLines(entry, units);
    case 'weights':
      return entry.added.map(({ massG, angleDeg }) => {
        const where = formatClockAndDeg(angleDeg);
        const mass = formatKnownMass(Math.abs(massG), units);
        return massG < 0 ? log.takenOff(mass, where) : log.added(mass, where);
      });
    case 'by-eye': {
      const said = log.byEye(
        formatKnownMass(entry.massG, units),
        formatClockAndDeg(entry.lightSpotDeg),
      );
      return entry.blind ? [`${said} (${log.blind})`] : [said];
    }
    case 'note':
      return [entry.text];
  }
}

function sweepLines(entry: SweepEntry, units: Units): string[] {
  const amount = amountOf(entry);
  if (amount === null) {
    const refusals = entry.reading.refusals.map(({ code }) => words.notices[code].cause);
    return [words.logbook.sweepRefused, ...refusals];
  }
  const { amountG, plusMinusG, lightSpotDeg } = amount;
  const isCheck = entry.setup.after !== undefined;
  const said = isCheck ? words.logbook.sweepLeft : words.logbook.sweepRead;
  return [said(formatMass(amountG, units, plusMinusG).text, formatClockAndDeg(lightSpotDeg))];
}
