import type { SweepObservations } from '../../contract/observations.ts';
import { fitLean, riseAt, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { EDGE_PLACE_SD_MM } from './templateEdge.ts';
import { placeBlocks } from './templatePlace.ts';
import { creepWay } from './wheelMotion.ts';
import { deviationAboutZero, leftOfPlanes, shapeRound, UNEVEN_MM } from './unevenEdge.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Edge heights above the laser plane for the fit, from the blocks' shifts: carried to the final
 * camera, the wheel's sideways way and the inward swing of the leaning edge taken out.
 */
export interface EdgeObservations extends SweepObservations {
  /** Index of each observation's frame in the recording. */
  readonly frameIndex: Int32Array;
  /** Mean height of the edge above the line, mm. */
  readonly offsetMm: number;
  /** How badly a leaning circle explains where the edge stands by this camera (`TemplatePlace`). */
  readonly placeMisfit: number;
  /** How far single blocks lie from their picture's plane, one standard deviation, mm. */
  readonly unevenMm: number;
  /** Lean of each frame with its absolute part, radians. */
  readonly leans: readonly Lean[];
}

/** A block farther than this from its frame's own plane has hopped or shows a hand, mm. */
const HOPPED_MM = 1.2;
const LIFT_SD_MM = 0.12;

export function edgeObservations(
  recording: SweepRecording,
  refined: RefinedShifts,
  view: WheelView,
  turnDegOf: (frame: number) => number | null,
): EdgeObservations {
  const { blocks, basis, first } = placeBlocks(recording, refined, view);
  const azimuthsDeg = Float64Array.from(blocks, (b) => b.azimuthDeg);
  const used: number[] = [];
  recording.frames.forEach((_, f) => {
    if (refined.leans[f] && turnDegOf(f) !== null) used.push(f);
  });
  const n = used.length;
  const seen = new Float32Array(n * blocks.length);
  const standardErrorMm = new Float32Array(n * blocks.length);
  used.forEach((f, i) => {
    blocks.forEach((block, b) => {
      const old = refined.shiftMm[f * blocks.length + b];
      seen[i * blocks.length + b] = block.toNewMm(block.edgeMm + old) - block.toNewMm(block.edgeMm);
      standardErrorMm[i * blocks.length + b] = refined.standardErrorMm[f * blocks.length + b];
    });
  });
  const turnDeg = Float64Array.from(used, (f) => turnDegOf(f)!);
  const timeS = Float64Array.from(used, (f) => recording.frames[f].timeS);
  const ballRadiusMm = view.setup.stand.ballDiameterMm / 2;
  const atWheelDeg = (at: number) =>
    azimuthsDeg[at % blocks.length] - turnDeg[Math.floor(at / blocks.length)];
  const { shape, unevenMm, upright } = shapeOf(seen, standardErrorMm, basis, atWheelDeg);
  const even = shape ? seen.map((shift, at) => shift - shape(atWheelDeg(at))) : seen;
  const relative = shape ? frameLeans(even, standardErrorMm, basis) : upright;
  const leans = relative.map((lean) => addedLean(first.lean, lean));
  const way = creepWay(leans, turnDeg, ballRadiusMm);
  const heightMm = seen.map((shift, at) => {
    const i = Math.floor(at / blocks.length);
    const block = blocks[at % blocks.length];
    const b = at % blocks.length;
    const planeMm = riseAt(basis, leans[i], b) - riseAt(basis, first.lean, b);
    if (!(Math.abs(even[at] - planeMm) < HOPPED_MM)) return NaN;
    // A way outward (toward the camera) looks lower.
    const outwardMm = way.toward[i] * basis.cos[b] + way.across[i] * basis.sin[b];
    const risen = first.edgeMm[b] - first.offsetMm + shift + block.slope * outwardMm;
    return first.offsetMm + (risen * view.setup.wheel.edgeRadiusMm) / block.gainMm;
  });
  return {
    azimuthsDeg,
    timeS,
    turnDeg,
    heightMm,
    standardErrorMm: standardErrorMm.map(
      (se, at) => (se * view.setup.wheel.edgeRadiusMm) / blocks[at % blocks.length].gainMm,
    ),
    edgeRadiusMm: view.setup.wheel.edgeRadiusMm,
    azimuthBiasSdMm: EDGE_PLACE_SD_MM,
    frameIndex: Int32Array.from(used),
    offsetMm: first.offsetMm,
    placeMisfit: first.misfit,
    unevenMm,
    leans,
  };
}

/**
 * Shape of an uneven feature by wheel angle, null where it is even, and how uneven it is. What steps from block to block
 * would else pass for blocks that hopped, and those that are left would hold the lean back. `upright`: the
 * frames' leans of the last pass, which of an even feature are the leans themselves.
 */
function shapeOf(
  seen: Float32Array,
  standardErrorMm: Float32Array,
  basis: LeanBasis,
  wheelDegAt: (at: number) => number,
): { shape: ((wheelDeg: number) => number) | null; unevenMm: number; upright: Lean[] } {
  let shape: ((wheelDeg: number) => number) | null = null;
  let unevenMm = 0;
  let upright: Lean[] = [];
  for (let pass = 0; pass < SHAPE_PASSES; pass++) {
    const known = shape;
    const even = known ? seen.map((shift, at) => shift - known(wheelDegAt(at))) : seen;
    upright = frameLeans(even, standardErrorMm, basis);
    const left = leftOfPlanes(basis, seen, upright);
    if (pass === 0) unevenMm = deviationAboutZero(left);
    if (unevenMm < UNEVEN_MM) break;
    shape = shapeRound(left, wheelDegAt);
  }
  return { shape, unevenMm, upright };
}

/** Leans and shape each need the other; the third pass changes nothing that counts. */
const SHAPE_PASSES = 3;

/** Lean of each frame against the template's, the last one known where too little was seen. */
function frameLeans(seen: Float32Array, standardErrorMm: Float32Array, basis: LeanBasis): Lean[] {
  const blocks = basis.gainMm.length;
  const leans: Lean[] = [];
  for (let at = 0; at < seen.length; at += blocks) {
    const fit = fitLean(
      basis,
      seen.subarray(at, at + blocks),
      standardErrorMm.subarray(at, at + blocks),
      {
        liftMm: 0,
        liftSdMm: LIFT_SD_MM,
      },
    );
    const { toward, across } = fit ?? leans[leans.length - 1] ?? { toward: 0, across: 0 };
    leans.push({ liftMm: 0, toward, across });
  }
  return leans;
}

function addedLean(template: Lean, { toward, across }: Lean): Lean {
  return { liftMm: 0, toward: template.toward + toward, across: template.across + across };
}
