import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import { readReading } from '../contract/readReading.ts';
import type { Reading } from '../contract/reading.ts';
import { readSetup, type SweepSetup } from '../contract/setup.ts';
import type { NoticeCode } from '../contract/notice.ts';

/** A sweep's files, told apart and checked. */
export interface ChosenSweep {
  readonly film: File;
  readonly setup: SweepSetup;
  readonly earlier: Reading | null;
}

/** Larger than any setup or reading, smaller than any film of a turn: 16 MB. */
const LARGEST_JSON_BYTES = 16 * 1024 * 1024;

/**
 * Tells apart film, setup and earlier reading by what is in them: a JSON file by its `format`, all
 * else counts as film, which the worker then tries to read.
 */
export async function sortChosenFiles(
  files: readonly File[],
): Promise<Outcome<ChosenSweep, NoticeCode>> {
  const films: File[] = [];
  let setup: SweepSetup | null = null;
  let earlier: Reading | null = null;
  for (const file of files) {
    if (!looksLikeJson(file)) {
      films.push(file);
      continue;
    }
    const json = parsedJson(await file.text());
    if (json === undefined) {
      const evidence = { where: 'the whole file', problem: 'it is not JSON', file: file.name };
      return failed(isNamedSetup(file) ? 'setup-invalid' : 'setup-unreadable', evidence);
    }
    const format = formatOf(json);
    if (format === 'tiltsweep.reading/1') {
      const reading = readReading(json);
      if (!reading.ok)
        return failed('earlier-sweep-missing', { ...reading.failure.evidence, file: file.name });
      earlier = reading.value;
    } else if (format === 'tiltsweep.setup/1' || isNamedSetup(file)) {
      const read = readSetup(json);
      if (!read.ok) return failed('setup-invalid', { ...read.failure.evidence, file: file.name });
      setup = read.value;
    } else {
      return failed('setup-unreadable', { file: file.name });
    }
  }
  const [film, ...more] = films;
  if (!film) return failed('film-missing', {});
  if (more.length > 0) return failed('film-several', { first: film.name, second: more[0]!.name });
  if (film.size === 0) return failed('film-empty', { file: film.name });
  if (!setup) return failed('setup-missing', { file: film.name });
  return succeeded({ film, setup, earlier });
}

function looksLikeJson(file: File): boolean {
  const named = file.name.toLowerCase().endsWith('.json') || file.type === 'application/json';
  return named && file.size <= LARGEST_JSON_BYTES;
}

function isNamedSetup(file: File): boolean {
  return file.name.toLowerCase().endsWith('.setup.json');
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function formatOf(json: unknown): unknown {
  return typeof json === 'object' && json !== null && 'format' in json ? json.format : undefined;
}
