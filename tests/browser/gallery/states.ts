import { noticeFor } from '../../../src/contract/notice.ts';
import { NO_ERRAND, type SessionState } from '../../../src/contract/session.ts';
import {
  acceptedReading,
  drawnOverlay,
  progressOf,
  refusedReading,
  shedSetup,
  traceOf,
  type ReadingWish,
} from './fixtures.ts';

/** One name for each state that a screen can be seen in. */
export const GALLERY_STATES: Readonly<Record<string, SessionState>> = {
  choosing: { phase: 'choosing', problem: null },
  'choosing-problem': {
    phase: 'choosing',
    problem: noticeFor('setup-invalid', {
      where: 'wheel.massKg',
      problem: 'Expected <=80 but received 800',
    }),
  },
  'sweeping-starting': sweeping('camera', null, null),
  'sweeping-looking': sweeping(
    'camera',
    progressOf({
      stage: 'looking',
      trouble: 'too-dark',
      turnDeg: null,
      overlay: null,
      turningDegPerS: 0,
    }),
    null,
  ),
  'sweeping-following': sweeping('camera', progressOf({ covered: 41 }), null),
  'sweeping-fast': sweeping('camera', progressOf({ covered: 20, turningDegPerS: -34 }), null),
  'sweeping-lost': sweeping(
    'camera',
    progressOf({ covered: 30, stage: 'lost', trouble: 'view-blocked' }),
    null,
  ),
  'sweeping-enough': sweeping('camera', progressOf({ covered: 72, enough: true }), null),
  'sweeping-film': sweeping(
    'file',
    progressOf({ covered: 52, overlay: drawnOverlay('red') }),
    0.63,
  ),
  'read-usual': read({ amountG: 28.1, heavyDeg: 75, sdG: 0.45 }),
  'read-small-weight': read({ amountG: 6.2, heavyDeg: 190, sdG: 0.4 }),
  'read-large': read({ amountG: 84, heavyDeg: 300, sdG: 1.8, standMrad: 14 }),
  'read-two-weights': read({
    amountG: 42,
    heavyDeg: 355,
    sdG: 0.5,
    source: 'trial',
    weights: [
      { massG: 25, radiusMm: 185, angleDeg: 150 },
      { massG: 20, radiusMm: 185, angleDeg: 205 },
    ],
  }),
  'read-nothing-to-add': read({ amountG: 2.1, heavyDeg: 120, sdG: 0.4 }),
  'read-balanced': read({ amountG: 0.9, heavyDeg: 120, sdG: 0.8 }),
  'read-unplugged': read(
    { amountG: 28.1, heavyDeg: 75, sdG: 0.9, standMrad: 12 },
    'camera',
    'camera-unplugged',
  ),
  refused: {
    phase: 'read',
    source: 'camera',
    errand: NO_ERRAND,
    setup: shedSetup,
    result: { reading: refusedReading('turn-incomplete'), trace: null },
    notice: null,
  },
  'refused-film': {
    phase: 'read',
    source: 'file',
    errand: NO_ERRAND,
    setup: shedSetup,
    result: { reading: { ...refusedReading('mark-ambiguous'), turn: null }, trace: null },
    notice: null,
  },
};

function sweeping(
  source: 'camera' | 'file',
  progress: ReturnType<typeof progressOf> | null,
  fraction: number | null,
): SessionState {
  return {
    phase: 'sweeping',
    source,
    errand: NO_ERRAND,
    setup: shedSetup,
    progress,
    fraction,
    stream: null,
    framesDropped: source === 'camera' ? 2 : 0,
    notice: null,
  };
}

function read(
  wish: ReadingWish,
  source: 'camera' | 'sample' = 'sample',
  notice: 'camera-unplugged' | null = null,
): SessionState {
  const reading = acceptedReading(wish);
  return {
    phase: 'read',
    source,
    errand: NO_ERRAND,
    setup: shedSetup,
    result: { reading, trace: traceOf(reading) },
    notice: notice === null ? null : noticeFor(notice),
  };
}
