import type { SweepRecording } from './sweepRecording.ts';

/** Frames nearer than this to the one kept before them show the same tread once more, degrees. */
const FRAME_SPACING_DEG = 0.4;
/** Some 480° of turn at that spacing: more than the tape needs to be found, 40 MB. */
const KEPT_FRAMES = 1200;
/** Cut off in pieces, since every cut moves all that is left. */
const SLACK_FRAMES = 300;

/**
 * Keeps a recording small that is only followed and never read: call it before each picture. A
 * wheel that stands still adds nothing; of a turning one about the last turn stays.
 */
export function forgetOldFrames(recording: SweepRecording): void {
  const { frames, turn } = recording;
  const last = frames.length - 1;
  if (last >= 1 && isNear(recording, last - 1, last)) frames.splice(last - 1, 1);
  if (frames.length > KEPT_FRAMES + SLACK_FRAMES) frames.splice(0, frames.length - KEPT_FRAMES);
  const firstKept = frames.find(({ turnIndex }) => turnIndex !== null)?.turnIndex ?? 0;
  const tooMany = turn.textures.length - (KEPT_FRAMES + SLACK_FRAMES);
  if (tooMany <= 0) return;
  dropUnused(recording, firstKept);
}

/** Frames of a sweep that is to be read: 80 s of 60 pictures a second, 120 MB. */
export const MOST_FRAMES = 4800;

/**
 * Keeps a sweep that goes on and on small enough: call it before each picture. Of too many frames every
 * second one goes, the newest excepted, so that the beginning of the turn stays.
 */
export function thinOldFrames(recording: SweepRecording): void {
  const { frames } = recording;
  if (frames.length <= MOST_FRAMES) return;
  const last = frames.length - 1;
  const kept = frames.filter((_, i) => i % 2 === 0 || i === last);
  frames.splice(0, frames.length, ...kept);
  dropUnused(recording, 0);
}

function isNear(recording: SweepRecording, a: number, b: number): boolean {
  const turnOf = (frame: number) => {
    const { turnIndex } = recording.frames[frame]!;
    return turnIndex === null ? null : recording.turn.turnDeg[turnIndex]!;
  };
  const [from, to] = [turnOf(a), turnOf(b)];
  // A frame without a turn is of no use to the tape either.
  if (from === null) return true;
  const before = a > 0 ? turnOf(a - 1) : null;
  return to !== null && before !== null && Math.abs(to - before) < FRAME_SPACING_DEG;
}

/** Leaves in the turn tracker what kept frames, the key frame and finding the place again need. */
function dropUnused({ frames, turn }: SweepRecording, firstKept: number): void {
  const count = turn.textures.length;
  const { sure } = turn.doubt;
  const always = new Set([turn.key, sure]);
  const used = new Set<number>();
  for (const { turnIndex } of frames) if (turnIndex !== null) used.add(turnIndex);
  const recent = count - SLACK_FRAMES;
  const newIndex = new Int32Array(count).fill(-1);
  let kept = 0;
  for (let i = 0; i < count; i++) {
    if (i < recent && !(i >= firstKept && used.has(i)) && !always.has(i)) continue;
    newIndex[i] = kept;
    turn.textures[kept] = turn.textures[i]!;
    turn.timeS[kept] = turn.timeS[i]!;
    turn.turnDeg[kept] = turn.turnDeg[i]!;
    turn.correlation[kept] = turn.correlation[i]!;
    kept++;
  }
  for (const list of [turn.textures, turn.timeS, turn.turnDeg, turn.correlation])
    list.length = kept;
  turn.key = newIndex[turn.key]!;
  turn.doubt.sure = sure === null ? null : newIndex[sure]!;
  frames.forEach((frame, i) => {
    if (frame.turnIndex !== null) frames[i] = { ...frame, turnIndex: newIndex[frame.turnIndex]! };
  });
}
