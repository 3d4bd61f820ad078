/** The hand on a practice wheel: led by a finger, or turning on by itself. */
export interface TurningHand {
  /** Where the hand wants the wheel, and how fast; null with the hand off. */
  leads(): { readonly turnDeg: number; readonly rateDegPerS: number } | null;
  /** The finger goes on by so much; the hand follows as fast as a calm hand may. */
  turnBy(deltaDeg: number): void;
  release(): void;
  turnOn(): void;
  isTurningOn(): boolean;
  /** Lets time pass; `pictureMs` is the time between two pictures of late. */
  advance(durationS: number, pictureMs: number): void;
}

/**
 * The hand goes on until it is told that there is enough, or at the latest after this, degrees: the
 * mark may have stood just past the sight at the start, and a part may have to be seen again.
 */
const LONGEST_DEG = 780;
/** Slower than most hands: leaves out nothing, rocks little. */
const CALM_DEG_PER_S = 14;
/** The reader follows the tread over this much a picture with ease. */
const DEG_PER_PICTURE = 1.4;
/**
 * A finger leads the wheel no faster: little under what the reader calls too fast. Where pictures
 * are few the stand's time is slow, and a finger that knows nothing of that would always be too fast.
 */
const FINGER_DEG_PER_PICTURE = 1.9;
/** The hand is where the finger is after about this time, s: pointers move in jerks, hands do not. */
const FINGER_S = 0.15;
/** A finger that is further ahead slips over the tread: the wheel does not turn on long after it. */
const FINGER_SLIPS_DEG = 12;
/** A hand comes up to speed and down again in about this time, s. */
const EASE_S = 0.8;
/** Before it starts the wheel is seen at rest for so long, s; and after. */
const REST_S = 1.5;

export function turningHand(turnDegNow: () => number): TurningHand {
  let wanted: number | null = null;
  /** Where the finger is; null while no finger leads. */
  let finger: number | null = null;
  let rate = 0;
  let script: { readonly endDeg: number; waitS: number } | null = null;

  const stepScript = (durationS: number, pictureMs: number): void => {
    if (script === null || wanted === null) return;
    script.waitS -= durationS;
    if (script.waitS > 0) return;
    const leftDeg = script.endDeg - wanted;
    if (leftDeg <= 0.05) {
      rate = 0;
      if (script.waitS < -REST_S) {
        script = null;
        wanted = null;
      }
      return;
    }
    script.waitS = 0;
    const full = Math.min(CALM_DEG_PER_S, (DEG_PER_PICTURE * 1000) / pictureMs);
    // Slows down toward the end as it speeds up at the start.
    const goal = Math.min(full, Math.max(0.3, leftDeg / EASE_S));
    rate += (goal - rate) * Math.min(1, durationS / EASE_S);
    rate = Math.min(rate, leftDeg / durationS);
    wanted += rate * durationS;
  };

  const followFinger = (durationS: number, pictureMs: number): void => {
    if (finger === null || wanted === null) return;
    const full = (FINGER_DEG_PER_PICTURE * 1000) / pictureMs;
    rate = Math.max(-full, Math.min(full, (finger - wanted) / FINGER_S));
    wanted += rate * Math.min(durationS, FINGER_S);
  };

  return {
    leads: () => (wanted === null ? null : { turnDeg: wanted, rateDegPerS: rate }),
    turnBy(deltaDeg) {
      script = null;
      // Gripped anew, and when the wheel was turned by itself until now.
      if (finger === null) {
        wanted = turnDegNow();
        rate = 0;
      }
      const from = wanted ?? turnDegNow();
      const to = (finger ?? from) + deltaDeg;
      finger = Math.max(from - FINGER_SLIPS_DEG, Math.min(from + FINGER_SLIPS_DEG, to));
    },
    release() {
      script = null;
      wanted = null;
      finger = null;
      rate = 0;
    },
    turnOn() {
      wanted = turnDegNow();
      finger = null;
      rate = 0;
      script = { endDeg: wanted + LONGEST_DEG, waitS: REST_S };
    },
    isTurningOn: () => script !== null,
    advance(durationS, pictureMs) {
      stepScript(durationS, pictureMs);
      followFinger(durationS, pictureMs);
    },
  };
}
