/**
 * A zip archive of files that are stored as they are (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and
 * 4.3.16). Nothing is compressed: films are that already, traces are noise, and what packing the
 * records would save is not worth the wait. Films are only pointed to, never in memory.
 */
export interface FileToStore {
  /** Plain ASCII. */
  readonly name: string;
  readonly content: Blob | Uint8Array<ArrayBuffer>;
  readonly crc: number;
}

const LOCAL_SIGNATURE = 0x04034b50;
const ENTRY_SIGNATURE = 0x02014b50;
const END_SIGNATURE = 0x06054b50;
const LOCAL_BYTES = 30;
const ENTRY_BYTES = 46;
const END_BYTES = 22;
/** Version 2.0 of the format, which every program reads. */
const VERSION = 20;
/** The first day that the format knows: when the logbook was saved stands in the logbook. */
const FIRST_DAY = 0x21;
/** Sizes and places are 32-bit numbers. */
const MOST_BYTES = 0xffff_ffff;
const MOST_FILES = 0xffff;

/** Throws where the archive would be larger than the format allows, 4 GB. */
export function storedZip(files: readonly FileToStore[], type: string): Blob {
  if (files.length > MOST_FILES) throw new RangeError('too many files for one archive');
  const parts: BlobPart[] = [];
  const directory: BlobPart[] = [];
  let at = 0;
  let directoryBytes = 0;
  for (const { name, content, crc } of files) {
    const bytes = new TextEncoder().encode(name);
    const sizeBytes = content instanceof Blob ? content.size : content.byteLength;
    const file = { bytes, sizeBytes, crc };
    parts.push(localHead(file), bytes, content);
    directory.push(directoryHead(file, at), bytes);
    at += LOCAL_BYTES + bytes.length + sizeBytes;
    directoryBytes += ENTRY_BYTES + bytes.length;
    if (at + directoryBytes > MOST_BYTES) throw new RangeError('too much for one archive');
  }
  const end = head(END_BYTES, END_SIGNATURE, (view) => {
    view.setUint16(8, files.length, true);
    view.setUint16(10, files.length, true);
    view.setUint32(12, directoryBytes, true);
    view.setUint32(16, at, true);
  });
  return new Blob([...parts, ...directory, end], { type });
}

interface Named {
  readonly bytes: Uint8Array;
  readonly sizeBytes: number;
  readonly crc: number;
}

function localHead(file: Named): ArrayBuffer {
  return head(LOCAL_BYTES, LOCAL_SIGNATURE, (view) => setFacts(view, 4, file));
}

function directoryHead(file: Named, localOffset: number): ArrayBuffer {
  return head(ENTRY_BYTES, ENTRY_SIGNATURE, (view) => {
    view.setUint16(4, VERSION, true);
    setFacts(view, 6, file);
    view.setUint32(42, localOffset, true);
  });
}

/** What both heads say of a file in the same order; flags, method and time are 0. */
function setFacts(view: DataView, from: number, { bytes, sizeBytes, crc }: Named): void {
  view.setUint16(from, VERSION, true);
  view.setUint16(from + 8, FIRST_DAY, true);
  view.setUint32(from + 10, crc, true);
  view.setUint32(from + 14, sizeBytes, true);
  view.setUint32(from + 18, sizeBytes, true);
  view.setUint16(from + 22, bytes.length, true);
}

function head(length: number, signature: number, fill: (view: DataView) => void): ArrayBuffer {
  const view = new DataView(new ArrayBuffer(length));
  view.setUint32(0, signature, true);
  fill(view);
  return view.buffer;
}
