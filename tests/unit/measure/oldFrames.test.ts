import { describe, expect, it } from 'vitest';

import { thinOldFrames } from '../../../src/measure/sweep/forgetOldFrames.ts';
import type { FrameRecord, SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';
import { createTurnTracker } from '../../../src/measure/turn/turnTracker.ts';

/** A wheel turned by 0.2° a picture; every tenth picture shows no turn (a hand). */
function follow(recording: SweepRecording, from: number, to: number): void {
  const { frames, turn } = recording;
  for (let i = from; i < to; i++) {
    thinOldFrames(recording);
    const isBlind = i % 10 === 9;
    if (!isBlind) {
      turn.textures.push(Int8Array.of(i % 100));
      turn.timeS.push(i / 60);
      turn.turnDeg.push(turnDegAt(i));
      turn.correlation.push(1);
      if (i % 45 === 0) turn.key = turn.turnDeg.length - 1;
    }
    const turnIndex = isBlind ? null : turn.turnDeg.length - 1;
    frames.push({ timeS: i / 60, turnIndex } as FrameRecord);
  }
}

const turnDegAt = (picture: number): number => picture / 5;

const empty = (): SweepRecording =>
  ({ frames: [] as FrameRecord[], turn: createTurnTracker(1, 1) }) as unknown as SweepRecording;

describe('thinOldFrames', () => {
  it('keeps half an hour at 60 a second in bounded memory, beginning and end included', () => {
    const recording = empty();
    const pictures = 30 * 60 * 60;
    follow(recording, 0, pictures);
    const { frames, turn } = recording;
    expect(frames.length).toBeLessThanOrEqual(4801);
    expect(turn.textures.length).toBeLessThan(5200);
    expect(frames[0]!.timeS).toBe(0);
    expect(frames.at(-1)!.timeS).toBe((pictures - 1) / 60);
    for (const list of [turn.timeS, turn.turnDeg, turn.correlation])
      expect(list.length).toBe(turn.textures.length);
  });

  it('leaves each frame its own turn and the key frame its place', () => {
    const recording = empty();
    follow(recording, 0, 12_000);
    const { frames, turn } = recording;
    expect(frames.length).toBeLessThan(12_000 / 2);
    for (const { timeS, turnIndex } of frames) {
      if (turnIndex === null) continue;
      expect(turn.timeS[turnIndex]).toBe(timeS);
      expect(turn.turnDeg[turnIndex]).toBe(turnDegAt(Math.round(60 * timeS)));
    }
    expect(Math.round(60 * turn.timeS[turn.key]!) % 45).toBe(0);
  });
});
