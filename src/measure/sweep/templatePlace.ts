import { fitLean, leanBasis, riseAt, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import { sightSlope } from '../geometry/cylinder.ts';
import { heightMap } from './finalView.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { EDGE_PLACE_SD_MM, templateEdge } from './templateEdge.ts';
import { edgeGainMm, type WheelView } from './wheelView.ts';

/** A plate levelled by hand is out by 1 or 2 mrad, and the wheel leans four to ten times that, radians. */
export const STAND_LEAN_SD = 0.008;

/** One block of azimuth as it is followed. */
export interface TrackedBlock {
  readonly azimuthDeg: number;
  readonly toNewMm: (oldZMm: number) => number;
  /** Where the template shows the edge, old heights, mm. */
  readonly edgeMm: number;
  readonly slope: number;
  /** Rise of the edge seen for a radian of lean: the true rise, and the look of its inward swing. */
  readonly gainMm: number;
}

/** Where the template itself stands: its lean, the edge's height on the upright wheel and in each block, mm. */
export interface TemplatePlace {
  readonly lean: Lean;
  readonly offsetMm: number;
  readonly edgeMm: Float64Array;
  /**
   * How badly one circle, leaning as a nearly level stand lets it, explains where the edge stands: twice
   * a negative log-likelihood, about 4 when the camera is right.
   */
  readonly misfit: number;
}

/**
 * The template's edge strays from one circle by a quarter of a millimetre with the camera that is right
 * (rounding of the rib's edge, slots), and neighbouring blocks err together: so many err on their own.
 */
const EDGE_STRAY_MM = 0.25;
const INDEPENDENT_BLOCKS = 8;

/** Blocks, their basis and the template's own lean; twice, since the swing depends on the edge's height. */
export function placeBlocks(recording: SweepRecording, refined: RefinedShifts, view: WheelView) {
  const edgeMm = templateEdge(recording, refined);
  const levelLean = leanOfLevelStand(refined);
  let edgeHeightMm = recording.edge.heightMm;
  let blocks = describeBlocks(recording, edgeMm, view, edgeHeightMm);
  for (let pass = 0; ; pass++) {
    const basis = leanBasis(
      Float64Array.from(blocks, (b) => b.azimuthDeg),
      Float64Array.from(blocks, (b) => b.gainMm),
    );
    const first = recording.edge.outline
      ? placedLevel(basis, levelLean)
      : absoluteLeanOfTemplate(blocks, basis, levelLean);
    if (pass === 1) return { blocks, basis, first };
    edgeHeightMm = first.offsetMm;
    blocks = describeBlocks(recording, edgeMm, view, edgeHeightMm);
  }
}

function describeBlocks(
  recording: SweepRecording,
  edgeMm: Float64Array,
  view: WheelView,
  edgeHeightMm: number,
): TrackedBlock[] {
  const { view: old } = recording;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  return [...old.layout.azimuthsDeg].map((azimuthDeg, b) => {
    const map = heightMap(old, view, azimuthDeg);
    const toNewMm = map ? map.toNewMm : (z: number) => z;
    const newAzimuthDeg = map && map.azimuthDeg === map.azimuthDeg ? map.azimuthDeg : azimuthDeg;
    const slope = sightSlope(
      view.sight.camera,
      radiusMm,
      newAzimuthDeg + view.sight.sightBearingDeg,
      0,
    );
    const gainMm = edgeGainMm(view, newAzimuthDeg, edgeHeightMm);
    return { azimuthDeg: newAzimuthDeg, toNewMm, edgeMm: edgeMm[b], slope, gainMm };
  });
}

/**
 * The template's lean if the stand were level: over a whole turn the wheel's own lean averages out,
 * so that what the frames lean against the template is what the template leans the other way.
 */
function leanOfLevelStand(refined: RefinedShifts): { toward: number; across: number } {
  const known = refined.leans.filter((l) => l !== null);
  const mean = (of: (l: Lean) => number) =>
    known.reduce((sum, l) => sum + of(l), 0) / Math.max(1, known.length);
  return { toward: -mean((l) => l.toward), across: -mean((l) => l.across) };
}

/**
 * The template of an outline, with a level stand: where a rounded shoulder is seen from another side its
 * outline is another place of it, so that what stands still of it tells no lean.
 */
function placedLevel(
  basis: LeanBasis,
  levelLean: { readonly toward: number; readonly across: number },
): TemplatePlace {
  const lean = { liftMm: 0, ...levelLean };
  return {
    lean,
    offsetMm: 0,
    edgeMm: basis.gainMm.map((_, b) => riseAt(basis, lean, b)),
    misfit: 0,
  };
}

/** Lean and offset of the template's own place from where the edge stands in it. */
function absoluteLeanOfTemplate(
  blocks: readonly TrackedBlock[],
  basis: LeanBasis,
  levelLean: { readonly toward: number; readonly across: number },
): TemplatePlace {
  const edgeMm = Float64Array.from(blocks, (b) => b.toNewMm(b.edgeMm));
  const even = new Float64Array(blocks.length).fill(EDGE_PLACE_SD_MM);
  const fit = fitLean(basis, edgeMm, even, {
    liftMm: 0,
    liftSdMm: 100,
    lean: { ...levelLean, sd: STAND_LEAN_SD },
  });
  if (!fit)
    return {
      lean: { liftMm: 0, toward: 0, across: 0 },
      offsetMm: edgeMm[blocks.length >> 1],
      ...{ edgeMm, misfit: Infinity },
    };
  const standLean = Math.hypot(fit.toward - levelLean.toward, fit.across - levelLean.across);
  return {
    lean: { liftMm: 0, toward: fit.toward, across: fit.across },
    offsetMm: fit.liftMm,
    edgeMm,
    misfit:
      INDEPENDENT_BLOCKS * (fit.residualMm / EDGE_STRAY_MM) ** 2 + (standLean / STAND_LEAN_SD) ** 2,
  };
}
