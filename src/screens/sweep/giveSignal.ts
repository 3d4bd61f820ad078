import type { Signal } from './signals.ts';
import { speak, unlockSpeech } from './speech.ts';
import { playTone, unlockTones } from './tones.ts';

export function give({ tone, say }: Signal): void {
  if (tone !== null) playTone(tone);
  if (say !== null) speak(say);
}

/** Tablets give sound only to a page that asked for it inside a touch: call this from one. */
export function unlockHearing(): void {
  unlockTones();
  unlockSpeech();
}
