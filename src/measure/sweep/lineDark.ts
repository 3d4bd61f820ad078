import type { SweepRecording } from './sweepRecording.ts';
import type { EdgeObservations } from './edgeObservations.ts';

/**
 * How long the laser's line stayed away where it should have been seen. From above a groove hides
 * the line for up to a third of a turn, so that its absence alone says little; but where it hides
 * is settled by how high the edge stands, and that the rest of the sweep shows: at each height of
 * the edge over the line, in the share of sightings that the sweep gave there. A laser that died
 * leaves the line away at heights at which it was seen before.
 */
export interface LineDark {
  /** Longest time in which hardly any of the expected sightings came, s, and its start. */
  readonly longestS: number;
  readonly fromS: number;
  /** How long it had been away when it was last due, if it did not come back until the end, s. */
  readonly atEndS: number;
}

/** Height of the edge is told apart by this, mm: the line is a millimetre or two wide. */
const HEIGHT_STEP_MM = 1;
const HEIGHT_REACH_MM = 40;
/**
 * From which height on a groove hides the line hangs on how steeply one looks down into it, which is half
 * as steep again at the sides of the view, and all on one side with the sight far aside.
 */
const VIEW_PARTS = 5;
/** A height is known by so many sightings or failures. */
const MIN_TRIES = 30;
/**
 * Time over which sightings are put together, s: a hand or a slot covers for less. In it the line
 * should have been seen in so many blocks before anything is said.
 */
const WINDOW_S = 1;
const MIN_EXPECTED = 20;
/** Heights at which the line is seen less often are the groove's borders, where a trifle decides. */
const SURE_CHANCE = 0.6;
/** Stray light in an empty window gives some sightings; a line that is there gives most. */
const DARK_SHARE = 0.25;
/**
 * In a stretch where nothing is known of when the line is due, this share of all blocks or more shows
 * that the laser is on: a groove hides the line under the edge, seldom all round the view.
 */
const LIT_SHARE = 0.05;

export function lineDark(recording: SweepRecording, observations: EdgeObservations): LineDark {
  const { timeS, frameIndex } = observations;
  const seen = (i: number, b: number) => {
    const offset = recording.frames[frameIndex[i]].lineOffsetPx[b];
    return offset === offset;
  };
  const blocks = observations.azimuthsDeg.length;
  const partOf = (b: number) => Math.floor((b * VIEW_PARTS) / blocks);
  const chances = Array.from({ length: VIEW_PARTS }, (_, part) =>
    chanceByHeight(observations, seen, (b) => partOf(b) === part),
  );
  const expected = new Float64Array(timeS.length);
  const got = new Float64Array(timeS.length);
  const lit = new Float64Array(timeS.length);
  for (let i = 0; i < timeS.length; i++) {
    for (let b = 0; b < blocks; b++) {
      if (seen(i, b)) lit[i] += 1 / blocks;
      const at = heightBin(observations.heightMm[i * blocks + b]);
      if (at < 0) continue;
      const chance = chances[partOf(b)][at];
      if (chance < SURE_CHANCE) continue;
      expected[i] += chance;
      if (seen(i, b)) got[i] += chance;
    }
  }
  return longestDark(timeS, expected, got, lit);
}

/** Share of sightings at each height of the edge in a part of the view, by the better half of the sweep. */
function chanceByHeight(
  observations: EdgeObservations,
  seen: (i: number, b: number) => boolean,
  isInPart: (b: number) => boolean,
): Float64Array {
  const blocks = observations.azimuthsDeg.length;
  const tries: { i: number; seen: boolean }[][] = Array.from(
    { length: (2 * HEIGHT_REACH_MM) / HEIGHT_STEP_MM },
    () => [],
  );
  for (let i = 0; i < observations.timeS.length; i++) {
    for (let b = 0; b < blocks; b++) {
      const at = isInPart(b) ? heightBin(observations.heightMm[i * blocks + b]) : -1;
      if (at >= 0) tries[at].push({ i, seen: seen(i, b) });
    }
  }
  return Float64Array.from(tries, (list) => {
    if (list.length < MIN_TRIES) return 0;
    const half = list.length >> 1;
    const share = (part: typeof list) => part.filter((t) => t.seen).length / part.length;
    // A laser that was off for one half of them must not lower what is expected.
    return Math.max(share(list.slice(0, half)), share(list.slice(half)));
  });
}

function heightBin(heightMm: number): number {
  const at = Math.floor((heightMm + HEIGHT_REACH_MM) / HEIGHT_STEP_MM);
  return at >= 0 && at < (2 * HEIGHT_REACH_MM) / HEIGHT_STEP_MM ? at : -1;
}

/**
 * From a window in which the line was due and away to the last such one, with no line seen between.
 * Where it is not known to be due, as at heights that came up only while it was off, a dark stretch
 * goes on as long as nothing is seen, but adds to its length only once the line is due again.
 */
function longestDark(
  timeS: Float64Array,
  expected: Float64Array,
  got: Float64Array,
  lit: Float64Array,
): LineDark {
  let longestS = 0;
  let fromS = 0;
  let darkSinceS: number | null = null;
  let lastDueS = 0;
  let start = 0;
  let [sumExpected, sumGot, sumLit] = [0, 0, 0];
  for (let i = 0; i < timeS.length; i++) {
    sumExpected += expected[i];
    sumGot += got[i];
    sumLit += lit[i];
    while (timeS[i] - timeS[start] > WINDOW_S) {
      sumExpected -= expected[start];
      sumGot -= got[start];
      sumLit -= lit[start];
      start++;
    }
    const isDue = sumExpected >= MIN_EXPECTED;
    const isSeen = isDue ? sumGot > DARK_SHARE * sumExpected : sumLit > LIT_SHARE * (i - start + 1);
    if (isDue) lastDueS = timeS[i];
    if (isSeen) darkSinceS = null;
    else if (isDue) darkSinceS ??= timeS[start];
    if (isDue && darkSinceS !== null && timeS[i] - darkSinceS > longestS) {
      longestS = timeS[i] - darkSinceS;
      fromS = darkSinceS;
    }
  }
  return { longestS, fromS, atEndS: darkSinceS === null ? 0 : lastDueS - darkSinceS };
}
