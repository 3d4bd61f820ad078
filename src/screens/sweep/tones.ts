import type { SweepEvent } from './sweepEvents.ts';

/** One note: pitch in Hz, start and length in seconds. */
interface Note {
  readonly pitchHz: number;
  readonly startS: number;
  readonly lengthS: number;
}

/** Everything that has a tone of its own: a sweep's events, and the spot under a hand that is led. */
export type ToneName = SweepEvent | 'at-spot';

/** One short note for each quarter of the turn: they can be counted. */
const QUARTER_STEP_S = 0.17;
const quarterNotes = (count: number): readonly Note[] =>
  Array.from({ length: count }, (_, i) => ({
    pitchHz: 659.25,
    startS: i * QUARTER_STEP_S,
    lengthS: 0.12,
  }));

/**
 * Told apart without looking: found rises, a quarter is one short note, enough is a full chord
 * upward, lost falls. Pitches from one pentatonic scale, so that they never clash.
 */
const TONES: Readonly<Record<ToneName, readonly Note[]>> = {
  found: [
    { pitchHz: 523.25, startS: 0, lengthS: 0.12 },
    { pitchHz: 783.99, startS: 0.12, lengthS: 0.2 },
  ],
  quarter: quarterNotes(1),
  half: quarterNotes(2),
  'three-quarters': quarterNotes(3),
  whole: quarterNotes(4),
  enough: [
    { pitchHz: 523.25, startS: 0, lengthS: 0.14 },
    { pitchHz: 659.25, startS: 0.14, lengthS: 0.14 },
    { pitchHz: 783.99, startS: 0.28, lengthS: 0.14 },
    { pitchHz: 1046.5, startS: 0.42, lengthS: 0.4 },
  ],
  lost: [
    { pitchHz: 392, startS: 0, lengthS: 0.16 },
    { pitchHz: 261.63, startS: 0.16, lengthS: 0.3 },
  ],
  'too-fast': [
    { pitchHz: 392, startS: 0, lengthS: 0.1 },
    { pitchHz: 392, startS: 0.13, lengthS: 0.1 },
  ],
  'at-spot': [
    { pitchHz: 1046.5, startS: 0, lengthS: 0.16 },
    { pitchHz: 1318.51, startS: 0.16, lengthS: 0.36 },
  ],
};

/** Loud enough over a shed's noise, not startling. */
const LOUDNESS = 0.22;
/** Without a short rise and fall every note would click. */
const RAMP_S = 0.015;

let context: AudioContext | null = null;

/** Tablets give sound only to a page that asked for it inside a touch: call this from one. */
export function unlockTones(): void {
  try {
    context ??= new AudioContext();
    if (context.state === 'suspended') void context.resume().catch(() => undefined);
  } catch {
    // A browser without sound: everything is visible too.
    context = null;
  }
}

export function playTone(name: ToneName): void {
  if (context === null || context.state !== 'running') return;
  for (const note of TONES[name]) playNote(context, note);
}

/** Length of one of the notes by which a hand is led, s. */
const LEADING_NOTE_S = 0.11;

/** One short note: its pitch tells how near the spot is. */
export function playPitch(pitchHz: number): void {
  if (context === null || context.state !== 'running') return;
  playNote(context, { pitchHz, startS: 0, lengthS: LEADING_NOTE_S });
}

function playNote(audio: AudioContext, note: Note): void {
  const oscillator = audio.createOscillator();
  const gain = audio.createGain();
  const start = audio.currentTime + note.startS;
  const end = start + note.lengthS;
  oscillator.type = 'triangle';
  oscillator.frequency.value = note.pitchHz;
  gain.gain.setValueAtTime(0, start);
  gain.gain.linearRampToValueAtTime(LOUDNESS, start + RAMP_S);
  gain.gain.setValueAtTime(LOUDNESS, Math.max(start + RAMP_S, end - 4 * RAMP_S));
  gain.gain.linearRampToValueAtTime(0, end);
  oscillator.connect(gain).connect(audio.destination);
  oscillator.start(start);
  oscillator.stop(end);
}
