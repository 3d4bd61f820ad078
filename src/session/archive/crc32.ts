/**
 * CRC-32 as zip files carry it (ITU-T V.42, polynomial 0xEDB88320 reflected), of pieces in order,
 * eight bytes a step: table k has the remainder of a byte that k zero bytes follow (Kounavis and
 * Berry, "Novel table lookup-based algorithms for high-performance CRC generation", 2008).
 */
export function createCrc32(): { add(bytes: Uint8Array): void; value(): number } {
  let crc = -1;
  return {
    add(bytes) {
      crc = remainder(bytes, crc);
    },
    value: () => (crc ^ -1) >>> 0,
  };
}

export function crc32Of(bytes: Uint8Array): number {
  const crc = createCrc32();
  crc.add(bytes);
  return crc.value();
}

const STEP = 8;
const [T0, T1, T2, T3, T4, T5, T6, T7] = tables();

function remainder(bytes: Uint8Array, before: number): number {
  let rest = before;
  let i = 0;
  for (; i + STEP <= bytes.length; i += STEP) {
    rest ^= bytes[i] | (bytes[i + 1] << 8) | (bytes[i + 2] << 16) | (bytes[i + 3] << 24);
    rest =
      T7[rest & 255] ^
      T6[(rest >>> 8) & 255] ^
      T5[(rest >>> 16) & 255] ^
      T4[rest >>> 24] ^
      T3[bytes[i + 4]] ^
      T2[bytes[i + 5]] ^
      T1[bytes[i + 6]] ^
      T0[bytes[i + 7]];
  }
  for (; i < bytes.length; i++) rest = T0[(rest ^ bytes[i]) & 255] ^ (rest >>> 8);
  return rest;
}

function tables(): Int32Array[] {
  const first = Int32Array.from({ length: 256 }, (_, byte) => {
    let rest = byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
    return rest;
  });
  const all = [first];
  while (all.length < STEP) {
    all.push(all.at(-1)!.map((rest) => first[rest & 255] ^ (rest >>> 8)));
  }
  return all;
}
