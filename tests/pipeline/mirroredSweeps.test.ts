import { beforeAll, describe, expect, it } from 'vitest';

import { drawnSweep, type DrawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import type { AcceptedReading } from '../../src/contract/reading.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';
import { TURN_TEST_START, turnTestAfter, type TurnTest } from '../../src/job/signTest.ts';
import {
  addVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
} from '../../src/quantities/vector.ts';
import {
  accepted,
  drawnSetup,
  expectRefused,
  expectUnbalance,
  readPictures,
} from './readDrawnSweep.ts';
import { withTests } from '../../src/session/signKeeper.ts';
import { headDown, mirrored, upsideDown } from './spoiltPictures.ts';

/**
 * Pictures that show the world otherwise than it stands. A mirrored film of a wheel is a film of the
 * mirrored wheel turned the other way: what tells it is the sense of turning that a person vouches
 * for, or the answer to a weight.
 */
const BEFORE = { amountGmm: 3000, heavySpotDeg: 60 };
const ADDED = { massG: 20, radiusMm: 185, angleDeg: 75 };
const SUM = addVectors(
  vectorFromPolar(BEFORE.amountGmm, BEFORE.heavySpotDeg),
  vectorFromPolar(ADDED.massG * ADDED.radiusMm, ADDED.angleDeg),
);
const AFTER = { amountGmm: vectorAmount(SUM), heavySpotDeg: vectorAngleDeg(SUM) };

let sweep: DrawnSweep;
let good: YuvPicture[];
let straight: AcceptedReading;
let alike: AcceptedReading;
beforeAll(() => {
  sweep = drawnSweep();
  good = [...sweep.pictures()];
  straight = accepted(readPictures(good, saying(undefined)).result.reading);
  alike = accepted(readPictures(good.map(mirrored), saying(undefined)).result.reading);
});

const codesOf = ({ warnings = [] }: AcceptedReading) => warnings.map(({ code }) => code);

const saying = (turnSense: SweepSetup['turnSense']): SweepSetup =>
  drawnSetup(sweep.scene, (s) => (turnSense ? { ...s, turnSense } : s));

describe('a mirrored picture', () => {
  it('is refused where the sense of turning is known, and said so while it turns', () => {
    const { result, progress } = readPictures(good.map(mirrored), saying('clockwise'));
    expectRefused(result, 'picture-mirrored');
    const first = progress.find((p) => p.trouble === 'picture-mirrored');
    expect(first?.coveredDeg).toBeLessThan(40);
    // The wheel is followed all the same: it is the sweep that is in vain, not the sight.
    expect(first?.stage).toBe('following');
  });

  it('leaves a picture alone that shows the sense that was entered', () => {
    const { reading } = readPictures(good, saying('clockwise')).result;
    expectUnbalance(accepted(reading), sweep.scene, BEFORE);
    expect(accepted(reading).warnings).toBeUndefined();
  });

  it('carries a warning where nobody vouched for the sense, as the straight one does', () => {
    expect(alike.turn.sense).toBe('counter-clockwise');
    expect(codesOf(alike)).toEqual(['sense-unconfirmed']);
    expect(codesOf(straight)).toEqual(['clockwise-unconfirmed']);
  });

  it('is refused from a camera that may mirror, where it shows not what was asked', () => {
    const front = { mayMirror: true, askedSense: 'clockwise' } as const;
    const { result, progress } = readPictures(good.map(mirrored), saying(undefined), front);
    expectRefused(result, 'picture-mirrored');
    expect(progress.some((p) => p.trouble === 'picture-mirrored')).toBe(true);
    const { reading } = readPictures(good, saying(undefined), front).result;
    expect(codesOf(accepted(reading))).toEqual(['camera-may-mirror']);
  });

  it('is found out by a turn that is tried by hand, and the sweep after it refused', () => {
    const found = [false, true].map((isMirrored) => {
      const pictures = isMirrored ? good.map(mirrored) : good;
      const { progress } = readPictures(pictures.slice(0, 60), saying(undefined), {
        followOnly: true,
      });
      const test = progress.reduce<TurnTest>(turnTestAfter, TURN_TEST_START);
      return test.step === 'told' ? test.outcome : null;
    });
    expect(found).toEqual(['confirmed', 'reversed']);
    const [, turn] = found;
    const tested = withTests(saying(undefined), turn ? { turn } : {});
    expectRefused(readPictures(good.map(mirrored), tested).result, 'picture-mirrored');
  });
});

describe('a check sweep', () => {
  let after: YuvPicture[];
  let setup: SweepSetup;
  beforeAll(() => {
    const drawn = drawnSweep({
      ...{ seed: 7, unbalanceGmm: AFTER.amountGmm, heavySpotDeg: AFTER.heavySpotDeg },
    });
    after = [...drawn.pictures()];
    setup = drawnSetup(drawn.scene, (s) => ({ ...s, after: { sweep: 'before', added: [ADDED] } }));
  });

  it('measures the response by a weight that is where it was entered', () => {
    const reading = accepted(readPictures(after, setup, { earlier: straight }).result.reading);
    expect(reading.response.source).toBe('trial');
    // The answer to a weight beside the valve rules a mirror out.
    expect(reading.warnings).toBeUndefined();
    expectUnbalance(reading, sweep.scene, AFTER);
  });

  it('finds out a mirrored picture by the wheel’s answer', () => {
    const pictures = after.map(mirrored);
    for (const earlier of [straight, alike]) {
      expectRefused(readPictures(pictures, setup, { earlier }).result, 'picture-mirrored');
    }
  });

  it('finds out a weight that sits elsewhere', () => {
    const elsewhere = { ...ADDED, angleDeg: ADDED.angleDeg + 90 };
    const wrong = { ...setup, after: { sweep: 'before', added: [elsewhere] } };
    expectRefused(readPictures(after, wrong, { earlier: straight }).result, 'weight-elsewhere');
  });
});

describe('a picture that stands on its head', () => {
  it.each([
    ['turned half round', headDown],
    ['mirrored top to bottom', upsideDown],
  ])('is named within a second when %s', (_, change) => {
    const { result, progress } = readPictures(good.map(change), saying(undefined));
    expectRefused(result, 'picture-upside-down');
    const first = progress.find((p) => p.trouble === 'picture-upside-down');
    expect(first?.timeS).toBeLessThan(1.5);
    expect(progress.every((p) => p.stage === 'looking')).toBe(true);
  });
});
