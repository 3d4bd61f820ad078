import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { zOfRowMm } from '../band/treadBand.ts';
import { edgeHeightsMm } from '../edge/edgeProposal.ts';
import { fitLean, leanBasis, riseAt, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import { sightSlope } from '../geometry/cylinder.ts';
import { heightMap } from './finalView.ts';
import { contrastRow, type RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import type { WheelView } from './wheelView.ts';

/** The edge in a block lies within this of where the proposal put it, mm. */
const EDGE_REACH_MM = 3;
/** A plate levelled by hand is out by 1 or 2 mrad, and the wheel leans four to ten times that, radians. */
const STAND_LEAN_SD = 0.008;

/** One block of azimuth as it is followed. */
export interface TrackedBlock {
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

/** Where the template itself stands: its lean, the edge's height on the upright wheel and in each block, mm. */
export interface TemplatePlace {
  readonly lean: Lean;
  readonly offsetMm: number;
  readonly edgeMm: Float64Array;
}

/** Blocks, their basis and the template's own lean; twice, since the swing depends on the edge's height. */
export function placeBlocks(
  recording: SweepRecording,
  refined: RefinedShifts,
  view: WheelView,
  crownSlope: number,
) {
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
): TrackedBlock[] {
  const { tilt, edge, view: old } = recording;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  // The plainest edge tells the template's lean; the chosen one lies a fixed way beside it.
  const expected = Float64Array.from(
    tilt.basis.gainMm,
    (_, b) => edge.plainestMm + riseAt(tilt.basis, edge.lean, b),
  );
  const besideMm = edge.heightMm - edge.plainestMm;
  const edges = edgeHeightsMm(refined.template, expected, EDGE_REACH_MM).map((z) => z + besideMm);
  return [...old.layout.azimuthsDeg].map((azimuthDeg, b) => {
    const map = heightMap(old, view, azimuthDeg);
    const toNewMm = map ? map.toNewMm : (z: number) => z;
    const newAzimuthDeg = map && map.azimuthDeg === map.azimuthDeg ? map.azimuthDeg : azimuthDeg;
    const edgeMm = edges[b] === edges[b] ? edges[b] : expected[b] + besideMm;
    const contrastMm = zOfRowMm(contrastRow(refined, b, tilt.window));
    const slope = sightSlope(
      view.sight.camera,
      radiusMm,
      newAzimuthDeg + view.sight.sightBearingDeg,
      0,
    );
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
  const mean = (of: (l: Lean) => number) =>
    known.reduce((sum, l) => sum + of(l), 0) / Math.max(1, known.length);
  return { toward: -mean((l) => l.toward), across: -mean((l) => l.across) };
}

/** Lean and offset of the template's own place from where the edge stands in it. */
function absoluteLeanOfTemplate(
  blocks: readonly TrackedBlock[],
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
  if (!fit)
    return {
      lean: { liftMm: 0, toward: 0, across: 0 },
      offsetMm: edgeMm[blocks.length >> 1],
      edgeMm,
    };
  return {
    lean: { liftMm: 0, toward: fit.toward, across: fit.across },
    offsetMm: fit.liftMm,
    edgeMm,
  };
}
