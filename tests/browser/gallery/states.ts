import { noticeFor } from '../../../src/contract/notice.ts';
import { NO_ERRAND, type SessionState, type SightingState } from '../../../src/contract/session.ts';
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

/** Screens that need both the logbook and a running camera: the place, and the state it is seen in. */
export const GALLERY_LIVE: Readonly<Record<string, { place: string; state: string }>> = {
  'sight-starting': { place: 'sight', state: 'sighting-starting' },
  'sight-dark': { place: 'sight', state: 'sighting-dark' },
  'sight-ready': { place: 'sight', state: 'sighting-ready' },
  'lead-looking': { place: 'lead', state: 'sighting-dark' },
  'lead-turn': { place: 'lead', state: 'lead-turn' },
  'lead-far': { place: 'lead', state: 'lead-far' },
  'lead-here': { place: 'lead', state: 'lead-here' },
};

/** Sighting takes up its own state; the screens of {@link GALLERY_LIVE} show it. */
export const SIGHTING_STATES: Readonly<Record<string, SessionState>> = {
  'sighting-starting': sighting(null),
  'sighting-dark': sighting(
    progressOf({ stage: 'looking', trouble: 'too-dark', turnDeg: null, overlay: null }),
  ),
  'sighting-ready': sighting(progressOf({ covered: 1, turningDegPerS: 0 })),
  'sighting-tried': withTests(sighting(progressOf({ covered: 1, turningDegPerS: 0 }))),
  // The weight's place is at 255°: it stands 37° before the sight, behind the wheel, at the sight.
  'lead-turn': sighting(progressOf({ covered: 40, turnDeg: 68 })),
  'lead-far': sighting(progressOf({ covered: 40, turnDeg: 250 })),
  'lead-here': sighting(progressOf({ covered: 40, turnDeg: 105, turningDegPerS: 0 })),
};

function sighting(progress: ReturnType<typeof progressOf> | null): SightingState {
  // The list of states is read where there is no browser, too.
  const stream = 'MediaStream' in globalThis ? new MediaStream() : ({} as MediaStream);
  return {
    phase: 'sighting',
    source: 'camera',
    errand: NO_ERRAND,
    setup: shedSetup,
    progress,
    stream,
    framesDropped: 0,
    notice: null,
  };
}

function withTests(state: SightingState): SessionState {
  const tested = { up: 'confirmed', turn: 'confirmed' } as const;
  return { ...state, setup: { ...state.setup, sight: { ...state.setup.sight, tested } } };
}

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
