import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { CHROMA_COLUMN_STEP } from '../band/treadBand.ts';
import { fitTilt } from '../fit/fitTilt.ts';
import type { TiltFit } from '../fit/tiltFit.ts';
import { findTapes, shoulderPanorama, type Tape } from '../mark/tapes.ts';
import { valveMark } from '../mark/valveMark.ts';
import { closeTurn, type TurnClosure } from '../turn/closedTurn.ts';
import { edgeObservations, type EdgeObservations } from './edgeObservations.ts';
import { faceLine, type FaceLine } from './faceLine.ts';
import { finalView } from './finalView.ts';
import { refineShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import type { WheelView } from './wheelView.ts';

/** A whole sweep worked out, from what was kept of its pictures. */
export interface SolvedSweep {
  readonly view: WheelView;
  readonly line: FaceLine;
  readonly closure: TurnClosure;
  readonly mark: Tape;
  readonly observations: EdgeObservations;
  readonly fit: TiltFit;
}

/** Rounds of camera and leans: each needs the other; the third changes nothing that counts. */
const GEOMETRY_ROUNDS = 3;
/** A line that is one circle scatters less than this about it, px for a picture 1280 wide. */
const MAX_FACE_RESIDUAL_PX = 1;
const MIN_FACE_BLOCKS = 9;
const START_CROWN_SLOPE = 0.05;

export function solveSweep(recording: SweepRecording): Outcome<SolvedSweep, RefusalCode> {
  const closure = closeTurn(recording.turn);
  if (!closure) return failed('turn-uncertain', { what: 'no two views a turn apart match' });
  const mark = markOf(recording, closure);
  if (!mark.ok) return mark;
  const turnDegOf = (frame: number): number | null => {
    const { turnIndex } = recording.frames[frame];
    return turnIndex === null ? null : recording.turn.turnDeg[turnIndex] * closure.scale + mark.value.middleDeg;
  };
  const refined = refineShifts(recording);
  let view = recording.view;
  let observations = edgeObservations(recording, refined, view, START_CROWN_SLOPE, turnDegOf);
  let line: FaceLine | null = null;
  for (let round = 0; round < GEOMETRY_ROUNDS; round++) {
    line = faceLine(recording, observations, view);
    const better = finalView(recording, line.points);
    if (!better) return failed('line-lost', { what: 'the line is not one circle', blocks: line.blocksSeen });
    view = better;
    observations = edgeObservations(recording, refined, view, line.crownSlope, turnDegOf);
  }
  const residualPx = (view.sight.poseFit.residualPx * 1280) / view.sight.camera.pose.widthPx;
  if (!line || line.blocksSeen < MIN_FACE_BLOCKS || residualPx > MAX_FACE_RESIDUAL_PX) {
    return failed('line-lost', { what: 'the line is not one circle', residualPx, blocks: line?.blocksSeen ?? 0 });
  }
  const fit = fitTilt(observations);
  if (!fit.ok) return fit;
  return succeeded({ view, line, closure, mark: mark.value, observations, fit: fit.value });
}

/** Tape at the valve, its wheel angle counted from the first picture's turn. */
export function markOf(
  recording: SweepRecording,
  closure: { readonly scale: number },
): Outcome<Tape, 'mark-missing' | 'mark-ambiguous'> {
  const { band, setup } = recording.view;
  const frames = recording.frames.flatMap(({ turnIndex, colour }) =>
    turnIndex === null ? [] : [{ colour, turnDeg: recording.turn.turnDeg[turnIndex] * closure.scale }],
  );
  const azimuthDeg = Float64Array.from(
    { length: band.chromaColumns },
    (_, i) => band.azimuthDeg[Math.min(i * CHROMA_COLUMN_STEP, band.columns - 1)],
  );
  const tapes = findTapes(shoulderPanorama(frames, azimuthDeg));
  return valveMark(tapes, { ...setup.sight.valveMark, edgeRadiusMm: setup.wheel.edgeRadiusMm });
}
