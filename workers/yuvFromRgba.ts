/**
 * Luma and colour difference (BT.601, full range, 8 bit) of red, green, blue pixels, as planes of
 * full colour resolution.
 *
 *   Y = 0.299 R + 0.587 G + 0.114 B;  U = 128 + 0.564 (B − Y);  V = 128 + 0.713 (R − Y)
 *
 * in 16-bit fixed point (ITU-R BT.601-7 section 2.5; range as in JFIF 1.02). `rgba` holds
 * `pixels`·4 bytes in the order R, G, B, A; `yuv` takes the planes y, u, v one after another.
 */
export function yuvFromRgba(
  rgba: Uint8Array | Uint8ClampedArray,
  pixels: number,
  yuv: Uint8Array,
): void {
  const u0 = pixels;
  const v0 = 2 * pixels;
  for (let i = 0, at = 0; i < pixels; i++, at += 4) {
    const r = rgba[at]!;
    const g = rgba[at + 1]!;
    const b = rgba[at + 2]!;
    yuv[i] = (19595 * r + 38470 * g + 7471 * b + 32768) >> 16;
    // 255·0.5·65536 + rounding stays under 128·65536 + 127.5·65536: no clamping is needed.
    yuv[u0 + i] = (8388608 - 11058 * r - 21710 * g + 32768 * b + 32767) >> 16;
    yuv[v0 + i] = (8388608 + 32768 * r - 27439 * g - 5329 * b + 32767) >> 16;
  }
}
