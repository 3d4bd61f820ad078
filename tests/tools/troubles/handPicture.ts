/** A hand and its arm from below, as an RGBA picture. */
interface HandPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgba: Uint8Array;
}

const COLOURS = { skin: [176, 128, 104], dark: [38, 37, 42] } as const;
/** Four fingers side by side: their middle and width as shares of the picture's width, tip as share of its height. */
const FINGERS = [
  [0.2, 0.17, 0.1],
  [0.4, 0.18, 0.02],
  [0.6, 0.18, 0.04],
  [0.8, 0.16, 0.14],
] as const;
/** Where fingers end and the back of the hand begins, share of the height. */
const KNUCKLES = 0.35;

/** Bare (skin) or in a glove (dark), shaded toward its sides as anything round is. */
export function handPicture(
  colour: 'skin' | 'dark',
  widthPx: number,
  heightPx: number,
): HandPicture {
  const rgba = new Uint8Array(4 * widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const round = roundness((column + 0.5) / widthPx, (row + 0.5) / heightPx);
      if (round <= 0) continue;
      const shade = 0.55 + 0.45 * Math.sqrt(round);
      const at = 4 * (row * widthPx + column);
      COLOURS[colour].forEach((value, i) => (rgba[at + i] = Math.round(value * shade)));
      rgba[at + 3] = Math.round(255 * Math.min(1, 12 * round));
    }
  }
  return { widthPx, heightPx, rgba };
}

/** 1 on the middle of finger or arm, 0 at its border and outside. */
function roundness(x: number, y: number): number {
  if (y > KNUCKLES) {
    const half = y > 0.7 ? 0.34 : 0.46;
    return Math.max(0, 1 - ((x - 0.5) / half) ** 2);
  }
  return Math.max(
    0,
    ...FINGERS.map(([middle, width, tip]) => {
      const past = Math.max(0, tip + width / 2 - y) / (width / 2);
      return 1 - ((x - middle) / (width / 2)) ** 2 - past ** 2;
    }),
  );
}
