/**
 * One camera picture as planes of luma and colour difference (BT.601, 8 bit), as decoders and
 * cameras deliver it: no conversion to RGB is made before it is known which pixels matter.
 *
 * Pixels: x right, y down, the centre of the top-left pixel is (0.5, 0.5).
 * I420 has `chromaStep` 1 and separate planes; NV12 has `chromaStep` 2 and `v` starting one byte
 * after `u`; pictures with full colour resolution have `chromaShift` 0.
 */
export interface YuvPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Presentation time on the source's own clock, seconds; steps may be uneven. */
  readonly timeS: number;
  readonly y: Uint8Array;
  readonly yStride: number;
  readonly u: Uint8Array;
  readonly v: Uint8Array;
  readonly chromaStride: number;
  readonly chromaStep: 1 | 2;
  /** Halvings of the chroma planes in both directions: 1 for 4:2:0, 0 for 4:4:4. */
  readonly chromaShift: 0 | 1;
  /** True when luma uses 0–255, false for 16–235 (video range). */
  readonly fullRange: boolean;
}
