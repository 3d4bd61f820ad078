import type { Hearing } from '../state/useSettings.ts';
import { words } from '../words/words.ts';
import type { SweepEvent } from './sweepEvents.ts';
import type { ToneName } from './tones.ts';

/** What is heard at one moment; null parts are silent. */
export interface Signal {
  readonly tone: ToneName | null;
  readonly say: string | null;
}

/** Tone and word of an event, as far as the person wants to hear them. */
export function signalOf(event: SweepEvent, { tones, voice }: Hearing): Signal {
  return { tone: tones ? event : null, say: voice ? words.sweep.spoken[event] : null };
}
