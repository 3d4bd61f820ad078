import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { AZIMUTH_STEP_DEG } from '../../../src/measure/band/treadBand.ts';
import { closeTurn, closeTurnNear } from '../../../src/measure/turn/closedTurn.ts';
import { createTurnTracker, trackTurn } from '../../../src/measure/turn/turnTracker.ts';

const COLUMNS = 401;
const STRIPS = 8;
const FRAME_S = 1 / 12;
/** Fine steps of the drawn tread, a tenth of a column: 0.02°. */
const FINE = 18_000;

/** A tread once round: the same slot every 5° (the trap) and dust that is nowhere twice the same. */
function drawWheel(seed: number, slotShare: number): Float32Array[] {
  const random = seededRandom(seed);
  return Array.from({ length: STRIPS }, () => {
    const dust = Float32Array.from({ length: 720 }, () => 2 * random() - 1);
    return Float32Array.from({ length: FINE }, (_, i) => {
      const deg = (i * 360) / FINE;
      const at = deg * 2;
      const low = Math.floor(at);
      const between = dust[low] * (1 - (at - low)) + dust[(low + 1) % 720] * (at - low);
      const slot = Math.exp(-(((deg % 5) - 2.5) ** 2) / 0.5) - 0.25;
      return 80 * (slotShare * slot + (1 - slotShare) * between);
    });
  });
}

/** What is seen of it at a turn; columns by falling azimuth. `scale` shrinks the seen degrees. */
function view(wheel: Float32Array[], turnDeg: number, noise: () => number, scale = 1): Int8Array {
  const out = new Int8Array(COLUMNS * STRIPS);
  for (let c = 0; c < COLUMNS; c++) {
    const azimuth = ((COLUMNS - 1) / 2 - c) * AZIMUTH_STEP_DEG * scale;
    const angle = (((azimuth - turnDeg) % 360) + 360) % 360;
    const at = Math.floor((angle * FINE) / 360) % FINE;
    for (let s = 0; s < STRIPS; s++) {
      out[s * COLUMNS + c] = Math.round(wheel[s][at] + 12 * (noise() - 0.5)) || 1;
    }
  }
  return out;
}

/** Tracks views at these turns; NaN is a hand before the tread. */
function follow(turns: readonly number[], options: { slotShare?: number; scale?: number } = {}) {
  const wheel = drawWheel(2, options.slotShare ?? 0.6);
  const hand = drawWheel(9, 0);
  const noise = seededRandom(5);
  const tracker = createTurnTracker(COLUMNS, STRIPS);
  const steps = turns.map((turnDeg, i) => {
    const seen = Number.isNaN(turnDeg)
      ? view(hand, 40 * i, noise)
      : view(wheel, turnDeg, noise, options.scale);
    return trackTurn(tracker, seen, i * FRAME_S);
  });
  return { tracker, steps };
}

const ramp = (from: number, to: number, frames: number): number[] =>
  Array.from({ length: frames }, (_, i) => from + ((to - from) * i) / (frames - 1));

describe('turnTracker', () => {
  for (const sense of [1, -1]) {
    it(`sums a turn of sense ${sense} to a few tenths of a degree, past every like pitch`, () => {
      const turns = [...ramp(0, 0, 6), ...ramp(0, sense * 380, 300)];
      const { steps } = follow(turns, { slotShare: 0.8 });
      expect(steps.filter((s) => s === null).length).toBe(0);
      // Forty key frames, each good to a few hundredths.
      const worst = Math.max(...steps.map((s, i) => Math.abs(s!.turnDeg - turns[i])));
      expect(worst).toBeLessThan(0.5);
    });
  }

  it('follows a stop and a way back', () => {
    const turns = [
      ...ramp(0, 60, 50),
      ...ramp(60, 60, 20),
      ...ramp(60, 20, 40),
      ...ramp(20, 90, 60),
    ];
    const { steps } = follow(turns);
    turns.forEach((t, i) => expect(Math.abs((steps[i]?.turnDeg ?? NaN) - t)).toBeLessThan(0.4));
  });

  it('says that it is lost, and finds its place again behind a hand', () => {
    const hidden = new Array<number>(8).fill(NaN);
    const turns = [...ramp(0, 60, 50), ...hidden, ...ramp(71, 110, 40)];
    const { steps } = follow(turns, { slotShare: 0.4 });
    expect(steps.slice(50, 58).every((s) => s === null)).toBe(true);
    turns.slice(58).forEach((t, i) => {
      expect(Math.abs((steps[58 + i]?.turnDeg ?? NaN) - t)).toBeLessThan(0.4);
    });
  });

  // Fails: what matched the hand is gone on from, and the turn stays 3.5° ahead.
  it('is not dragged away for good by a hand before most of the view', () => {
    const turns = [...ramp(0, 60, 50), ...ramp(61.2, 72, 10), ...ramp(73.2, 95, 19)];
    const wheel = drawWheel(2, 0.4);
    const hand = drawWheel(9, 0);
    const noise = seededRandom(5);
    const tracker = createTurnTracker(COLUMNS, STRIPS);
    turns.forEach((turnDeg, i) => {
      const seen = view(wheel, turnDeg, noise);
      if (i >= 50 && i < 60) {
        // It passes the way the wheel turns, a little faster.
        const over = view(hand, turnDeg + 0.6 * (i - 49), noise);
        for (let at = 0; at < seen.length; at++) {
          if (at % COLUMNS < 0.7 * COLUMNS) seen[at] = over[at];
        }
      }
      const step = trackTurn(tracker, seen, i * FRAME_S);
      if (i >= 60) expect(Math.abs((step?.turnDeg ?? NaN) - turnDeg)).toBeLessThan(0.4);
    });
  });

  it('does not guess where only like pitches are in view', () => {
    const turns = [...ramp(0, 60, 50), ...new Array<number>(8).fill(NaN), ...ramp(71, 72, 3)];
    const { steps } = follow(turns, { slotShare: 1 });
    // Every 5° fits as well: no place, rather than a wrong one.
    expect(steps[58] === null || Math.abs(steps[58].turnDeg - 71) < 0.4).toBe(true);
  });

  // Fails: `withoutStanding` takes the standing pattern off cells that are 0 = unknown as well, so
  // that they come out as known and match the same pattern in the key frame.
  it('takes a frame of nothing but unknown cells for no view', () => {
    const wheel = drawWheel(2, 0.6);
    const noise = seededRandom(5);
    const tracker = createTurnTracker(COLUMNS, STRIPS);
    ramp(0, 60, 50).forEach((t, i) => trackTurn(tracker, view(wheel, t, noise), i * FRAME_S));
    const blind = trackTurn(tracker, new Int8Array(COLUMNS * STRIPS), 50 * FRAME_S);
    expect(blind).toBeNull();
  });

  it('learns what stands still and follows the tread under it', () => {
    const wheel = drawWheel(2, 0.5);
    const noise = seededRandom(5);
    const still = seededRandom(77);
    const standing = Int8Array.from({ length: COLUMNS * STRIPS }, () => 50 * (still() - 0.5));
    const tracker = createTurnTracker(COLUMNS, STRIPS);
    const turns = ramp(0, 120, 100);
    const last = turns
      .map((t, i) =>
        trackTurn(
          tracker,
          view(wheel, t, noise).map((v, k) => v + standing[k]),
          i * FRAME_S,
        ),
      )
      .pop();
    expect(Math.abs((last?.turnDeg ?? NaN) - 120)).toBeLessThan(0.6);
  });
});

describe('closeTurn', () => {
  it('finds the scale of degrees that are seen too large or too small', () => {
    for (const scale of [1, 1.02, 0.975]) {
      const { tracker } = follow(ramp(-20, 385, 330), { scale });
      const closure = closeTurn(tracker)!;
      // Seen through wrong degrees, a revolution sums to 360°/scale.
      expect(Math.abs(closure.closureDeg - (360 / scale - 360))).toBeLessThan(0.5);
      expect(Math.abs(closure.scale / scale - 1)).toBeLessThan(0.5 / 360);
      expect(closure.pairs).toBeGreaterThanOrEqual(3);
    }
  });

  // Fails: matches are looked for no farther off than 25°, as they were.
  it('closes a turn that a camera far out sums by a tenth too long', () => {
    for (const scale of [0.92, 0.9]) {
      const closure = closeTurn(follow(ramp(-20, 385, 330), { scale }).tracker)!;
      expect(Math.abs(closure.scale / scale - 1)).toBeLessThan(0.5 / 360);
    }
  });

  it('closes one that is summed longer still where another camera says about how long', () => {
    const { tracker } = follow(ramp(-20, 385, 330), { scale: 0.83 });
    expect(closeTurn(tracker)).toBeNull();
    for (const toldOff of [0.96, 1, 1.04]) {
      const closure = closeTurnNear(tracker, (360 / 0.83) * toldOff)!;
      expect(Math.abs(closure.scale / 0.83 - 1)).toBeLessThan(0.5 / 360);
    }
  });

  it('closes a counter-clockwise turn as well', () => {
    const closure = closeTurn(follow(ramp(10, -390, 330), { scale: 1.02 }).tracker)!;
    expect(Math.abs(closure.scale / 1.02 - 1)).toBeLessThan(0.5 / 360);
  });

  it('closes nothing that was not seen twice, or is the same all round', () => {
    expect(closeTurn(follow(ramp(0, 300, 240)).tracker)).toBeNull();
    // However far off they are looked for.
    expect(closeTurn(follow(ramp(0, 265, 220), { scale: 0.92 }).tracker)).toBeNull();
    expect(closeTurn(follow(ramp(0, 390, 320), { slotShare: 1 }).tracker)).toBeNull();
  });
});
