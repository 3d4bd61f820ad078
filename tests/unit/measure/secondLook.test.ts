import { describe, expect, it } from 'vitest';

import type { Lean } from '../../../src/measure/edge/leanFit.ts';
import { edgeAskewMm, secondLook } from '../../../src/measure/sweep/secondLook.ts';
import type { SolvedGeometry } from '../../../src/measure/sweep/solvedSweep.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';
import type { WheelView } from '../../../src/measure/sweep/wheelView.ts';
import { SHED_POSE, shedView } from '../../fakes/shedView.ts';

const EDGE_MM = 4;
const UPRIGHT: Lean = { liftMm: 0, toward: 0, across: 0 };
const FIRST = shedView();

function recordingOf(lean: Lean = UPRIGHT, outline?: object): SweepRecording {
  const edge = { heightMm: EDGE_MM, lean, ...(outline ? { outline } : {}) };
  return { view: FIRST, edge } as unknown as SweepRecording;
}

function geometryOf(view: WheelView, lean: Lean = UPRIGHT): SolvedGeometry {
  const edge = { heightMm: EDGE_MM, lean };
  const observations = { offsetMm: EDGE_MM, leans: [lean] };
  return { view, edge, observations, closure: null } as unknown as SolvedGeometry;
}

const rolled = (deg: number) => shedView({ ...SHED_POSE, rollDeg: SHED_POSE.rollDeg + deg });
const read = () => false;
const refused = () => true;
const neverAsked = () => {
  throw new Error('whether it was refused does not count here');
};

describe('secondLook', () => {
  it('lets a first look stand that the whole sweep agrees with', () => {
    expect(secondLook(recordingOf(), geometryOf(FIRST), null, neverAsked)).toBeNull();
  });

  it('is taken for a view that is far off, whatever was read', () => {
    // A roll of a degree lifts one flank by 3.5 mm and lowers the other.
    const sight = secondLook(recordingOf(), geometryOf(rolled(1.5)), null, neverAsked);
    expect(sight?.pose.rollDeg).toBe(SHED_POSE.rollDeg + 1.5);
  });

  it('is taken for a little only where there is no reading', () => {
    const bent = geometryOf(rolled(0.7));
    expect(secondLook(recordingOf(), bent, null, read)).toBeNull();
    expect(secondLook(recordingOf(), bent, null, refused)).not.toBeNull();
    const askew = geometryOf(FIRST, { ...UPRIGHT, across: 0.015 });
    expect(secondLook(recordingOf(), askew, null, read)).toBeNull();
    expect(secondLook(recordingOf(), askew, null, refused)).not.toBeNull();
  });

  it('is taken of a recording made anew where pictures are missing, else only without a reading', () => {
    const same = geometryOf(FIRST);
    expect(secondLook(recordingOf(), same, 'closely', read)).toBeNull();
    expect(secondLook(recordingOf(), same, 'closely', refused)).not.toBeNull();
    expect(secondLook(recordingOf(), same, 'coarsely', neverAsked)).not.toBeNull();
  });

  it('is never taken of an outline', () => {
    const outlined = recordingOf(UPRIGHT, {});
    expect(secondLook(outlined, geometryOf(rolled(5)), 'coarsely', neverAsked)).toBeNull();
  });
});

describe('edgeAskewMm', () => {
  it('is what a lean lifts the flanks by beside the middle', () => {
    const { gainMm } = FIRST.basis;
    const rimMm = gainMm[gainMm.length >> 1];
    const across = edgeAskewMm(recordingOf(), geometryOf(FIRST, { ...UPRIGHT, across: 0.01 }));
    expect(across).toBeCloseTo(0.01 * rimMm * Math.sin((35 * Math.PI) / 180), 0);
    const toward = edgeAskewMm(recordingOf(), geometryOf(FIRST, { ...UPRIGHT, toward: 0.01 }));
    expect(toward).toBeCloseTo(0.01 * rimMm * (1 - Math.cos((35 * Math.PI) / 180)), 0);
  });

  it('is nothing where both looks have the same lean, and a lift of the whole edge is none', () => {
    const lean = { ...UPRIGHT, toward: 0.02, across: -0.02 };
    const geometry = geometryOf(FIRST, lean);
    expect(edgeAskewMm(recordingOf(lean), geometry)).toBeCloseTo(0, 6);
    const lifted = { ...geometry, observations: { ...geometry.observations, offsetMm: 7 } };
    expect(edgeAskewMm(recordingOf(lean), lifted)).toBeLessThan(0.2);
  });
});
