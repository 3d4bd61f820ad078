import type { YuvPicture } from '../../src/contract/picture.ts';

/**
 * Ways to spoil good pictures (I420, full range), as cameras, hands and films do. Each returns a
 * fresh picture and leaves its own alone, so that one drawn sweep serves many tests.
 */

/** Every sample by its own value; `atRow`, `atColumn` in pixels of its plane. */
function eachSample(
  plane: Uint8Array,
  stride: number,
  value: (sample: number, atRow: number, atColumn: number) => number,
): Uint8Array {
  const out = new Uint8ClampedArray(plane.length);
  for (let i = 0; i < plane.length; i++) {
    out[i] = value(plane[i], Math.floor(i / stride), i % stride);
  }
  return new Uint8Array(out.buffer);
}

/** Each plane with its rows and columns read from elsewhere in it; border samples repeat. */
function rearranged(
  picture: YuvPicture,
  from: (row: number, column: number, rows: number, columns: number, halved: number) => number,
): YuvPicture {
  const plane = (samples: Uint8Array, columns: number, rows: number, halved: number) =>
    eachSample(
      samples,
      columns,
      (_, row, column) => samples[from(row, column, rows, columns, halved)],
    );
  const { widthPx, heightPx, chromaStride } = picture;
  return {
    ...picture,
    y: plane(picture.y, widthPx, heightPx, 1),
    u: plane(picture.u, chromaStride, heightPx >> 1, 2),
    v: plane(picture.v, chromaStride, heightPx >> 1, 2),
  };
}

export function mirrored(picture: YuvPicture): YuvPicture {
  return rearranged(picture, (row, column, _, columns) => row * columns + columns - 1 - column);
}

export function headDown(picture: YuvPicture): YuvPicture {
  return rearranged(
    picture,
    (row, column, rows, columns) => (rows - 1 - row) * columns + columns - 1 - column,
  );
}

export function upsideDown(picture: YuvPicture): YuvPicture {
  return rearranged(picture, (row, column, rows, columns) => (rows - 1 - row) * columns + column);
}

/** All moved by whole pixels, right and down. */
export function shifted(picture: YuvPicture, rightPx: number, downPx: number): YuvPicture {
  const inside = (at: number, count: number) => Math.max(0, Math.min(count - 1, at));
  return rearranged(
    picture,
    (row, column, rows, columns, halved) =>
      inside(row - Math.round(downPx / halved), rows) * columns +
      inside(column - Math.round(rightPx / halved), columns),
  );
}

/** Light times a gain, as a camera's own exposure does; colour goes with it. */
export function brighter(picture: YuvPicture, gain: number): YuvPicture {
  const chroma = (plane: Uint8Array) =>
    eachSample(plane, picture.chromaStride, (c) => 128 + gain * (c - 128));
  return {
    ...picture,
    y: eachSample(picture.y, picture.widthPx, (y) => gain * y),
    u: chroma(picture.u),
    v: chroma(picture.v),
  };
}

/** White balance off: colour differences of grey, steps, in proportion to its luma (128 = full). */
export function tinted(picture: YuvPicture, u: number, v: number): YuvPicture {
  const { widthPx, chromaStride } = picture;
  const cast = (plane: Uint8Array, step: number) =>
    eachSample(
      plane,
      chromaStride,
      (c, row, column) => c + (step * picture.y[2 * row * widthPx + 2 * column]) / 128,
    );
  return { ...picture, u: cast(picture.u, u), v: cast(picture.v, v) };
}

/** No laser any more: its colour and the luma that came with it are taken away. */
export function withoutLaser(picture: YuvPicture): YuvPicture {
  const { widthPx, chromaStride } = picture;
  // Green light has 1.40 of luma for one step of V (BT.601: 0.587 to −0.419).
  const glow = (row: number, column: number) =>
    Math.max(0, 128 - picture.v[(row >> 1) * chromaStride + (column >> 1)]);
  const dark = (plane: Uint8Array) =>
    eachSample(plane, chromaStride, (c, row, column) =>
      picture.u[row * chromaStride + column] < 122 && picture.v[row * chromaStride + column] < 122
        ? 128
        : c,
    );
  return {
    ...picture,
    y: eachSample(
      picture.y,
      widthPx,
      (y, row, column) => y - (glow(row, column) > 6 ? 1.4 * glow(row, column) : 0),
    ),
    u: dark(picture.u),
    v: dark(picture.v),
  };
}

/** Something dull in front of the picture's columns from … to (shares of the width). */
export function covered(picture: YuvPicture, from: number, to: number): YuvPicture {
  const hide = (plane: Uint8Array, stride: number, value: number) =>
    eachSample(plane, stride, (c, _, column) =>
      column >= from * stride && column < to * stride ? value : c,
    );
  return {
    ...picture,
    y: hide(picture.y, picture.widthPx, 120),
    u: hide(picture.u, picture.chromaStride, 116),
    v: hide(picture.v, picture.chromaStride, 142),
  };
}

/**
 * The same with a pattern of its own that moves with its right border, luma up and down by so much: cloth
 * in folds.
 */
export function sleeved(picture: YuvPicture, from: number, to: number, folds = 25): YuvPicture {
  const { widthPx } = picture;
  const under = covered(picture, from, to);
  const y = under.y.map((luma, i) => {
    const x = i % widthPx;
    if (x < from * widthPx || x >= to * widthPx) return luma;
    const inward = to * widthPx - x;
    return 90 + folds * Math.sin(0.13 * inward) * Math.cos((0.17 * i) / widthPx + 0.03 * inward);
  });
  return { ...under, y };
}

/** A plain card before all of the picture above or below a border that runs at its own row in each column. */
export function boarded(
  picture: YuvPicture,
  side: 'above' | 'below',
  borderPx: (column: number) => number,
  luma: number,
): YuvPicture {
  const hide = (plane: Uint8Array, stride: number, halved: number, value: number) =>
    eachSample(plane, stride, (c, row, column) => {
      // Borders of a picture are soft by about a pixel.
      const below = Math.min(1, Math.max(0, row + 0.5 - borderPx(halved * column) / halved + 0.5));
      const share = side === 'below' ? below : 1 - below;
      return c + share * (value - c);
    });
  return {
    ...picture,
    y: hide(picture.y, picture.widthPx, 1, luma),
    u: hide(picture.u, picture.chromaStride, 2, 122),
    v: hide(picture.v, picture.chromaStride, 2, 134),
  };
}

/** The same view at another time. */
export function atTime(picture: YuvPicture, timeS: number): YuvPicture {
  return { ...picture, timeS };
}
