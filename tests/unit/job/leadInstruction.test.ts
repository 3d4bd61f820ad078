import { describe, expect, it } from 'vitest';

import { leadInstruction, type LeadInstruction } from '../../../src/job/leadInstruction.ts';

const at = (turnDeg: number | null, markSeen = true) =>
  ({ stage: 'following', turnDeg, markSeen }) as const;

describe('leading a spot of the wheel to the sight', () => {
  it('the turn it asks for brings the spot to azimuth 0', () => {
    for (let target = 0; target < 360; target += 17) {
      for (let turn = -800; turn < 800; turn += 61) {
        const say = leadInstruction(target, at(turn), null);
        if (say.kind !== 'turn' && say.kind !== 'at-spot') throw new Error(say.kind);
        expect(Math.abs(say.byDeg)).toBeLessThanOrEqual(180);
        const azimuthDeg = target + turn + say.byDeg;
        expect(Math.abs(Math.sin((azimuthDeg * Math.PI) / 360))).toBeLessThan(1e-9);
      }
    }
  });

  it('says clockwise as positive', () => {
    expect(leadInstruction(323, at(0), null)).toEqual({ kind: 'turn', byDeg: 37 });
    expect(leadInstruction(37, at(0), null)).toEqual({ kind: 'turn', byDeg: -37 });
  });

  it('knows no turn before the tape, nor while the wheel is not seen', () => {
    expect(leadInstruction(90, at(10, false), null).kind).toBe('find-tape');
    expect(leadInstruction(90, at(null), null).kind).toBe('lost');
    expect(leadInstruction(90, { ...at(10), stage: 'lost' }, null).kind).toBe('lost');
    expect(leadInstruction(90, null, null).kind).toBe('lost');
  });

  it('stays at the spot while the wheel rocks, and leaves it when it is turned on', () => {
    let say: LeadInstruction | null = null;
    const kinds = [-2, -1, -2.5, 2.5, 3.5, 2].map((offDeg) => {
      say = leadInstruction(0, at(offDeg), say);
      return say.kind;
    });
    expect(kinds).toEqual(['turn', 'at-spot', 'at-spot', 'at-spot', 'turn', 'turn']);
  });

  it('keeps its way near half a turn, and changes it when the other is plainly shorter', () => {
    const first = leadInstruction(0, at(-175), null);
    expect(first).toEqual({ kind: 'turn', byDeg: 175 });
    expect(leadInstruction(0, at(-185), first)).toEqual({ kind: 'turn', byDeg: 185 });
    expect(leadInstruction(0, at(-200), first)).toEqual({ kind: 'turn', byDeg: -160 });
  });

  it('asks to turn back when the spot was overrun', () => {
    const before = leadInstruction(0, at(-10), null);
    expect(leadInstruction(0, at(6), before)).toEqual({ kind: 'turn', byDeg: -6 });
  });
});
