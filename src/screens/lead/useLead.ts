import { useEffect, useRef, useState } from 'react';

import type { Weight } from '../../contract/reading.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import { STILL_BELOW_DEG_PER_S } from '../../contract/turnSpeed.ts';
import { leadInstruction, type LeadInstruction } from '../../job/leadInstruction.ts';
import type { Hearing } from '../state/useSettings.ts';
import { give } from '../sweep/giveSignal.ts';
import { playPitch } from '../sweep/tones.ts';
import { leadBeatS, leadPitchHz, leadWordBetween, type LeadWord } from './leadSignals.ts';

export interface Leading {
  readonly say: LeadInstruction;
  /** What was told last, for those who hear the screen: the figure itself changes too often. */
  readonly told: string;
}

/** Follows the wheel to one weight's spot; each instruction knows the one before it. */
export function useLead(
  weight: Weight,
  progress: SweepProgress | null,
  hearing: Hearing,
  wordsOf: (word: LeadWord, say: LeadInstruction) => string,
): Leading {
  const { tones, voice } = hearing;
  const before = useRef<LeadInstruction | null>(null);
  const speaking = useRef(wordsOf);
  speaking.current = wordsOf;
  const [leading, setLeading] = useState<Leading>({ say: { kind: 'lost' }, told: '' });
  useEffect(() => {
    const say = leadInstruction(weight.angleDeg, progress, before.current);
    // Before the wheel was seen for the first time there is nothing to lose.
    const isFirst = before.current === null && say.kind === 'lost';
    const word = isFirst ? null : leadWordBetween(before.current, say);
    if (!isFirst) before.current = say;
    const text = word === null ? null : speaking.current(word, say);
    setLeading(({ told }) => ({ say, told: text ?? told }));
    give({
      tone: tones && word === 'here' ? 'at-spot' : null,
      say: voice ? text : null,
    });
  }, [weight, progress, tones, voice]);
  const isTurning = Math.abs(progress?.turningDegPerS ?? 0) >= STILL_BELOW_DEG_PER_S;
  useLeadingTone(tones && isTurning ? leading.say : null);
  return leading;
}

/** Notes that climb and quicken toward the spot, for as long as the wheel turns. */
function useLeadingTone(say: LeadInstruction | null): void {
  const byDeg = useRef(0);
  const isHeard = say?.kind === 'turn';
  if (say?.kind === 'turn') byDeg.current = say.byDeg;
  useEffect(() => {
    if (!isHeard) return;
    let timer = 0;
    const beat = () => {
      playPitch(leadPitchHz(byDeg.current));
      timer = window.setTimeout(beat, 1000 * leadBeatS(byDeg.current));
    };
    beat();
    return () => clearTimeout(timer);
  }, [isHeard]);
}
