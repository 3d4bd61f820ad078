import { useEffect, useState } from 'react';

import type { Weight } from '../../contract/reading.ts';
import type { SweepProgress } from '../../contract/sweep.ts';
import { leadInstruction, type LeadInstruction } from '../../job/leadInstruction.ts';

/** Follows the wheel to one weight's spot; each instruction knows the one before it. */
export function useLead(weight: Weight, progress: SweepProgress | null): LeadInstruction {
  const [say, setSay] = useState<LeadInstruction>({ kind: 'lost' });
  useEffect(() => {
    setSay((before) => leadInstruction(weight.angleDeg, progress, before));
  }, [weight, progress]);
  return say;
}
