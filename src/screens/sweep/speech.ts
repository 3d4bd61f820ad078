import { language } from '../words/words.ts';

/** What is needed to know of a voice. */
export type KnownVoice = Pick<SpeechSynthesisVoice, 'lang' | 'localService' | 'default'>;

/**
 * The voice that speaks a language on this very device: a voice of some service would send what is
 * said over the network. Null when there is none; the program is then silent.
 */
export function localVoiceFor<V extends KnownVoice>(
  voices: readonly V[],
  spoken: string,
): V | null {
  const fit = voices.filter(
    ({ lang, localService }) => localService && lang.toLowerCase().startsWith(spoken),
  );
  return fit.find((voice) => voice.default) ?? fit[0] ?? null;
}

/** Absent in a browser that cannot speak. */
function synthesis(): SpeechSynthesis | null {
  return 'speechSynthesis' in globalThis ? speechSynthesis : null;
}

/**
 * Browsers list their voices only after they were first asked for, and tablets speak only once
 * something was said inside a touch: an empty sentence does for both.
 */
export function unlockSpeech(): void {
  const speaker = synthesis();
  if (speaker === null) return;
  const voice = localVoiceFor(speaker.getVoices(), language);
  if (voice === null) return;
  const nothing = new SpeechSynthesisUtterance('');
  nothing.voice = voice;
  speaker.speak(nothing);
}

/** Says it now: what was being said before is out of date and is cut off. */
export function speak(sentence: string): void {
  const speaker = synthesis();
  const voice = speaker && localVoiceFor(speaker.getVoices(), language);
  if (!speaker || !voice) return;
  const said = new SpeechSynthesisUtterance(sentence);
  said.voice = voice;
  said.lang = voice.lang;
  speaker.cancel();
  speaker.speak(said);
}

export function stopSpeaking(): void {
  synthesis()?.cancel();
}
