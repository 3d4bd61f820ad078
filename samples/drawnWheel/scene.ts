import type { MarkColour, SweepSetup } from '../../src/contract/setup.ts';
import type { DrawnCameraPlace } from './drawnCamera.ts';

/** Everything that is drawn, in numbers. Lengths mm, masses g (wheel kg), angles degrees. */
export interface DrawnScene {
  readonly seed: number;
  readonly massKg: number;
  readonly edgeRadiusMm: number;
  readonly weightRadiusMm: number;
  readonly ballDiameterMm: number;
  readonly pendulumDepthMm: number;
  readonly lineAbovePlateMm: number;
  /** Height of the edge above the line on the upright wheel. */
  readonly edgeAboveLineMm: number;
  /** Grooves round the tread, top and bottom in mm from the edge; left out: two wide ones. */
  readonly grooves?: readonly DrawnGroove[];
  /** Blocks in place of ribs; left out: ribs. */
  readonly blocks?: DrawnBlocks;
  /** Light tape stuck round the shoulder; left out: none. */
  readonly band?: DrawnBand;
  /** Growth of the tread's radius per mm downward. */
  readonly crownSlope: number;
  readonly unbalanceGmm: number;
  readonly heavySpotDeg: number;
  /** Lean of the axis that stays in the room (after the ball's amplification), and its high side. */
  readonly standMrad: number;
  readonly standHighAzimuthDeg: number;
  readonly rockingPeriodS: number;
  readonly dampingRatio: number;
  readonly spinOverTransverseInertia: number;
  /** Swing of the rim that is on the wheel at the start, mm. */
  readonly rockingMm: number;
  /** Knocks that the wheel gets on the way; left out: none. */
  readonly knocks?: DrawnKnocks;
  readonly laserColour: 'green' | 'red';
  /** Light of the laser at its crest in its own channel, steps of 255. */
  readonly laserPeak: number;
  /** RMS width of the sheet on the tread. */
  readonly laserWidthMm: number;
  /** The laser goes off at this time, s. */
  readonly laserOffAtS: number;
  readonly tapes: readonly DrawnTape[];
  readonly camera: DrawnCameraPlace;
  readonly frameRateHz: number;
  /** Turn at given times, degrees, clockwise positive; between them eased speed. */
  readonly turnPoints: readonly TurnPoint[];
  /** Standard deviation of the pictures' noise, steps. */
  readonly noise: number;
}

/** So many a second, at random, each from any side and good for a swing of the rim by about so much. */
export interface DrawnKnocks {
  readonly perS: number;
  readonly swingMm: number;
}

export interface DrawnGroove {
  readonly topMm: number;
  readonly bottomMm: number;
}

/** Cross grooves right through the tread in place of slots; grooves step from block to block. */
export interface DrawnBlocks {
  readonly crossWidthMm: number;
  /** A groove stands so far above its place at one block and so far below at the next. */
  readonly stepMm: number;
}

/** Borders in mm from the edge, as the hand meant them; a cosine wave of its error, and the joint. */
export interface DrawnBand {
  readonly bottomMm: number;
  readonly topMm: number;
  readonly luma: number;
  readonly offSquareMm: number;
  readonly highAtDeg: number;
  readonly joinDeg: number;
  readonly joinStepMm: number;
}

export interface DrawnTape {
  readonly middleDeg: number;
  readonly widthMm: number;
  /** Luma, and colour differences from 0 (BT.601). */
  readonly yuv: readonly [number, number, number];
}

export interface TurnPoint {
  readonly timeS: number;
  readonly turnDeg: number;
}

const TAPE_RGB: Readonly<Record<MarkColour, readonly [number, number, number]>> = {
  white: [205, 205, 205],
  yellow: [210, 190, 40],
  orange: [220, 120, 30],
  red: [190, 40, 40],
  green: [40, 160, 60],
  blue: [40, 80, 200],
};

export function drawnTape(middleDeg: number, widthMm: number, colour: MarkColour): DrawnTape {
  const [r, g, b] = TAPE_RGB[colour];
  const y = 0.299 * r + 0.587 * g + 0.114 * b;
  return { middleDeg, widthMm, yuv: [y, 0.564 * (b - y), 0.713 * (r - y)] };
}

/** One turn and a little more, with the wheel at rest for a second at either end. */
export function steadyTurn(fromDeg: number, byDeg: number, durationS: number): TurnPoint[] {
  return [
    { timeS: 0, turnDeg: fromDeg },
    { timeS: 1, turnDeg: fromDeg },
    { timeS: durationS - 1, turnDeg: fromDeg + byDeg },
    { timeS: durationS, turnDeg: fromDeg + byDeg },
  ];
}

export const SHED_SCENE: DrawnScene = {
  seed: 7,
  massKg: 16.5,
  edgeRadiusMm: 305,
  weightRadiusMm: 185,
  ballDiameterMm: 63.5,
  pendulumDepthMm: 8,
  lineAbovePlateMm: 51,
  edgeAboveLineMm: -3,
  crownSlope: 0.05,
  unbalanceGmm: 3000,
  heavySpotDeg: 60,
  standMrad: 3,
  standHighAzimuthDeg: 110,
  rockingPeriodS: 4.4,
  dampingRatio: 0.02,
  spinOverTransverseInertia: 1.7,
  rockingMm: 0.4,
  laserColour: 'green',
  laserPeak: 150,
  laserWidthMm: 0.9,
  laserOffAtS: Infinity,
  tapes: [drawnTape(0, 22, 'white')],
  camera: {
    widthPx: 800,
    heightPx: 450,
    horizontalFovDeg: 64,
    downTiltDeg: 32,
    yawDeg: 0,
    rollDeg: 0,
    distanceMm: 600,
    heightMm: 190,
  },
  frameRateHz: 10,
  turnPoints: steadyTurn(-30, 392, 25),
  noise: 2,
};

/** What a person would enter for the scene, without a tap on the edge. */
export function setupOf(scene: DrawnScene, mark: SweepSetup['sight']['valveMark']): SweepSetup {
  return {
    format: 'tiltsweep.setup/1',
    label: 'drawn wheel',
    wheel: {
      massKg: scene.massKg,
      edgeRadiusMm: scene.edgeRadiusMm,
      weightRadiusMm: scene.weightRadiusMm,
    },
    stand: {
      ballDiameterMm: scene.ballDiameterMm,
      pendulumDepthMm: scene.pendulumDepthMm,
      lineAbovePlateMm: scene.lineAbovePlateMm,
    },
    camera: {
      downTiltDeg: scene.camera.downTiltDeg,
      horizontalFovDeg: scene.camera.horizontalFovDeg,
    },
    sight: { valveMark: mark },
    weightStepG: 5,
  };
}
