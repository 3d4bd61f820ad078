import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { BAND_ROWS, Z_STEP_MM } from '../../../src/measure/band/treadBand.ts';
import { BLOCK_WIDTH_DEG } from '../../../src/measure/edge/blockProfiles.ts';
import { leanBasis } from '../../../src/measure/edge/leanFit.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';
import { standsBeforeTread, treadBesideEdge } from '../../../src/measure/sweep/treadBesideEdge.ts';

const BLOCKS = 21;
const STEP_DEG = 0.5;
const TURN_DEG = 380;

interface Tread {
  /** How far the tread stands above its place beside the edge at a turn, mm. */
  readonly movedMm: (turnDeg: number) => number;
  /** How far neighbouring blocks err, each in its own way in each picture, mm. */
  readonly errMm?: number;
}

/** Noise of each sample beside dust of 1. */
const NOISE = 0.5;

/** Dusty tread that goes by beside an edge that stands. */
function recordingOf({ movedMm, errMm = 0 }: Tread): SweepRecording {
  const random = seededRandom(7);
  const places = Math.round((TURN_DEG + BLOCKS * BLOCK_WIDTH_DEG) / STEP_DEG) + 1;
  const dust = Float32Array.from({ length: places * (BAND_ROWS + 40) }, () => random() - 0.5);
  const dustAt = (place: number, row: number) => {
    const at = place * (BAND_ROWS + 40) + 20;
    const whole = Math.floor(row);
    const smooth = (r: number) => dust[at + r] + dust[at + r + 1] + dust[at + r + 2];
    return smooth(whole) + (row - whole) * (smooth(whole + 1) - smooth(whole));
  };
  const turnDeg = Array.from({ length: TURN_DEG / STEP_DEG }, (_, i) => i * STEP_DEG);
  const frames = turnDeg.map((deg, turnIndex) => {
    const profiles = new Float32Array(BLOCKS * BAND_ROWS);
    const errors = [random() - 0.5, random() - 0.5].map((part) => 2 * part * errMm);
    for (let b = 0; b < BLOCKS; b++) {
      const place = Math.round((TURN_DEG + b * BLOCK_WIDTH_DEG - deg) / STEP_DEG);
      for (let r = 0; r < BAND_ROWS; r++) {
        const shown = dustAt(place, r + (movedMm(deg) + errors[b % 2]) / Z_STEP_MM);
        profiles[b * BAND_ROWS + r] = shown + NOISE * (random() - 0.5);
      }
    }
    return { profiles, turnIndex, lean: { lean: { liftMm: 0, toward: 0, across: 0 } } };
  });
  const azimuthsDeg = Float64Array.from({ length: BLOCKS }, (_, b) => (10 - b) * BLOCK_WIDTH_DEG);
  const basis = leanBasis(azimuthsDeg, new Float64Array(BLOCKS).fill(300));
  const edge = { heightMm: 12, lean: { liftMm: 0, toward: 0, across: 0 } };
  return {
    ...{ frames, edge, tilt: { blocks: BLOCKS, basis }, turn: { turnDeg } },
  } as unknown as SweepRecording;
}

const still = () => 0;
const rocking = (turnDeg: number) => Math.sin(turnDeg / 9);

describe('tread beside an edge that stands', () => {
  it('refuses a border that the tread moves past, by how far it does', () => {
    const recording = recordingOf({ movedMm: rocking });
    const { movedMm, agreement } = treadBesideEdge(recording);
    expect(movedMm).toBeGreaterThan(0.5);
    expect(agreement).toBeGreaterThan(0.9);
    const refused = standsBeforeTread(recording);
    expect(refused && !refused.ok && refused.failure.code).toBe('view-blocked');
  });

  it('finds nothing where the tread stands as well', () => {
    const recording = recordingOf({ movedMm: still });
    expect(treadBesideEdge(recording).movedMm).toBeLessThan(0.1);
    expect(standsBeforeTread(recording)).toBeNull();
  });

  it('is not misled where single pairs are wild, each half of the blocks in its own way', () => {
    const recording = recordingOf({ movedMm: still, errMm: 0.9 });
    const { movedMm, pairs, agreement } = treadBesideEdge(recording);
    // Taken at its word this alone would refuse.
    expect(pairs).toBeGreaterThan(40);
    expect(movedMm).toBeGreaterThan(0.25);
    expect(agreement).toBeLessThan(0.3);
    expect(standsBeforeTread(recording)).toBeNull();
  });
});
