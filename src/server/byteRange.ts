/** A part of a file, both ends included, as HTTP counts. */
export interface ByteRange {
  readonly firstByte: number;
  readonly lastByte: number;
}

/**
 * The part that a `Range` header asks for (RFC 9110, section 14): `bytes=0-99`, `bytes=100-`,
 * `bytes=-100`. `null` is the whole file: no header, another unit, several parts, or nonsense, all of
 * which a server may answer in full. `unsatisfiable` starts past the end.
 */
export function byteRange(
  header: string | undefined,
  sizeBytes: number,
): ByteRange | null | 'unsatisfiable' {
  const asked = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header?.trim() ?? '');
  if (!asked) return null;
  const [, from = '', to = ''] = asked;
  if (from === '' && to === '') return null;
  if (from === '') {
    const lengthBytes = Math.min(Number(to), sizeBytes);
    return lengthBytes === 0
      ? 'unsatisfiable'
      : { firstByte: sizeBytes - lengthBytes, lastByte: sizeBytes - 1 };
  }
  const firstByte = Number(from);
  const lastByte = to === '' ? sizeBytes - 1 : Math.min(Number(to), sizeBytes - 1);
  if (to !== '' && Number(to) < firstByte) return null;
  return firstByte >= sizeBytes ? 'unsatisfiable' : { firstByte, lastByte };
}
