import type { LinePoints } from '../geometry/circleResiduals.ts';

/**
 * Which way the line is bent in the picture. A camera outside of the wheel and above the sheet sees
 * the near side of a level circle: it hangs through, middle below ends, however the camera is
 * rolled within a quarter turn and wherever round the wheel it looks. Bent upward it is the picture
 * that stands on its head.
 */

/** Triples of points whose middle is held against the chord of the outer two. */
const TRIPLES = 200;
/** A triple says something about the bend when it spans this part of the picture's width. */
const LEAST_SPAN = 0.3;
/** So many points, or nothing is said. */
const LEAST_POINTS = 30;
/** Noise alone bends as many triples up as down; stray points and grooves a minority of them. */
const UPWARD_SHARE = 0.8;
/** A line across a third of the picture bends by some per cent of its width; less is straight. */
const LEAST_BEND = 0.004;
/** Steps of an evenly filling sequence in three dimensions (additive recurrence, Roberts 2018, from memory). */
const EVEN_STEPS = [0.8191725134, 0.6710436067, 0.5497004779];

/** True when the pooled line is bent upward, as no upright picture shows it. */
export function bulgesUpward({ xPx, yPx }: LinePoints, widthPx: number): boolean {
  const n = xPx.length;
  if (n < LEAST_POINTS) return false;
  const bends: number[] = [];
  for (let k = 1; k <= TRIPLES; k++) {
    const [a, b, c] = EVEN_STEPS.map((step) => Math.floor(((k * step) % 1) * n)).sort(
      (i, j) => xPx[i] - xPx[j],
    );
    if (xPx[c] - xPx[a] < LEAST_SPAN * widthPx) continue;
    const part = (xPx[b] - xPx[a]) / (xPx[c] - xPx[a]);
    bends.push(yPx[b] - (yPx[a] * (1 - part) + yPx[c] * part));
  }
  if (bends.length < LEAST_POINTS) return false;
  const upward = bends.filter((bend) => bend < 0).length / bends.length;
  bends.sort((p, q) => p - q);
  return upward >= UPWARD_SHARE && bends[bends.length >> 1] < -LEAST_BEND * widthPx;
}
