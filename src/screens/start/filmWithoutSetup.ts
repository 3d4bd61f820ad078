import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';

/**
 * Whether the chosen files are a film that only lacks its setup. Anything else (no film, an empty
 * one, something that is no video at all) goes to the session, which says what is wrong with it.
 */
export async function filmWithoutSetup(files: readonly File[]): Promise<File | null> {
  const films = files.filter((file) => !isJson(file));
  const [film] = films;
  if (film === undefined || films.length > 1 || film.size === 0) return null;
  if (!looksLikeFilm(new Uint8Array(await film.slice(0, SNIFFED_BYTES).arrayBuffer()))) return null;
  const kinds = await Promise.all(files.filter(isJson).map(formatOf));
  // A broken or foreign JSON file may be the setup: the session has words for that.
  return kinds.every((kind) => kind === READING_FORMAT) ? film : null;
}

const READING_FORMAT = 'tiltsweep.reading/1';
const SNIFFED_BYTES = 12;
/** First box of an ISO base media file (MP4, MOV), at byte 4. */
const ISO_FIRST_BOXES = ['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip'];
/** EBML header of WebM and Matroska files. */
const EBML_START = [0x1a, 0x45, 0xdf, 0xa3];

function looksLikeFilm(firstBytes: Uint8Array): boolean {
  if (EBML_START.every((byte, index) => firstBytes[index] === byte)) return true;
  const box = String.fromCharCode(...firstBytes.slice(4, 8));
  return ISO_FIRST_BOXES.includes(box);
}

function isJson(file: File): boolean {
  return file.type === 'application/json' || file.name.toLowerCase().endsWith('.json');
}

async function formatOf(file: File): Promise<string | null> {
  try {
    const json: unknown = JSON.parse(await file.text());
    const format = (json as { format?: unknown } | null)?.format;
    return typeof format === 'string' ? format : null;
  } catch {
    return null;
  }
}

/** The first file that is a reading; null where none is. */
export async function readingAmong(files: readonly File[]): Promise<File | null> {
  for (const file of files.filter(isJson)) {
    if ((await formatOf(file)) === READING_FORMAT) return file;
  }
  return null;
}

/** The same files with a setup entered by hand beside the film, in place of any other setup. */
export async function withSetupFile(
  files: readonly File[],
  film: File,
  setup: SweepSetup,
): Promise<readonly File[]> {
  const readings: File[] = [];
  for (const file of files) {
    if (isJson(file) && (await formatOf(file)) === READING_FORMAT) readings.push(file);
  }
  const name = `${film.name.replace(/\.[^.]*$/, '')}.setup.json`;
  return [film, jsonFile(name, setup), ...readings];
}

/**
 * The chosen files with what they lack of a sweep: `setup` beside a film that has none, and the
 * reading before it. `ownSetup` tells whether it was needed.
 */
export async function withOwnFiles(
  chosen: readonly File[],
  setup: SweepSetup,
  earlier: AcceptedReading | null,
): Promise<{ readonly files: readonly File[]; readonly ownSetup: boolean }> {
  const film = await filmWithoutSetup(chosen);
  const files = film === null ? chosen : await withSetupFile(chosen, film, setup);
  const kinds = await Promise.all(files.filter(isJson).map(formatOf));
  const isMissing = earlier !== null && !kinds.includes(READING_FORMAT);
  return {
    files: isMissing ? [...files, jsonFile('earlier.reading.json', earlier)] : files,
    ownSetup: film !== null,
  };
}

function jsonFile(name: string, value: unknown): File {
  return new File([JSON.stringify(value)], name, { type: 'application/json' });
}
