/**
 * The files of a zip archive, found by its directory at the end (PKWARE APPNOTE 6.3, sections
 * 4.3.12 and 4.3.16), without reading the archive into memory: films in it may be large. Archives
 * over 4 GB and encrypted ones are not read.
 */
export interface ZippedFile {
  readonly name: string;
  readonly isCompressed: boolean;
  readonly sizeBytes: number;
  readonly crc: number;
  /** The bytes as they lie in the archive. */
  readonly stored: Blob;
}

const END_SIGNATURE = 0x06054b50;
const ENTRY_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const END_BYTES = 22;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;
/** An archive's comment may be that long. */
const LONGEST_COMMENT_BYTES = 65_535;
/** A logbook and as many films as anyone keeps; more is no archive of this program. */
const MOST_FILES = 5000;
const STORED = 0;
const DEFLATED = 8;

/** Null when this is no zip archive, or a broken one. */
export async function zipDirectory(archive: Blob): Promise<readonly ZippedFile[] | null> {
  const tail = archive.slice(Math.max(0, archive.size - END_BYTES - LONGEST_COMMENT_BYTES));
  const end = endRecord(new DataView(await tail.arrayBuffer()));
  if (end === null || end.count > MOST_FILES || end.offset + end.sizeBytes > archive.size) {
    return null;
  }
  const directory = archive.slice(end.offset, end.offset + end.sizeBytes);
  const entries = directoryEntries(new DataView(await directory.arrayBuffer()), end.count);
  if (entries === null) return null;
  const files = await Promise.all(entries.map((entry) => located(archive, entry)));
  return files.every((file) => file !== null) ? files : null;
}

interface EndRecord {
  readonly count: number;
  readonly sizeBytes: number;
  readonly offset: number;
}

function endRecord(tail: DataView): EndRecord | null {
  for (let at = tail.byteLength - END_BYTES; at >= 0; at--) {
    if (tail.getUint32(at, true) !== END_SIGNATURE) continue;
    return {
      count: tail.getUint16(at + 10, true),
      sizeBytes: tail.getUint32(at + 12, true),
      offset: tail.getUint32(at + 16, true),
    };
  }
  return null;
}

interface DirectoryEntry extends Omit<ZippedFile, 'stored'> {
  readonly storedBytes: number;
  readonly localOffset: number;
}

function directoryEntries(directory: DataView, count: number): DirectoryEntry[] | null {
  const entries: DirectoryEntry[] = [];
  let at = 0;
  while (entries.length < count) {
    if (at + ENTRY_BYTES > directory.byteLength) return null;
    if (directory.getUint32(at, true) !== ENTRY_SIGNATURE) return null;
    const isEncrypted = (directory.getUint16(at + 8, true) & 1) !== 0;
    const method = directory.getUint16(at + 10, true);
    const nameBytes = directory.getUint16(at + 28, true);
    const extraBytes = directory.getUint16(at + 30, true) + directory.getUint16(at + 32, true);
    const next = at + ENTRY_BYTES + nameBytes + extraBytes;
    if (isEncrypted || (method !== STORED && method !== DEFLATED)) return null;
    if (next > directory.byteLength) return null;
    const name = new Uint8Array(directory.buffer, at + ENTRY_BYTES, nameBytes);
    entries.push({
      name: new TextDecoder().decode(name),
      isCompressed: method === DEFLATED,
      crc: directory.getUint32(at + 16, true),
      storedBytes: directory.getUint32(at + 20, true),
      sizeBytes: directory.getUint32(at + 24, true),
      localOffset: directory.getUint32(at + 42, true),
    });
    at = next;
  }
  return entries;
}

async function located(archive: Blob, entry: DirectoryEntry): Promise<ZippedFile | null> {
  const { localOffset, storedBytes, ...file } = entry;
  const head = await archive.slice(localOffset, localOffset + LOCAL_BYTES).arrayBuffer();
  if (head.byteLength < LOCAL_BYTES) return null;
  const local = new DataView(head);
  if (local.getUint32(0, true) !== LOCAL_SIGNATURE) return null;
  const start = localOffset + LOCAL_BYTES + local.getUint16(26, true) + local.getUint16(28, true);
  if (start + storedBytes > archive.size) return null;
  if (!file.isCompressed && storedBytes !== file.sizeBytes) return null;
  return { ...file, stored: archive.slice(start, start + storedBytes) };
}
