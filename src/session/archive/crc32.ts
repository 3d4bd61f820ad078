/** CRC-32 as zip files carry it (ITU-T V.42, polynomial 0xEDB88320 reflected), of pieces in order. */
export function createCrc32(): { add(bytes: Uint8Array): void; value(): number } {
  let crc = -1;
  return {
    add(bytes) {
      let rest = crc;
      for (let i = 0; i < bytes.length; i++) rest = TABLE[(rest ^ bytes[i]) & 255] ^ (rest >>> 8);
      crc = rest;
    },
    value: () => (crc ^ -1) >>> 0,
  };
}

export function crc32Of(bytes: Uint8Array): number {
  const crc = createCrc32();
  crc.add(bytes);
  return crc.value();
}

const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});
