import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { createTurnTracker, type TurnTracker } from '../../../src/measure/turn/turnTracker.ts';
import { witnessTurn } from '../../../src/measure/turn/turnWitness.ts';

/**
 * A tread of blocks 5° long that differ as blocks do: 60 % the same from pitch to pitch, the rest
 * dust and wear. The tracker's turns are set, as a slip by one pitch would leave them.
 */
const [COLUMNS, STRIPS, PER_TURN] = [501, 11, 1800];

function followedTurn(slipDeg: number, slipAt: number): TurnTracker {
  const random = seededRandom(4);
  const wheel = Array.from({ length: STRIPS }, () => {
    const own = Float32Array.from({ length: PER_TURN }, () => random() - 0.5);
    return own.map(
      (_, c) =>
        own[c] + own[(c + 1) % PER_TURN] + own[(c + 2) % PER_TURN] + ((c % 25) - 12 > 7 ? 1.2 : 0),
    );
  });
  const tracker = createTurnTracker(COLUMNS, STRIPS);
  for (let i = 0; i <= 390; i++) {
    const texture = new Int8Array(STRIPS * COLUMNS);
    for (let k = 0; k < STRIPS; k++) {
      for (let c = 0; c < COLUMNS; c++) {
        texture[k * COLUMNS + c] = Math.round(40 * wheel[k][(c + 5 * i) % PER_TURN]) || 1;
      }
    }
    tracker.textures.push(texture);
    tracker.timeS.push(i / 13);
    tracker.turnDeg.push(i + (i >= slipAt ? slipDeg : 0));
  }
  return tracker;
}

describe('the second witness of the turn', () => {
  it('has nothing to say against a turn that was followed', () => {
    expect(witnessTurn(followedTurn(0, 0)).slipDeg).toBe(0);
  });

  it('finds a slip by one pitch either way, wherever it is, to its size and time', () => {
    for (const [slipDeg, slipAt] of [
      [5, 60],
      [-5, 200],
      [5, 350],
    ]) {
      const witness = witnessTurn(followedTurn(slipDeg, slipAt));
      expect(Math.abs(witness.slipDeg + slipDeg)).toBeLessThan(0.5);
      // Views are 4° apart, and the pairs over them 30° at most.
      expect(Math.abs(witness.timeS - slipAt / 13)).toBeLessThan(30 / 13);
    }
  });
});
