/**
 * Looks over the tables that say where a film's pictures lie, before the library takes them apart.
 * It fills every table as long as its own count says, at once and without being stoppable: one
 * spoilt byte makes a count of a thousand million, and a page that hangs for half a minute.
 *
 * Source: ISO/IEC 14496-12, section 8.6.1 (`stts`, `ctts`, `stss`), 8.7 (`stsz`, `stz2`, `stsc`, `stco`, `co64`).
 */

/** More pictures than this no film has that anyone opens here: 24 hours at 60 a second, and room. */
const MOST_PICTURES = 6_000_000;
/** A table of contents for so many pictures; a longer one is not read into memory to be checked. */
const MOST_CONTENT_BYTES = 256_000_000;

/** Boxes on the way down to the tables. */
const WAY_DOWN = ['trak', 'mdia', 'minf', 'stbl'];
const HEAD_BYTES = 8;
/** In the place of a length: the length follows the name. */
const LENGTH_OF_64_BITS = 1;
/** Version and flags, before each table's own fields. */
const FLAGS_BYTES = 4;

interface Table {
  readonly entryBytes: number;
  /** Whether the first number of an entry counts pictures. */
  readonly counts: boolean;
}

const TABLES: Readonly<Record<string, Table>> = {
  stts: { entryBytes: 8, counts: true },
  ctts: { entryBytes: 8, counts: true },
  stss: { entryBytes: 4, counts: false },
  stsc: { entryBytes: 12, counts: false },
  stco: { entryBytes: 4, counts: false },
  co64: { entryBytes: 8, counts: false },
};

/** Whether all tables of a `moov` box hold what their counts say; `size` bytes from `at`, head included. */
export async function tablesAreWhole(file: Blob, at: number, size: number): Promise<boolean> {
  if (size > MOST_CONTENT_BYTES) return false;
  const bytes = await file.slice(at + HEAD_BYTES, at + size).arrayBuffer();
  return boxesAreWhole(new DataView(bytes));
}

interface Box {
  readonly name: string;
  readonly inside: DataView;
}

function boxesAreWhole(parent: DataView): boolean {
  const boxes = boxesIn(parent);
  if (boxes === null) return false;
  // A sound track may count every single sample of a long film, and nobody takes it apart.
  const handler = boxes.find(({ name }) => name === 'hdlr')?.inside;
  if (handler && handlerOf(handler) !== 'vide') return true;
  const areWhole = boxes.every(({ name, inside }) => {
    if (WAY_DOWN.includes(name)) return boxesAreWhole(inside);
    if (name === 'stsz') return sizesAreWhole(inside);
    if (name === 'stz2') return smallSizesAreWhole(inside);
    const table = TABLES[name];
    return table === undefined || tableIsWhole(inside, table);
  });
  return areWhole && chunksAreWhole(boxes);
}

/**
 * Up to what is no box: there the library stops too. Null where one is longer than its parent, which the
 * library reads all the same, or has a length of 64 bits, which nothing in a table of contents needs.
 */
function boxesIn({ buffer, byteOffset, byteLength }: DataView): Box[] | null {
  const bytes = new DataView(buffer, byteOffset, byteLength);
  const boxes: Box[] = [];
  let at = 0;
  while (at + HEAD_BYTES <= byteLength) {
    const size = bytes.getUint32(at);
    if (size === LENGTH_OF_64_BITS || at + size > byteLength) return null;
    if (size < HEAD_BYTES) break;
    const inside = new DataView(buffer, byteOffset + at + HEAD_BYTES, size - HEAD_BYTES);
    boxes.push({ name: nameAt(bytes, at + 4), inside });
    at += size;
  }
  return boxes;
}

/** What a track is for: `vide`, `soun` and others. */
function handlerOf(handler: DataView): string | null {
  const at = 2 * FLAGS_BYTES;
  return handler.byteLength < at + 4 ? null : nameAt(handler, at);
}

function nameAt(bytes: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => bytes.getUint8(at + i)));
}

function tableIsWhole(table: DataView, { entryBytes, counts }: Table): boolean {
  const first = FLAGS_BYTES + 4;
  if (table.byteLength < first) return false;
  const entries = table.getUint32(FLAGS_BYTES);
  if (first + entries * entryBytes > table.byteLength) return false;
  if (!counts) return true;
  let pictures = 0;
  for (let i = 0; i < entries; i++) pictures += table.getUint32(first + i * entryBytes);
  return pictures <= MOST_PICTURES;
}

/** One size for all pictures, or one for each. */
function sizesAreWhole(table: DataView): boolean {
  const first = FLAGS_BYTES + 8;
  if (table.byteLength < first) return false;
  const each = table.getUint32(FLAGS_BYTES);
  const pictures = table.getUint32(FLAGS_BYTES + 4);
  return each > 0 ? pictures <= MOST_PICTURES : first + pictures * 4 <= table.byteLength;
}

/** A size of 4, 8 or 16 bits for each picture. */
function smallSizesAreWhole(table: DataView): boolean {
  const first = FLAGS_BYTES + 8;
  if (table.byteLength < first) return false;
  const bits = table.getUint8(FLAGS_BYTES + 3);
  return first + (table.getUint32(FLAGS_BYTES + 4) * bits) / 8 <= table.byteLength;
}

/**
 * No chunk says that it holds more pictures than there are: for each picture the library counts through
 * all of its chunk's. To be asked once the tables by themselves are whole.
 */
function chunksAreWhole(boxes: readonly Box[]): boolean {
  const sizes = boxes.find(({ name }) => name === 'stsz' || name === 'stz2')?.inside;
  const pictures = sizes?.getUint32(FLAGS_BYTES + 4) ?? 0;
  return boxes.every(({ name, inside }) => {
    if (name !== 'stsc') return true;
    const { entryBytes } = TABLES[name]!;
    const entries = inside.getUint32(FLAGS_BYTES);
    for (let i = 0; i < entries; i++) {
      if (inside.getUint32(FLAGS_BYTES + 4 + i * entryBytes + 4) > pictures) return false;
    }
    return true;
  });
}
