import { spawnSync } from 'node:child_process';

import type { YuvPicture } from '../../src/contract/picture.ts';

/**
 * Decodes pictures with the `ffmpeg` on the path: for scripts and tests on films, never for the
 * program itself.
 */
export interface DecodeChoice {
  /** 4:4:4 at full range (stills) or 4:2:0 at video range (films). */
  readonly format: 'yuvj444p' | 'yuv420p' | 'gray';
  /** Frame numbers from 0; default the first. */
  readonly frames?: readonly number[];
  /** Turn by 90°, for lines that run down the picture: row and column change places. */
  readonly transposed?: boolean;
}

export function decodePictures(file: string, choice: DecodeChoice): YuvPicture[] {
  const { widthPx, heightPx } = pictureSize(file);
  const frames = choice.frames ?? [0];
  const select = frames.map((n) => `eq(n\\,${n})`).join('+');
  const filters = [`select='${select}'`, ...(choice.transposed ? ['transpose=0'] : [])];
  const bytes = run('ffmpeg', [
    ...['-v', 'error', '-i', file, '-vf', filters.join(',')],
    ...['-vsync', 'vfr', '-frames:v', String(frames.length)],
    ...['-f', 'rawvideo', '-pix_fmt', choice.format, '-'],
  ]);
  const [w, h] = choice.transposed ? [heightPx, widthPx] : [widthPx, heightPx];
  const each = frameBytes(choice.format, w, h);
  const count = Math.floor(bytes.length / each);
  return Array.from({ length: count }, (_, n) =>
    wrap(bytes.subarray(n * each, (n + 1) * each), choice.format, w, h, n),
  );
}

export function pictureSize(file: string): { widthPx: number; heightPx: number } {
  const show = ['-select_streams', 'v:0', '-show_entries', 'stream=width,height', '-of', 'csv=p=0'];
  const text = run('ffprobe', ['-v', 'error', ...show, file]).toString();
  const [widthPx, heightPx] = text.trim().split(',').map(Number);
  return { widthPx, heightPx };
}

function frameBytes(format: DecodeChoice['format'], w: number, h: number): number {
  if (format === 'gray') return w * h;
  if (format === 'yuvj444p') return 3 * w * h;
  return w * h + 2 * ((w + 1) >> 1) * ((h + 1) >> 1);
}

function wrap(
  data: Uint8Array,
  format: DecodeChoice['format'],
  w: number,
  h: number,
  n: number,
): YuvPicture {
  if (format === 'gray') return pictureOfGrey(data, w, h);
  const shift = format === 'yuv420p' ? 1 : 0;
  const cw = (w + shift) >> shift;
  const ch = (h + shift) >> shift;
  return {
    widthPx: w,
    heightPx: h,
    timeS: n,
    y: data.subarray(0, w * h),
    yStride: w,
    u: data.subarray(w * h, w * h + cw * ch),
    v: data.subarray(w * h + cw * ch, w * h + 2 * cw * ch),
    chromaStride: cw,
    chromaStep: 1,
    chromaShift: shift,
    fullRange: shift === 0,
  };
}

/** A picture with no colour, as if seen through the green channel alone: luma as it is. */
export function pictureOfGrey(grey: Uint8Array, widthPx: number, heightPx: number): YuvPicture {
  const u = new Uint8Array(grey.length);
  const v = new Uint8Array(grey.length);
  for (let i = 0; i < grey.length; i++) {
    u[i] = 128 - 0.331 * grey[i];
    v[i] = 128 - 0.419 * grey[i];
  }
  const planes = { y: grey, yStride: widthPx, u, v, chromaStride: widthPx };
  return { widthPx, heightPx, timeS: 0, ...planes, chromaStep: 1, chromaShift: 0, fullRange: true };
}

/** Writes the picture's luma as PNG, with coloured dots (x, y in pixels) on it. */
export function writeOverlay(
  file: string,
  picture: YuvPicture,
  dots: readonly { x: number; y: number; rgb: readonly [number, number, number] }[],
): void {
  const { widthPx: w, heightPx: h } = picture;
  const rgb = new Uint8Array(3 * w * h);
  for (let row = 0; row < h; row++) {
    for (let col = 0; col < w; col++) {
      const luma = picture.y[row * picture.yStride + col];
      rgb.fill(luma, 3 * (row * w + col), 3 * (row * w + col) + 3);
    }
  }
  for (const dot of dots) {
    const col = Math.floor(dot.x);
    const row = Math.floor(dot.y);
    if (col < 0 || row < 0 || col >= w || row >= h) continue;
    rgb.set(dot.rgb, 3 * (row * w + col));
  }
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'rgb24', '-s', `${w}x${h}`, '-i', '-'];
  run('ffmpeg', ['-v', 'error', '-y', ...raw, file], rgb);
}

function run(command: string, args: readonly string[], input?: Uint8Array): Buffer {
  const done = spawnSync(command, args, {
    maxBuffer: 2 ** 31 - 1,
    ...(input === undefined ? {} : { input }),
  });
  if (done.status !== 0) throw new Error(`${command}: ${done.stderr?.toString() ?? done.error}`);
  return done.stdout;
}
