import type { WheelPose } from '../../../samples/stand/motion/wheelPose.ts';
import type { OwnFeed, TakePicture } from '../../contract/session.ts';
import type { StandPicture } from './standPicture.ts';

/** The practice stand's time, and the pictures taken in it. */
export interface StandClock {
  /** Gives pictures to a taker; one at a time, a new one takes the old one's place. */
  readonly feed: OwnFeed;
  /** Whether pictures are measured now: then time goes by pictures, else by the clock on the wall. */
  isMeasured(): boolean;
  /** Whether anybody looks: unseen and unmeasured, the stand takes no time of the machine. */
  look(on: boolean): void;
  stop(): void;
}

/** Longest step of a stand whose page was asleep, s. */
const LONGEST_STEP_S = 0.25;
/** Least pause after a measured picture: the page must be able to answer a hand. */
const LEAST_PAUSE_MS = 4;
/** Least pause after one that is only looked at, in parts of the time that drawing it took. */
const LOOKING_PAUSE_SHARE = 1;

/**
 * While it is only looked at, the stand moves by the clock on the wall. While pictures are measured, each
 * is one fixed step of the stand's own time after the last and waits for it to be measured: where
 * drawing takes longer than the step, the wheel turns in slow motion, and times and motion agree.
 */
export function standClock(
  picture: Pick<StandPicture, 'draw' | 'taken' | 'everyMs'>,
  advance: (stepS: number) => WheelPose,
): StandClock {
  let taker: TakePicture | null = null;
  let timeS = 0;
  let lastMs = performance.now();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  let looked = false;
  let running = false;

  const isWanted = () => !stopped && (looked || taker !== null);
  const start = (): void => {
    if (running || !isWanted()) return;
    running = true;
    lastMs = performance.now();
    timer = setTimeout(() => void show(), 0);
  };
  const show = async (): Promise<void> => {
    const startMs = performance.now();
    const stepS =
      taker === null ? Math.min(LONGEST_STEP_S, (startMs - lastMs) / 1000) : picture.everyMs / 1000;
    lastMs = startMs;
    timeS += stepS;
    picture.draw(advance(stepS));
    if (taker !== null) await give(taker);
    if (!isWanted()) {
      running = false;
      return;
    }
    const spentMs = performance.now() - startMs;
    const leastMs = taker === null ? LOOKING_PAUSE_SHARE * spentMs : LEAST_PAUSE_MS;
    timer = setTimeout(
      () => void show(),
      Math.max(LEAST_PAUSE_MS, leastMs, picture.everyMs - spentMs),
    );
  };
  const give = async (take: TakePicture): Promise<void> => {
    // A worker that died, or a picture that could not be copied, ends the feed and not the stand.
    let goesOn = false;
    try {
      goesOn = await take(await picture.taken(timeS), timeS);
    } catch {
      goesOn = false;
    }
    if (!goesOn && taker === take) taker = null;
  };

  return {
    feed(take) {
      taker = take;
      start();
      return {
        stop() {
          if (taker === take) taker = null;
        },
      };
    },
    isMeasured: () => taker !== null,
    look(on) {
      looked = on;
      start();
    },
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
