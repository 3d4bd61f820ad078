import { createHeadReader, knownSize, type Element, type ReadHead } from './matroskaHeads.ts';

/**
 * What of a Matroska or WebM film can be taken apart. The library looks for the next element byte by
 * byte where it meets one that may not stand there, and never ends where that search comes within eight
 * bytes of the film's end: one spoilt byte, and the page hangs. So the elements are walked along
 * beforehand, those in clusters too, and the film is put together anew of what is whole: what a film
 * says of itself, then its clusters up to where they break off. Tables that say where something lies
 * (seek head, cues) are left out, for they may point anywhere, and nobody leaps about in a sweep.
 *
 * Source: RFC 9559 (Matroska), section 5.
 */
export interface WholeFilm {
  readonly film: Blob;
  /** True when it breaks off. */
  readonly isCut: boolean;
}

const EBML_HEAD = 0x1a45dfa3;
const SEGMENT = 0x18538067;
const CLUSTER = 0x1f43b675;
const CLUSTER_NAME_BYTES = 4;
const LONGEST_SIZE_BYTES = 8;
/** What a film says of itself: length and units, tracks. */
const SAID_OF_ITSELF = new Set([0x1549a966, 0x1654ae6b]);
/** Void and checksum may stand anywhere. */
const ANYWHERE = [0xec, 0xbf];
/** What may stand in a segment: that, clusters, and seek head, cues, attachments, chapters, tags. */
const IN_SEGMENT = new Set([
  ...[...SAID_OF_ITSELF, CLUSTER],
  ...[0x114d9b74, 0x1c53bb6b, 0x1941a469, 0x1043a770, 0x1254c367],
]);
/** What may stand in a cluster: time, silent tracks, position, size before, blocks. */
const IN_CLUSTER = new Set([0xe7, 0x5854, 0xa7, 0xab, 0xa3, 0xa0, 0xaf, ...ANYWHERE]);

/** From one byte of the file up to another. */
interface Span {
  readonly from: number;
  readonly end: number;
}

/** Null for a film of another kind; it is left as it is. */
export async function wholeMatroska(file: Blob): Promise<WholeFilm | null> {
  const headAt = createHeadReader(file);
  const head = await headAt(0);
  if (head?.id !== EBML_HEAD || head.size === null) return null;
  const headEnd = head.dataAt + head.size;
  const segment = await headAt(headEnd);
  // Its head alone is no film to the library either; more of it might be searched through.
  if (segment?.id !== SEGMENT) return { film: file.slice(0, headEnd), isCut: true };
  const { said, clusters, broken } = await wholeElements(file, headAt, segment.dataAt);
  const inside = new Blob([
    ...[...said, ...clusters].map(({ from, end }) => file.slice(from, end)),
    ...(broken?.of ? partsOfBroken(file, broken.of, broken.at) : []),
  ]);
  const size = knownSize(inside.size, LONGEST_SIZE_BYTES);
  const film = new Blob([file.slice(0, segment.sizeAt), size, inside]);
  return { film, isCut: broken !== null };
}

interface WholeElements {
  readonly said: readonly Span[];
  readonly clusters: readonly Span[];
  /** Where the elements break off, and in which cluster. */
  readonly broken: { readonly at: number; readonly of: Element | null } | null;
}

async function wholeElements(file: Blob, headAt: ReadHead, from: number): Promise<WholeElements> {
  const said: Span[] = [];
  const clusters: Span[] = [];
  let at = from;
  while (at < file.size) {
    const element = await headAt(at);
    if (element?.id === CLUSTER) {
      const { end, isWhole } = await walkCluster(file, headAt, element);
      if (!isWhole) return { said, clusters, broken: { at: end, of: element } };
      addTo(clusters, { from: at, end });
      at = end;
      continue;
    }
    const end = element === null ? null : endOf(element);
    const isKnown = element !== null && (IN_SEGMENT.has(element.id) || isAnywhere(element));
    if (!isKnown || end === null || end > file.size) {
      return { said, clusters, broken: { at, of: null } };
    }
    if (SAID_OF_ITSELF.has(element.id)) addTo(said, { from: at, end });
    at = end;
  }
  return { said, clusters, broken: null };
}

/** Where a cluster ends, or the first thing in it that may not stand there. */
async function walkCluster(
  file: Blob,
  headAt: ReadHead,
  cluster: Element,
): Promise<{ readonly end: number; readonly isWhole: boolean }> {
  const clusterEnd = endOf(cluster);
  const last = Math.min(clusterEnd ?? file.size, file.size);
  let at = cluster.dataAt;
  while (at < last) {
    const element = await headAt(at);
    // One that does not say how long it is ends with the next that stands beside it.
    if (element !== null && clusterEnd === null && IN_SEGMENT.has(element.id)) break;
    const end = element === null || !IN_CLUSTER.has(element.id) ? null : endOf(element);
    if (end === null || end > last) return { end: at, isWhole: false };
    at = end;
  }
  return { end: at, isWhole: clusterEnd === null || clusterEnd <= file.size };
}

const endOf = ({ dataAt, size }: Element): number | null => (size === null ? null : dataAt + size);
const isAnywhere = ({ id }: Element): boolean => ANYWHERE.includes(id);

/** What lies together stays one part. */
function addTo(spans: Span[], { from, end }: Span): void {
  const before = spans.at(-1);
  if (before?.end === from) spans[spans.length - 1] = { from: before.from, end };
  else spans.push({ from, end });
}

/** What of a cluster is whole, with the length that it has now; one that tells none goes on telling none. */
function partsOfBroken(file: Blob, cluster: Element, end: number): BlobPart[] {
  const { sizeAt, dataAt, size } = cluster;
  const from = sizeAt - CLUSTER_NAME_BYTES;
  if (size === null) return [file.slice(from, end)];
  return [
    file.slice(from, sizeAt),
    knownSize(end - dataAt, dataAt - sizeAt),
    file.slice(dataAt, end),
  ];
}
