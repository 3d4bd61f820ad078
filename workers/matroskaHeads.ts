/**
 * The heads of a Matroska or WebM film's elements, one behind the other: name and length.
 *
 * Source: RFC 8794 (EBML), sections 4 to 6.
 */
export interface Element {
  readonly id: number;
  /** Where its length is written, and where what stands in it begins: bytes from the file's start. */
  readonly sizeAt: number;
  readonly dataAt: number;
  /** Bytes; null when the file does not say how long it is. */
  readonly size: number | null;
}

/** The element that begins at a place; null where none can. */
export type ReadHead = (at: number) => Promise<Element | null>;

/** The longest head of an element: four bytes of name, eight of size. */
const HEAD_BYTES = 12;
/** Heads are read together with what lies between them: some eight pictures of a film as tablets write it. */
const WINDOW_BYTES = 262_144;
/** Five hours at 60 pictures a second, one element each: the end of a walk over what is no film. */
const MOST_ELEMENTS = 1_000_000;

/** Reads heads in the order in which they lie in the file. */
export function createHeadReader(file: Blob): ReadHead {
  let window = new Uint8Array(0);
  let windowAt = 0;
  let count = 0;
  return async (at) => {
    if ((count += 1) > MOST_ELEMENTS) return null;
    if (at < windowAt || at + HEAD_BYTES > windowAt + window.length) {
      windowAt = at;
      window = new Uint8Array(await file.slice(at, at + WINDOW_BYTES).arrayBuffer());
    }
    return elementIn(window.subarray(at - windowAt, at - windowAt + HEAD_BYTES), at);
  };
}

/** A length, written in so many bytes: as many as a larger one took. */
export function knownSize(size: number, bytes: number): Uint8Array<ArrayBuffer> {
  const written = new Uint8Array(bytes);
  let rest = size;
  for (let i = bytes - 1; i >= 0; i--) {
    written[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  written[0]! |= 0x80 >> (bytes - 1);
  return written;
}

function elementIn(bytes: Uint8Array, at: number): Element | null {
  const idBytes = lengthOf(bytes[0], 4);
  const sizeBytes = idBytes === null ? null : lengthOf(bytes[idBytes], 8);
  if (idBytes === null || sizeBytes === null || bytes.length < idBytes + sizeBytes) return null;
  const id = numberOf(bytes.subarray(0, idBytes));
  const marked = bytes.slice(idBytes, idBytes + sizeBytes);
  marked[0]! &= 0xff >> sizeBytes;
  const isKnown = marked.some((byte, i) => byte !== (i === 0 ? 0xff >> sizeBytes : 0xff));
  const dataAt = at + idBytes + sizeBytes;
  return { id, dataAt, sizeAt: at + idBytes, size: isKnown ? numberOf(marked) : null };
}

/** A number's first byte says by its leading zeros how many bytes it has. */
function lengthOf(first: number | undefined, most: number): number | null {
  if (first === undefined || first === 0) return null;
  const length = Math.clz32(first) - 23;
  return length > most ? null : length;
}

function numberOf(bytes: Uint8Array): number {
  return bytes.reduce((value, byte) => value * 256 + byte, 0);
}
