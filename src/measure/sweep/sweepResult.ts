import type { Failure, Outcome } from '../../contract/outcome.ts';
import type { RefusedReading, TurnSummary } from '../../contract/reading.ts';
import { REFUSALS, type RefusalCode } from '../../contract/refusals.ts';
import type { SweepReaderOptions, SweepResult } from '../../contract/sweep.ts';
import { behindCover } from './coveredView.ts';
import { creptOnLean } from './leanReach.ts';
import { checkCameraStill } from './cameraStill.ts';
import { solveSweep, type SolvedGeometry } from './solvedSweep.ts';
import { checkStand } from './standLean.ts';
import {
  checkClosedTurn,
  checkLineSeen,
  checkRecording,
  checkTurnWitness,
  coveredDeg,
  isWholeTurn,
  LONGEST_DARK_AT_END_S,
  LONGEST_DARK_S,
  senseOf,
} from './sweepChecks.ts';
import { sweepReading } from './sweepReading.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { sweepTrace } from './sweepTrace.ts';

/**
 * The result of a whole recording. Every check stands before the figures it guards: a sweep that
 * cannot be trusted is refused with its reason and carries no figure. Camera and leans are solved only
 * where the checks before them let the recording through.
 */
export function sweepResult(
  recording: SweepRecording,
  solve: () => Outcome<SolvedGeometry, RefusalCode>,
  options: SweepReaderOptions,
): SweepResult {
  const turn = turnSoFar(recording);
  const check = checkRecording(recording, options);
  if (check && !check.ok) return refusedResult(check.failure, turn);
  const geometry = solve();
  if (!geometry.ok) return refusedResult(geometry.failure, turn);
  const { observations, line, view, lineInset } = geometry.value;
  // Before the camera's stillness: where the line is off, chance sightings would tell of a way.
  const seen = checkLineSeen(recording, observations);
  if (seen && !seen.ok) return refusedResult(seen.failure, turn);
  const still = checkCameraStill(observations, line, view, lineInset.insetMm > 0);
  if (still && !still.ok) {
    const crept = creptOnLean(observations);
    const moved = crept && !crept.ok ? crept.failure : rockedHard(recording, geometry.value);
    return refusedResult(moved ?? still.failure, turn);
  }
  const witness = checkTurnWitness(recording);
  if (witness && !witness.ok) return refusedResult(witness.failure, turn);
  const solved = solveSweep(recording, geometry.value);
  if (!solved.ok) return refusedResult(solved.failure, turn);
  const closed = checkClosedTurn(coveredDeg(recording.turn.turnDeg) * solved.value.closure.scale);
  if (closed && !closed.ok) return refusedResult(closed.failure, turn);
  const stand = checkStand(solved.value);
  if (stand && !stand.ok) return refusedResult(stand.failure, turn);
  const parts = sweepReading(recording, solved.value, options);
  if (!parts.ok) return refusedResult(parts.failure, turn);
  return {
    reading: parts.value.reading,
    trace: sweepTrace(solved.value, parts.value.contributionsG),
  };
}

/**
 * A wheel that swings by a groove's depth takes the line on its face along, so that the camera seems to
 * have moved: then the swing is what to wait for. Null where the wheel did not swing so.
 */
function rockedHard(
  recording: SweepRecording,
  geometry: SolvedGeometry,
): Failure<RefusalCode> | null {
  const solved = solveSweep(recording, geometry);
  return !solved.ok && solved.failure.code === 'rocking-too-strong' ? solved.failure : null;
}

/** In bad light line, tread or tape go unseen: the light is then what to change. */
export function inLight(result: SweepResult, light: 'too-dark' | 'too-bright' | null): SweepResult {
  const { reading } = result;
  if (reading.status !== 'refused' || light === null) return result;
  return refusedResult({ code: light, evidence: {} }, reading.turn);
}

/** Where something stood before part of the tread, that is what to change, whatever it spoilt first. */
export function inCover(result: SweepResult, recording: SweepRecording): SweepResult {
  const { reading } = result;
  if (reading.status !== 'refused') return result;
  const covered = behindCover(recording, reading.refusals[0].code);
  return covered ? refusedResult(covered, reading.turn) : result;
}

/** How a sweep ends of whose beginning only a few pictures are kept. */
const LATE_CODES: readonly RefusalCode[] = [
  'turn-uncertain',
  'turn-incomplete',
  'too-few-frames',
  'too-fast',
  'lean-too-large',
];

/**
 * While no line is found only some of the pictures are kept. A sweep of which they are part and which
 * cannot be read was lost for want of the line: that is then what to change.
 */
export function inLine(
  result: SweepResult,
  recording: SweepRecording,
  without: { readonly fromS: number; readonly untilS: number },
): SweepResult {
  const { reading } = result;
  const missingS = without.untilS - without.fromS;
  if (!(missingS > LONGEST_DARK_AT_END_S)) return result;
  // With the pictures that were kept it may well be read: then as long is taken on trust as in mid-sweep.
  const isLate =
    reading.status === 'refused'
      ? reading.refusals.some(({ code }) => LATE_CODES.includes(code))
      : missingS > LONGEST_DARK_S;
  const { timeS, turnDeg } = recording.turn;
  const since = turnDeg.filter((_, i) => timeS[i] > without.untilS);
  if (!isLate || isWholeTurn(coveredDeg(since))) return result;
  const evidence = { secondsWithoutLine: Math.round(missingS), aboutSecond: 0 };
  return refusedResult({ code: 'line-lost', evidence }, reading.turn);
}

function turnSoFar(recording: SweepRecording): TurnSummary | null {
  const { turnDeg } = recording.turn;
  if (turnDeg.length === 0) return null;
  return {
    coveredDeg: coveredDeg(turnDeg),
    sense: senseOf(turnDeg),
    closureDeg: null,
  };
}

export function refusedResult(
  failure: Failure<RefusalCode>,
  turn: TurnSummary | null,
): SweepResult {
  const { cause, remedy } = REFUSALS[failure.code];
  const reading: RefusedReading = {
    format: 'tiltsweep.reading/1',
    status: 'refused',
    refusals: [{ code: failure.code, message: cause, remedy, evidence: failure.evidence }],
    turn,
  };
  return { reading, trace: null };
}
