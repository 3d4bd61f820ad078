import { beforeAll, describe, expect, it } from 'vitest';

import { drawnSweep, type DrawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import type { AcceptedReading } from '../../src/contract/reading.ts';
import {
  accepted,
  drawnSetup,
  expectRefused,
  expectUnbalance,
  readPictures,
} from './readDrawnSweep.ts';
import { atTime, brighter, shifted, tinted, withoutLaser } from './spoiltPictures.ts';

/**
 * One good drawn sweep, spoilt on purpose in every way a shed knows. What is spoilt is refused with
 * its own reason; what a camera does by itself all day is not.
 */
let sweep: DrawnSweep;
let good: YuvPicture[];
const TRUTH = { amountGmm: 3000, heavySpotDeg: 60 };

beforeAll(() => {
  sweep = drawnSweep();
  good = [...sweep.pictures()];
});

/** Each picture changed by its place in the sweep, 0 to 1. */
const readChanged = (change: (picture: YuvPicture, share: number) => YuvPicture) =>
  readPictures(
    good.map((picture, i) => change(picture, i / good.length)),
    drawnSetup(sweep.scene),
  ).result;

describe('a laser that goes out', () => {
  it('is missed from the start', () => {
    expectRefused(readChanged(withoutLaser), 'line-lost');
  });

  it('is missed in the last third, with the line seen for a whole half turn', () => {
    expectRefused(
      readChanged((p, at) => (at > 0.67 ? withoutLaser(p) : p)),
      'line-lost',
    );
  });

  it('is missed in the first half, whatever the few pictures kept of it say', () => {
    for (const until of [0.4, 0.55]) {
      expectRefused(
        readChanged((p, at) => (at < until ? withoutLaser(p) : p)),
        'line-lost',
      );
    }
  });

  it('may blink for two seconds', () => {
    const { reading } = readChanged((p, at) => (at > 0.4 && at < 0.48 ? withoutLaser(p) : p));
    expectUnbalance(accepted(reading), sweep.scene, TRUTH);
  });
});

describe('a camera that moves', () => {
  it('is noticed when it slides sideways, slowly', () => {
    expectRefused(
      readChanged((p, at) => shifted(p, Math.round(16 * at), 0)),
      'camera-moved',
    );
  });

  it('is noticed when it is knocked', () => {
    expectRefused(
      readChanged((p, at) => (at > 0.5 ? shifted(p, 4, 6) : p)),
      'camera-moved',
    );
  });
});

describe('a camera on a springy arm', () => {
  const warningCodes = ({ warnings = [] }: AcceptedReading) => warnings.map(({ code }) => code);

  it('is told from the wheel’s own rocking, and said', () => {
    const read = readChanged((p) => {
      const [rightPx, downPx] = [Math.sin(4.9 * p.timeS), Math.sin(3.4 * p.timeS)];
      return shifted(p, Math.round(1.6 * rightPx), Math.round(1.6 * downPx));
    });
    const reading = accepted(read.reading);
    expectUnbalance(reading, sweep.scene, TRUTH);
    expect(warningCodes(reading)).toContain('picture-sways');
  });

  it('is not spoken of where nothing sways', () => {
    expect(warningCodes(accepted(readChanged((p) => p).reading))).not.toContain('picture-sways');
  });
});

describe('a camera that stalls', () => {
  it('does not shift the turn by pitches', () => {
    const stalled = good.map((p, i) => (i > 120 && i <= 130 ? atTime(good[120], p.timeS) : p));
    const reading = accepted(readPictures(stalled, drawnSetup(sweep.scene)).result.reading);
    expectUnbalance(reading, sweep.scene, TRUTH);
    // The turn that was hidden is counted: the raw sum is some per cent off, not a second's 16°.
    expect(Math.abs(reading.turn.closureDeg!)).toBeLessThan(4);
  });

  it('is refused when it freezes for good', () => {
    expectRefused(
      readChanged((p, at) => (at > 0.5 ? atTime(good[120], p.timeS) : p)),
      'turn-incomplete',
    );
    expectRefused(
      readChanged((p) => atTime(good[0], p.timeS)),
      'turn-incomplete',
    );
  });
});

describe('a camera that changes the light by itself', () => {
  it('reads through a drift of exposure and white balance', () => {
    const drift = (p: YuvPicture, at: number) =>
      tinted(brighter(p, 0.6 + 0.8 * at), 12 * (at - 0.5), -16 * (at - 0.5));
    expectUnbalance(accepted(readChanged(drift).reading), sweep.scene, TRUTH);
  });

  it('reads through a sudden step of exposure', () => {
    const { reading } = readChanged((p, at) => (at > 0.48 ? brighter(p, 1.5) : p));
    expectUnbalance(accepted(reading), sweep.scene, TRUTH);
  });

  it('names the light where nothing can be seen for it', () => {
    expectRefused(
      readChanged((p) => brighter(p, 4)),
      'too-bright',
    );
    expectRefused(
      readChanged((p) => brighter(p, 0.08)),
      'too-dark',
    );
  });
});
