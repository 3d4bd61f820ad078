import type { YuvPicture } from '../src/contract/picture.ts';
import { AS_STORED, turnedPicture, type Showing } from './turnedPicture.ts';
import { yuvFromRgba } from './yuvFromRgba.ts';

export type YuvCopier = (
  frame: VideoFrame,
  timeS: number,
  showing?: Showing,
) => Promise<YuvPicture>;

/**
 * Makes the copier of frames into {@link YuvPicture}: the decoder's own planes where they are of a
 * known kind, else through RGBA. Every picture lives in the same memory as the one before it, so a
 * picture must be done with before the next is asked for. Does not close the frame.
 */
export function createYuvCopier(): YuvCopier {
  let native = new Uint8Array(0);
  let converted = new Uint8Array(0);
  let turned = new Uint8Array(0);
  return async (frame, timeS, showing = AS_STORED) => {
    let picture: YuvPicture;
    if (isPlanar(frame.format)) {
      native = grown(native, frame.allocationSize());
      picture = planarPicture(frame, timeS, native, await frame.copyTo(native));
    } else {
      const pixels = visibleWidth(frame) * visibleHeight(frame);
      const rgba = await rgbaOf(frame, (bytes) => (native = grown(native, bytes)));
      converted = grown(converted, 3 * pixels);
      yuvFromRgba(rgba, pixels, converted);
      picture = fullColourPicture(frame, timeS, converted);
    }
    if (showing.rotationDeg === 0 && !showing.mirrored) return picture;
    turned = grown(turned, picture.widthPx * picture.heightPx * 3);
    return turnedPicture(picture, showing, turned);
  };
}

function grown(memory: Uint8Array<ArrayBuffer>, bytes: number): Uint8Array<ArrayBuffer> {
  return memory.length >= bytes ? memory : new Uint8Array(bytes);
}

function isPlanar(format: VideoPixelFormat | null): format is 'I420' | 'I420A' | 'NV12' | 'I444' {
  return format === 'I420' || format === 'I420A' || format === 'NV12' || format === 'I444';
}

function visibleWidth(frame: VideoFrame): number {
  return frame.visibleRect?.width ?? frame.codedWidth;
}

function visibleHeight(frame: VideoFrame): number {
  return frame.visibleRect?.height ?? frame.codedHeight;
}

function planarPicture(
  frame: VideoFrame,
  timeS: number,
  memory: Uint8Array,
  layout: readonly PlaneLayout[],
): YuvPicture {
  const [yPlane, uPlane, vPlane] = layout;
  if (!yPlane || !uPlane) throw new Error(`a ${frame.format} frame came without its planes`);
  const interleaved = frame.format === 'NV12';
  return {
    widthPx: visibleWidth(frame),
    heightPx: visibleHeight(frame),
    timeS,
    y: memory.subarray(yPlane.offset),
    yStride: yPlane.stride,
    u: memory.subarray(uPlane.offset),
    v: memory.subarray(interleaved ? uPlane.offset + 1 : vPlane!.offset),
    chromaStride: uPlane.stride,
    chromaStep: interleaved ? 2 : 1,
    chromaShift: frame.format === 'I444' ? 0 : 1,
    // Films that say nothing are in video range: that is what cameras and encoders write.
    fullRange: frame.colorSpace.fullRange ?? false,
  };
}

/** For kinds of frame that are seldom: opaque ones, RGB, more than 8 bits. */
async function rgbaOf(
  frame: VideoFrame,
  memoryFor: (bytes: number) => Uint8Array<ArrayBuffer>,
): Promise<Uint8Array | Uint8ClampedArray> {
  const asRgba = { format: 'RGBA' } as const;
  try {
    const memory = memoryFor(frame.allocationSize(asRgba));
    await frame.copyTo(memory, asRgba);
    return memory;
  } catch {
    // Browsers without conversion in copyTo: draw and read back, slower but always there.
    const width = visibleWidth(frame);
    const height = visibleHeight(frame);
    const context = new OffscreenCanvas(width, height).getContext('2d', {
      willReadFrequently: true,
    });
    if (!context) throw new Error('no 2d canvas in this worker');
    context.drawImage(frame, 0, 0, width, height);
    return context.getImageData(0, 0, width, height).data;
  }
}

function fullColourPicture(frame: VideoFrame, timeS: number, planes: Uint8Array): YuvPicture {
  const widthPx = visibleWidth(frame);
  const heightPx = visibleHeight(frame);
  const pixels = widthPx * heightPx;
  return {
    widthPx,
    heightPx,
    timeS,
    y: planes.subarray(0, pixels),
    yStride: widthPx,
    u: planes.subarray(pixels, 2 * pixels),
    v: planes.subarray(2 * pixels, 3 * pixels),
    chromaStride: widthPx,
    chromaStep: 1,
    chromaShift: 0,
    fullRange: true,
  };
}
