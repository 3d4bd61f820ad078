import type { YuvPicture } from '../../src/contract/picture.ts';

/** A line to draw: where its centre runs and how bright and wide it is there. */
interface DrawnLine {
  /** Row of the centre at a column centre, px; NaN draws nothing there. */
  readonly rowPx: (xPx: number) => number;
  /** RMS width, px. */
  readonly widthPx: number | ((xPx: number) => number);
  /** Light in the laser's own channel at the crest, steps above ambient; above 255 it saturates. */
  readonly peak: number;
  readonly colour?: 'green' | 'red';
  /** Part of the light that the other two channels see: lens and filter crosstalk. */
  readonly crosstalk?: number;
}

export interface DrawnScene {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly lines: readonly DrawnLine[];
  /** Ambient colour, 0–255 each; default a dark tyre. */
  readonly ambient?: (xPx: number, yPx: number) => readonly [number, number, number];
  /** Standard deviation of white noise added to luma and to each chroma sample, steps. */
  readonly noise?: number;
  readonly seed?: number;
  readonly chromaShift?: 0 | 1;
  readonly fullRange?: boolean;
}

const TYRE = [60, 60, 60] as const;

/** Draws a scene to BT.601 planes: light is added and clipped at 255, then coded. */
export function drawLaserScene(scene: DrawnScene): YuvPicture {
  const { widthPx: w, heightPx: h } = scene;
  const shift = scene.chromaShift ?? 1;
  const fullRange = scene.fullRange ?? true;
  const luma = new Float64Array(w * h);
  const cw = (w + shift) >> shift;
  const ch = (h + shift) >> shift;
  const blue = new Float64Array(cw * ch);
  const red = new Float64Array(cw * ch);
  const share = 1 / (1 << (2 * shift));
  const rgb: [number, number, number] = [0, 0, 0];
  for (let row = 0; row < h; row++) {
    for (let col = 0; col < w; col++) {
      lightAt(scene, col + 0.5, row + 0.5, rgb);
      const y = 0.299 * rgb[0] + 0.587 * rgb[1] + 0.114 * rgb[2];
      luma[row * w + col] = y;
      const at = (row >> shift) * cw + (col >> shift);
      blue[at] += 0.564 * (rgb[2] - y) * share;
      red[at] += 0.713 * (rgb[0] - y) * share;
    }
  }
  const normal = seededNormal(scene.seed ?? 1);
  const noise = scene.noise ?? 0;
  const code = (from: Float64Array, gain: number, offset: number): Uint8Array =>
    Uint8Array.from(from, (value) => {
      const coded = Math.round(gain * (value + noise * normal()) + offset);
      return Math.min(255, Math.max(0, coded));
    });
  const [lumaGain, lumaOffset, chromaGain] = fullRange ? [1, 0, 1] : [219 / 255, 16, 224 / 255];
  return {
    ...{ widthPx: w, heightPx: h, timeS: 0, yStride: w, chromaStride: cw, chromaStep: 1 },
    ...{ y: code(luma, lumaGain, lumaOffset), u: code(blue, chromaGain, 128) },
    ...{ v: code(red, chromaGain, 128), chromaShift: shift, fullRange },
  };
}

function lightAt(scene: DrawnScene, x: number, y: number, rgb: [number, number, number]): void {
  const ambient = scene.ambient?.(x, y) ?? TYRE;
  for (let c = 0; c < 3; c++) rgb[c] = ambient[c];
  for (const line of scene.lines) {
    const z = y - line.rowPx(x);
    if (Number.isNaN(z)) continue;
    const width = typeof line.widthPx === 'number' ? line.widthPx : line.widthPx(x);
    const light = line.peak * Math.exp(-(z * z) / (2 * width * width));
    const own = line.colour === 'red' ? 0 : 1;
    for (let c = 0; c < 3; c++) rgb[c] += light * (c === own ? 1 : (line.crosstalk ?? 0));
  }
  for (let c = 0; c < 3; c++) if (rgb[c] > 255) rgb[c] = 255;
}

/** The same picture with its chroma planes interleaved, as NV12 delivers them. */
export function asNv12(picture: YuvPicture): YuvPicture {
  const both = new Uint8Array(2 * picture.u.length);
  picture.u.forEach((value, i) => (both[2 * i] = value));
  picture.v.forEach((value, i) => (both[2 * i + 1] = value));
  const chroma = { u: both, v: both.subarray(1), chromaStride: 2 * picture.chromaStride };
  return { ...picture, ...chroma, chromaStep: 2 };
}

/** Standard normal deviates, the same for the same seed (mulberry32, Box–Muller). */
function seededNormal(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
