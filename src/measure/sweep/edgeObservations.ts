import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { zOfRowMm } from '../band/treadBand.ts';
import { edgeHeightsMm } from '../edge/edgeProposal.ts';
import { fitLean, leanBasis, riseAt, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import { sightSlope } from '../geometry/cylinder.ts';
import { heightMap } from './finalView.ts';
import { contrastRow, type RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { standLeanFromCreep } from './standLean.ts';
import { creepWay } from './wheelMotion.ts';
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
  /** Lean of each frame with its absolute part, radians. */
  readonly leans: readonly Lean[];
}

/** A block farther than this from its frame's own plane has hopped or shows a hand, mm. */
const HOPPED_MM = 1.2;
/** How well the edge's absolute place is known at one azimuth against its neighbours, mm. */
const AZIMUTH_BIAS_SD_MM = 0.7;
const EDGE_REACH_MM = 3;
const LIFT_SD_MM = 0.12;
/** A plate levelled by hand is out by 1 or 2 mrad, and the wheel leans four to ten times that, radians. */
const STAND_LEAN_SD = 0.008;

interface Block {
  readonly azimuthDeg: number;
  readonly toNewMm: (oldZMm: number) => number;
  /** Where the template shows the contrast that is followed and the edge, old heights, mm. */
  readonly contrastMm: number;
  readonly edgeMm: number;
  readonly slope: number;
  /**
   * Rise seen for a radian of lean: true rise on the crowned tread, inward swing of what is
   * followed, and the larger look of what stands out nearer to the camera than the nominal tread.
   */
  readonly gainMm: number;
}

export function edgeObservations(
  recording: SweepRecording,
  refined: RefinedShifts,
  view: WheelView,
  crownSlope: number,
  turnDegOf: (frame: number) => number | null,
): EdgeObservations {
  const { blocks, basis, first: placed } = placeBlocks(recording, refined, view, crownSlope);
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
      seen[i * blocks.length + b] = block.toNewMm(block.contrastMm + old) - block.toNewMm(block.contrastMm);
      standardErrorMm[i * blocks.length + b] = refined.standardErrorMm[f * blocks.length + b];
    });
  });
  const turnDeg = Float64Array.from(used, (f) => turnDegOf(f)!);
  const timeS = Float64Array.from(used, (f) => recording.frames[f].timeS);
  const ballRadiusMm = view.setup.stand.ballDiameterMm / 2;
  const guessed = frameLeans(seen, standardErrorMm, basis, placed.lean);
  const guessedWay = creepWay(guessed, turnDeg, ballRadiusMm);
  const correction = standLeanFromCreep({
    slopes: Float64Array.from(blocks, (b) => b.slope),
    cos: basis.cos,
    sin: basis.sin,
    azimuthsDeg,
    heightMm: seen.map((shift, at) => {
      const b = at % blocks.length;
      const i = Math.floor(at / blocks.length);
      const outwardMm = guessedWay.toward[i] * basis.cos[b] + guessedWay.across[i] * basis.sin[b];
      return shift + blocks[b].slope * outwardMm;
    }),
    turnDeg,
    timeS,
    ballRadiusMm,
    leanSd: STAND_LEAN_SD,
  });
  const first = leanedBy(placed, blocks, basis, correction);
  const leans = guessed.map((l) => ({
    liftMm: 0,
    toward: l.toward + correction.toward,
    across: l.across + correction.across,
  }));
  const way = creepWay(leans, turnDeg, ballRadiusMm);
  const heightMm = seen.map((shift, at) => {
    const i = Math.floor(at / blocks.length);
    const block = blocks[at % blocks.length];
    const b = at % blocks.length;
    const planeMm = riseAt(basis, leans[i], b) - riseAt(basis, first.lean, b);
    if (!(Math.abs(shift - planeMm) < HOPPED_MM)) return NaN;
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
    standardErrorMm: standardErrorMm.map((se, at) => (se * view.setup.wheel.edgeRadiusMm) / blocks[at % blocks.length].gainMm),
    edgeRadiusMm: view.setup.wheel.edgeRadiusMm,
    azimuthBiasSdMm: AZIMUTH_BIAS_SD_MM,
    frameIndex: Int32Array.from(used),
    offsetMm: first.offsetMm,
    leans,
  };
}

interface TemplatePlace {
  readonly lean: Lean;
  readonly offsetMm: number;
  readonly edgeMm: Float64Array;
}

/** The template's place with its lean corrected: the offset follows from where the edge stands. */
function leanedBy(
  place: TemplatePlace,
  blocks: readonly Block[],
  basis: LeanBasis,
  correction: { readonly toward: number; readonly across: number },
): TemplatePlace {
  const lean: Lean = {
    liftMm: 0,
    toward: place.lean.toward + correction.toward,
    across: place.lean.across + correction.across,
  };
  const offsets = blocks.map((_, b) => place.edgeMm[b] - riseAt(basis, lean, b)).sort((a, b) => a - b);
  return { lean, offsetMm: offsets[offsets.length >> 1], edgeMm: place.edgeMm };
}

/** Blocks, their basis and the template's own lean; twice, since the swing depends on the edge's height. */
function placeBlocks(recording: SweepRecording, refined: RefinedShifts, view: WheelView, crownSlope: number) {
  const levelLean = leanOfLevelStand(refined);
  let edgeHeightMm = recording.edge.heightMm;
  let blocks = describeBlocks(recording, refined, view, crownSlope, edgeHeightMm);
  for (let pass = 0; ; pass++) {
    const basis = leanBasis(
      Float64Array.from(blocks, (b) => b.azimuthDeg),
      Float64Array.from(blocks, (b) => b.gainMm),
    );
    const first = absoluteLeanOfTemplate(blocks, basis, levelLean);
    if (pass === 1) return { blocks, basis, first };
    edgeHeightMm = first.offsetMm;
    blocks = describeBlocks(recording, refined, view, crownSlope, edgeHeightMm);
  }
}

function describeBlocks(
  recording: SweepRecording,
  refined: RefinedShifts,
  view: WheelView,
  crownSlope: number,
  edgeHeightMm: number,
): Block[] {
  const { tilt, edge, view: old } = recording;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  // The plainest edge tells the template's lean; the chosen one lies a fixed way beside it.
  const expected = Float64Array.from(tilt.basis.gainMm, (_, b) => edge.plainestMm + riseAt(tilt.basis, edge.lean, b));
  const besideMm = edge.heightMm - edge.plainestMm;
  const edges = edgeHeightsMm(refined.template, expected, EDGE_REACH_MM).map((z) => z + besideMm);
  return [...old.layout.azimuthsDeg].map((azimuthDeg, b) => {
    const map = heightMap(old, view, azimuthDeg);
    const toNewMm = map ? map.toNewMm : (z: number) => z;
    const newAzimuthDeg = map && map.azimuthDeg === map.azimuthDeg ? map.azimuthDeg : azimuthDeg;
    const edgeMm = edges[b] === edges[b] ? edges[b] : expected[b] + besideMm;
    const contrastMm = zOfRowMm(contrastRow(refined, b, tilt.window));
    const slope = sightSlope(view.sight.camera, radiusMm, newAzimuthDeg + view.sight.sightBearingDeg, 0);
    // The swing is that of what is followed: the contrast's height on the wheel, not the edge's.
    const belowEdgeMm = toNewMm(edgeMm) - toNewMm(contrastMm);
    const aboveBallMm = view.lineAboveBallMm + edgeHeightMm - belowEdgeMm;
    const outMm = crownSlope * belowEdgeMm;
    const nearerMm = radialDistanceMm(view, newAzimuthDeg);
    const gainMm = (radiusMm + outMm + slope * aboveBallMm) * (nearerMm / (nearerMm - outMm));
    return { azimuthDeg: newAzimuthDeg, toNewMm, contrastMm, edgeMm, slope, gainMm };
  });
}

/** Way from the camera to the tread along the radius through an azimuth, mm. */
function radialDistanceMm(view: WheelView, azimuthDeg: number): number {
  const bearing = (azimuthDeg + view.sight.sightBearingDeg) * RAD_PER_DEG;
  return view.sight.camera.pose.distanceMm * Math.cos(bearing) - view.setup.wheel.edgeRadiusMm;
}

/**
 * The template's lean if the stand were level: over a whole turn the wheel's own lean averages out,
 * so that what the frames lean against the template is what the template leans the other way.
 */
function leanOfLevelStand(refined: RefinedShifts): { toward: number; across: number } {
  const known = refined.leans.filter((l) => l !== null);
  const mean = (of: (l: Lean) => number) => known.reduce((sum, l) => sum + of(l), 0) / Math.max(1, known.length);
  return { toward: -mean((l) => l.toward), across: -mean((l) => l.across) };
}

/** Lean and offset of the template's own place from where the edge stands in it. */
function absoluteLeanOfTemplate(
  blocks: readonly Block[],
  basis: LeanBasis,
  levelLean: { readonly toward: number; readonly across: number },
): TemplatePlace {
  const edgeMm = Float64Array.from(blocks, (b) => b.toNewMm(b.edgeMm));
  const even = new Float64Array(blocks.length).fill(1);
  const fit = fitLean(basis, edgeMm, even, {
    liftMm: 0,
    liftSdMm: 100,
    lean: { ...levelLean, sd: STAND_LEAN_SD },
  });
  if (!fit) return { lean: { liftMm: 0, toward: 0, across: 0 }, offsetMm: edgeMm[blocks.length >> 1], edgeMm };
  return { lean: { liftMm: 0, toward: fit.toward, across: fit.across }, offsetMm: fit.liftMm, edgeMm };
}

function frameLeans(seen: Float32Array, standardErrorMm: Float32Array, basis: LeanBasis, template: Lean): Lean[] {
  const blocks = basis.gainMm.length;
  const leans: Lean[] = [];
  for (let at = 0; at < seen.length; at += blocks) {
    const fit = fitLean(basis, seen.subarray(at, at + blocks), standardErrorMm.subarray(at, at + blocks), {
      liftMm: 0,
      liftSdMm: LIFT_SD_MM,
    });
    const relative = fit ?? leans[leans.length - 1] ?? { liftMm: 0, toward: 0, across: 0 };
    leans.push({
      liftMm: 0,
      toward: template.toward + relative.toward,
      across: template.across + relative.across,
    });
  }
  return leans;
}
