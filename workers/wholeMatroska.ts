/**
 * What of a Matroska or WebM film can be taken apart. The library looks for the next element byte by
 * byte where one is none that may stand there, and never ends when none follows: one spoilt byte in the
 * last cluster, and the page hangs. So the elements are walked along beforehand, the film is cut where
 * they break off, and an element is put behind it that such a search finds.
 *
 * Source: RFC 8794 (EBML), sections 4 to 6; RFC 9559 (Matroska), section 5.
 */
export interface WholeFilm {
  readonly film: Blob;
  /** True when something was cut off. */
  readonly isCut: boolean;
}

const EBML_HEAD = 0x1a45dfa3;
const SEGMENT = 0x18538067;
const CLUSTER = 0x1f43b675;
/** What may stand in a segment: seek head, info, tracks, cues, attachments, chapters, tags, clusters. */
const IN_SEGMENT = new Set([
  ...[0x114d9b74, 0x1549a966, 0x1654ae6b, 0x1c53bb6b, 0x1941a469, 0x1043a770, 0x1254c367],
  CLUSTER,
]);
/** What may stand in a cluster: time, position, sizes, blocks. */
const IN_CLUSTER = new Set([0xe7, 0x5854, 0xa7, 0xab, 0xa3, 0xa0]);
/** Void and checksum may stand anywhere. */
const ANYWHERE = new Set([0xec, 0xbf]);
/**
 * Empty elements of tags, one behind the other: wherever a search begins in them, it finds the next.
 * Behind the last one four bytes of nothing, so that it is not too near to the end to be found.
 */
const END_MARK = Uint8Array.from([
  ...Array.from({ length: 200 }, () => [0x12, 0x54, 0xc3, 0x67, 0x80]).flat(),
  ...[0xec, 0x82, 0, 0],
]);

/** The longest head of an element: four bytes of name, eight of size. */
const HEAD_BYTES = 12;
/** Heads of small elements are read together. */
const WINDOW_BYTES = 4096;
/** Five hours at 60 pictures a second, one element each: the end of a walk over what is no film. */
const MOST_ELEMENTS = 1_000_000;

interface Element {
  readonly id: number;
  readonly dataAt: number;
  /** Null when the file does not say how long it is. */
  readonly size: number | null;
  readonly sizeAt: number;
}

/** Null for a film of another kind; it is left as it is. */
export async function wholeMatroska(file: Blob): Promise<WholeFilm | null> {
  const headAt = createHeadReader(file);
  const head = await headAt(0);
  if (head?.id !== EBML_HEAD || head.size === null) return null;
  const segment = await headAt(head.dataAt + head.size);
  if (segment?.id !== SEGMENT) return null;
  const end = await endOfWhole(file, headAt, segment.dataAt);
  const film = new Blob([
    file.slice(0, segment.sizeAt),
    // Of unknown length, so that what is put behind it is in it.
    unknownSize(segment.dataAt - segment.sizeAt),
    file.slice(segment.dataAt, end),
    END_MARK,
  ]);
  return { film, isCut: end < file.size };
}

type ReadHead = (at: number) => Promise<Element | null>;

/** Where the first thing stands that may not stand there; the end of the file when all may. */
async function endOfWhole(file: Blob, headAt: ReadHead, from: number): Promise<number> {
  let at = from;
  let isInCluster = false;
  for (let n = 0; n < MOST_ELEMENTS && at < file.size; n++) {
    const element = await headAt(at);
    if (element === null) return at;
    const { id, size, dataAt } = element;
    const isOfSegment = IN_SEGMENT.has(id);
    if (!isOfSegment && !ANYWHERE.has(id) && !(isInCluster && IN_CLUSTER.has(id))) return at;
    if (size === null && id !== CLUSTER) return at;
    // Of a cluster without a length what stands in it is walked along too.
    if (isOfSegment) isInCluster = size === null;
    const next = dataAt + (size ?? 0);
    // A block that breaks off in a cluster without a length would take the cluster with it.
    if (next > file.size && !isOfSegment) return at;
    at = next;
  }
  return Math.min(at, file.size);
}

function createHeadReader(file: Blob): ReadHead {
  let window = new Uint8Array(0);
  let windowAt = 0;
  return async (at) => {
    if (at < windowAt || at + HEAD_BYTES > windowAt + window.length) {
      windowAt = at;
      window = new Uint8Array(await file.slice(at, at + WINDOW_BYTES).arrayBuffer());
    }
    return elementIn(window.subarray(at - windowAt), at);
  };
}

/** Null where no element can begin. */
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

function unknownSize(bytes: number): Uint8Array<ArrayBuffer> {
  const size = new Uint8Array(bytes).fill(0xff);
  size[0] = 0xff >> (bytes - 1);
  return size;
}
