import { describe, expect, it } from 'vitest';

import type { LeadInstruction } from '../../../src/job/leadInstruction.ts';
import { leadBeatS, leadPitchHz, leadWordBetween } from '../../../src/screens/lead/leadSignals.ts';
import { spotInPicture } from '../../../src/screens/lead/spotInPicture.ts';
import { drawnOverlay } from '../../browser/gallery/fixtures.ts';

describe('the tone that leads to the spot', () => {
  it('climbs and quickens all the way, the same from both sides', () => {
    for (let offDeg = 175; offDeg >= 0; offDeg -= 5) {
      expect(leadPitchHz(offDeg)).toBeGreaterThan(leadPitchHz(offDeg + 5));
      expect(leadBeatS(offDeg)).toBeLessThan(leadBeatS(offDeg + 5));
      expect(leadPitchHz(-offDeg)).toBe(leadPitchHz(offDeg));
    }
  });

  it('stays within what a tablet plays and an ear likes', () => {
    expect(leadPitchHz(359)).toBeCloseTo(220);
    expect(leadPitchHz(0)).toBeCloseTo(880);
  });
});

describe('the word while a hand is led', () => {
  const turn = (byDeg: number): LeadInstruction => ({ kind: 'turn', byDeg });

  it('comes when something is new, and not while the hand goes on', () => {
    const way: LeadInstruction[] = [
      { kind: 'find-tape' },
      { kind: 'find-tape' },
      turn(80),
      turn(40),
      turn(19),
      turn(6),
      { kind: 'at-spot', byDeg: 1 },
      { kind: 'at-spot', byDeg: -2 },
      turn(-5),
      { kind: 'lost' },
    ];
    const told = way.map((now, i) => leadWordBetween(way[i - 1] ?? null, now));
    expect(told).toEqual([
      'find-tape',
      null,
      'turn',
      null,
      'near',
      null,
      'here',
      null,
      'turn',
      'lost',
    ]);
  });

  it('says the way again when it is the other one', () => {
    expect(leadWordBetween(turn(30), turn(-30))).toBe('turn');
  });
});

describe('the spot’s way in the picture', () => {
  const overlay = drawnOverlay('green');

  it('leads along the edge from the sight to the spot, clockwise to the left', () => {
    const way = spotInPicture(overlay, 31)!;
    expect(way.spotPx!.xPx).toBeLessThan(overlay.sightPx.xPx);
    expect(way.wayPx[0]!.xPx).toBeCloseTo(640, 0);
    expect(way.wayPx.at(-1)).toEqual(way.spotPx);
    const columns = way.wayPx.map(({ xPx }) => xPx);
    expect(columns).toEqual(columns.toSorted((a, b) => b - a));
    // Between the points at 30° and 32°.
    const at = (deg: number) => 640 - 440 * Math.sin((deg * 1.25 * Math.PI) / 180);
    expect(way.spotPx!.xPx).toBeCloseTo((at(30) + at(32)) / 2, 3);
  });

  it('ends at the side of the picture while the spot is round the wheel', () => {
    const way = spotInPicture(overlay, -140)!;
    expect(way.spotPx).toBeNull();
    expect(way.wayPx.at(-1)!.xPx).toBeGreaterThan(1000);
  });

  it('is none where the overlay does not say where its points stand', () => {
    const { edgeAzimuthDeg: _, ...without } = overlay;
    expect(spotInPicture(without, 10)).toBeNull();
  });
});
