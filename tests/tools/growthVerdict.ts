import type { Held } from '../setup/liveView.ts';

/** What a live view held at some time after it was opened. */
export interface HeldAt extends Held {
  readonly atS: number;
}

/**
 * Until then caches, compiled code and what the core keeps of about a turn fill up: in an hour that was
 * watched all had been there by the fourth minute, s.
 */
export const SETTLING_S = 240;
/** Fewer than these after settling tell chance from growth no more. */
const FEWEST = 8;
/**
 * What page and worker may hold more at the end than once settled, MB. What the core keeps of a picture is
 * 25 kB: forgetting one in a hundred would make 27 MB of an hour at 30 pictures a second.
 */
const MOST_GROWTH_MB = 15;
/**
 * The same for the page's process, which goes up and down by 80 MB as the browser tidies up, MB. Pictures that
 * nobody closes are 1.4 MB each: a hundred of them.
 */
const MOST_PROCESS_GROWTH_MB = 150;

export interface GrowthVerdict {
  readonly isFine: boolean;
  readonly words: string;
}

/** By the medians of the first and the last third after settling: one tidying up more or less is no growth. */
export function growthVerdict(held: readonly HeldAt[]): GrowthVerdict {
  const settled = held.filter(({ atS }) => atS >= SETTLING_S);
  if (settled.length < FEWEST) {
    return { isFine: false, words: `too short to tell: watch at least ten minutes` };
  }
  const third = Math.floor(settled.length / 3);
  const growthMb = (of: (one: HeldAt) => number) =>
    median(settled.slice(-third).map(of)) - median(settled.slice(0, third).map(of));
  const scriptsMb = growthMb(({ scriptsMb }) => scriptsMb);
  const processMb = growthMb(({ processMb }) => processMb);
  // Where the system does not tell of processes, that is not held.
  const isFine = scriptsMb <= MOST_GROWTH_MB && !(processMb > MOST_PROCESS_GROWTH_MB);
  return {
    isFine,
    words:
      `${isFine ? 'does not grow' : 'GROWS'}: page and worker by ${scriptsMb.toFixed(1)} MB ` +
      `(at most ${MOST_GROWTH_MB}), process by ${processMb.toFixed(0)} MB (at most ${MOST_PROCESS_GROWTH_MB})`,
  };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
