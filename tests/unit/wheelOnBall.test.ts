import { describe, expect, it } from 'vitest';

import type { SweepEntry, WheelRecord } from '../../src/contract/logbook.ts';
import { proposedStand, proposedWheel, wheelLike, wheelOfSetup } from '../../src/job/proposals.ts';
import { withTyre } from '../../src/job/tyreProposal.ts';
import {
  ballsFor,
  behaviourOf,
  depthFromSweeps,
  withBall,
  withCentreDepth,
} from '../../src/job/wheelOnBall.ts';
import { downTiltFromOrientationDeg } from '../../src/quantities/downTilt.ts';
import { acceptedReading, shedSetup } from '../browser/gallery/fixtures.ts';

const NOW = '2026-03-01T08:00:00.000Z';
const wheel = wheelOfSetup('w', shedSetup, NOW);
const entered = (value: number) => ({ value, origin: 'entered' as const });

function valueOf(outcome: ReturnType<typeof withBall>): WheelRecord {
  if (!outcome.ok) throw new Error(outcome.failure.code);
  return outcome.value;
}

describe('a wheel on another ball', () => {
  it('keeps its centre of mass: a smaller ball sits deeper and is steadier', () => {
    const smaller = valueOf(withBall(wheel, entered(60)));
    // Seats above the ball's centre: √(31.75² − 27²) = 16.7052, √(30² − 27²) = 13.0767 mm.
    expect(smaller.pendulumDepthMm.value).toBeCloseTo(8.2 + 16.7052 - 13.0767, 3);
    const back = valueOf(withBall(smaller, entered(63.5)));
    expect(back.pendulumDepthMm.value).toBeCloseTo(8.2, 9);
  });

  it('refuses a ball on which it would tip over, or fall through', () => {
    expect(withBall(wheel, entered(80))).toMatchObject({ failure: { code: 'wheel-tips-over' } });
    expect(withBall(wheel, entered(50))).toMatchObject({ failure: { code: 'ball-through-bore' } });
  });

  it('carries nothing over from a depth that was only assumed', () => {
    const guess = { ...wheel, pendulumDepthMm: { value: 8, origin: 'assumed' as const } };
    expect(valueOf(withBall(guess, entered(70))).pendulumDepthMm).toEqual(guess.pendulumDepthMm);
  });

  it('gets its depth from the centre of mass below the seat', () => {
    const placed = valueOf(withCentreDepth(wheel, { value: 25, origin: 'measured' }));
    expect(placed.pendulumDepthMm.value).toBeCloseTo(25 - 16.7052, 3);
    expect(placed.pendulumDepthMm.origin).toBe('measured');
  });
});

describe('what the ball does to the wheel', () => {
  it('agrees with the formula of the response', () => {
    const behaviour = behaviourOf(wheel);
    // k·r_w = r_e·r_w/(M·h) = 309·185/(16500·8.2) mm per gram.
    expect(behaviour.ok && behaviour.value.risePerGramMm).toBeCloseTo(0.4225, 4);
  });

  it('ranks the balls on hand together with the one in use', () => {
    const stand = { ...proposedStand(), ballDiametersMm: [entered(60), entered(80)] };
    const balls = ballsFor(wheel, stand);
    const found = balls.ok ? balls.value.ranked : [];
    expect(found.map(({ ballDiameterMm }) => ballDiameterMm).toSorted()).toEqual([60, 63.5, 80]);
    expect(found.at(-1)).toMatchObject({ ballDiameterMm: 80, finding: 'tips-over' });
  });
});

describe('the depth that check sweeps measure', () => {
  const check = (ballDiameterMm: number, source: 'trial' | 'model'): SweepEntry => ({
    id: 's',
    wheelId: 'w',
    at: NOW,
    kind: 'sweep',
    source: 'camera',
    setup: { ...shedSetup, stand: { ...shedSetup.stand, ballDiameterMm } },
    assumed: [],
    filmId: null,
    reading: acceptedReading({ amountG: 5, heavyDeg: 75, sdG: 0.4, source }),
    trace: null,
  });

  it('is r_e/(M·k) of the measured response', () => {
    const depth = depthFromSweeps(wheel, [check(63.5, 'trial')]);
    expect(depth!.pendulumDepthMm).toBeCloseTo(309 / (16500 * 0.00228), 6);
    expect(depth!.standardErrorMm).toBeGreaterThan(0.1);
  });

  it('is not taken from a sweep on another ball, nor from one that measured no response', () => {
    expect(depthFromSweeps(wheel, [check(60, 'trial'), check(63.5, 'model')])).toBeNull();
  });
});

describe('the size printed on the tyre', () => {
  it('proposes radii where they are assumed, and leaves what was entered', () => {
    const { wheel: proposed, problem } = withTyre(proposedWheel('w', '', NOW), '205/55 R16');
    expect(problem).toBeNull();
    // Overall 406 + 2·112.75 = 631.5 mm, the edge 11 mm inside; bead seat 405.6 mm less 18.
    expect(proposed.edgeRadiusMm).toEqual({ value: 305, origin: 'assumed' });
    expect(proposed.rings[0]!.radiusMm).toEqual({ value: 185, origin: 'assumed' });
    expect(withTyre(wheel, '205/55 R16').wheel.edgeRadiusMm).toEqual(wheel.edgeRadiusMm);
  });

  it('is kept as written when it cannot be read, and that is said', () => {
    const { wheel: named, problem } = withTyre(wheel, 'sixteen inch');
    expect(named.tyre).toBe('sixteen inch');
    expect(problem).toBe('tyre-size-unreadable');
  });
});

describe('another wheel of the set', () => {
  it('takes over what goes with the size, but has to be weighed itself', () => {
    const measured = { ...wheel, edgeRadiusMm: { value: 309, origin: 'measured' as const } };
    const next = wheelLike(measured, 'n', 'rear', NOW);
    expect(next.edgeRadiusMm).toEqual({ value: 309, origin: 'entered' });
    expect(next.massKg).toEqual({ value: 16.5, origin: 'assumed' });
    expect(next).toMatchObject({ id: 'n', label: 'rear', stage: 'never-read', lastReading: null });
  });
});

describe('the tilt of a tablet’s rear camera', () => {
  it.each([
    ['flat on a table', 0, 0, 90],
    ['upright', 90, 0, 0],
    ['upright, turned on its side', 0, 90, 0],
    ['leaning back by 30° from flat', 30, 0, 60],
    ['the same on its side', 0, -30, 60],
    ['looking up', 120, 0, -30],
  ])('%s', (_how, beta, gamma, tilt) => {
    expect(downTiltFromOrientationDeg(beta, gamma)).toBeCloseTo(tilt, 9);
  });
});
