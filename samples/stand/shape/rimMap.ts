import type { StandScene, StandWeight } from '../scene/standScene.ts';
import { PIECE_MM, stripLengthMm } from '../scene/weightStrip.ts';
import { latticeNoise, noiseAt } from './latticeNoise.ts';
import { skinPoint, profileLengthMm, type TyreProfile } from './tyreProfile.ts';

/**
 * The rim inside the tyre as seen from above: heights in the tyre frame over a square grid (x to
 * wheel angle 0, y to −90°), with colour. Spokes, hub, bolt holes, the ball's cap in the bore, the
 * valve and the weights that were stuck on.
 */
export interface RimMap {
  readonly size: number;
  readonly halfWidthMm: number;
  readonly lidMm: number;
  readonly heightMm: Float32Array;
  /** 255·√reflectance of red, green, blue; then gloss, 0 to 255. */
  readonly texels: Uint8Array;
}

const SIZE = 640;
/** The rim's lip stands over the tyre's bead by so much. */
const LIP_MM = 6;
/** Of the tyre's flank so much is in the map: sights that leave over the far lip end on it. */
const FLANK_MM = 14;
/** The lip goes on by two texels where sights come against it from outside. */
const LIP_OUTSIDE_MM = 1.4;
const WINDOW_DEPTH_MM = 125;
/** Fall of walls in windows, mm per mm: a wall of a texel would have no slope of its own. */
const WALL_FALL = 5;
/** Where light comes in from above alone, walls are darker the deeper; the least that is left. */
const DEEP_SHADE = 0.3;
/** Below the lid, the end of the ledge behind the lip. */
const LEDGE_MM = 23;
/** A sliver would be less than a few texels. */
const SHORTEST_SEEN_MM = 8;
const BOLTS = 5;
const BOLT_CIRCLE_MM = 52;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  /** Clockwise from the valve, degrees. */
  readonly angleDeg: number;
}

interface Spot {
  z: number;
  rgb: readonly [number, number, number];
  gloss: number;
}

const PAINT = {
  silver: [0.46, 0.465, 0.47],
  dark: [0.06, 0.06, 0.065],
} as const;
const STEEL = [0.55, 0.55, 0.56] as const;
const BLACK = [0.012, 0.012, 0.012] as const;
const ZINC = [0.36, 0.37, 0.4] as const;
const RUBBER = [0.026, 0.0255, 0.025] as const;
/** Unevenness of paint, share. */
const GRAIN = 0.03;

export function rimMap(scene: StandScene, profile: TyreProfile, ballCentreMm: number): RimMap {
  const lidMm = skinPoint(profile, profileLengthMm(profile))[1] + LIP_MM;
  const halfWidthMm = profile.flangeRadiusMm + FLANK_MM;
  const heightMm = new Float32Array(SIZE * SIZE);
  const texels = new Uint8Array(4 * SIZE * SIZE);
  const grain = latticeNoise(scene.seed + 51, 300, 300);
  for (let row = 0; row < SIZE; row++) {
    for (let column = 0; column < SIZE; column++) {
      const x = ((column + 0.5) / SIZE - 0.5) * 2 * halfWidthMm;
      const y = ((row + 0.5) / SIZE - 0.5) * 2 * halfWidthMm;
      const angleDeg = ((Math.atan2(-y, x) * 180) / Math.PI + 360) % 360;
      const place = { x, y, r: Math.hypot(x, y), angleDeg };
      const spot = spotAt(scene, profile, place, lidMm, ballCentreMm);
      const at = row * SIZE + column;
      heightMm[at] = spot.z;
      const shade = 1 + GRAIN * noiseAt(grain, column / SIZE, row / SIZE);
      for (let k = 0; k < 3; k++) {
        texels[4 * at + k] = Math.round(255 * Math.sqrt(Math.min(1, spot.rgb[k] * shade)));
      }
      texels[4 * at + 3] = Math.round(255 * spot.gloss);
    }
  }
  return { size: SIZE, halfWidthMm, lidMm, heightMm, texels };
}

function spotAt(
  scene: StandScene,
  profile: TyreProfile,
  place: Place,
  lidMm: number,
  ballCentreMm: number,
): Spot {
  const spot = metalAt(scene, profile, place, lidMm, ballCentreMm);
  const valveX = scene.wheel.weightRadiusMm - 2;
  const fromValve = Math.hypot(place.x - valveX, place.y);
  if (fromValve < 4.5) {
    Object.assign(spot, { z: lidMm - 8 - 0.3 * fromValve, rgb: BLACK, gloss: 0.3 });
  }
  for (const weight of scene.wheel.weights) stickOn(spot, place, weight, lidMm);
  return spot;
}

/** Bare rim: lip, well, spokes and windows, hub with bolts, bore with the ball's cap. */
function metalAt(
  scene: StandScene,
  profile: TyreProfile,
  place: Place,
  lidMm: number,
  ballCentreMm: number,
): Spot {
  const paint = PAINT[scene.rim.colour];
  const inFromLip = profile.flangeRadiusMm - place.r;
  const bore = scene.wheel.boreDiameterMm / 2;
  if (place.r < bore) {
    const ball = scene.stand.ballDiameterMm / 2;
    const z = ballCentreMm + Math.sqrt(Math.max(0, ball * ball - place.r * place.r));
    return { z, rgb: STEEL, gloss: 1 };
  }
  if (inFromLip < -LIP_OUTSIDE_MM) {
    const { toRad } = profile.arcs[profile.arcs.length - 1];
    const z = lidMm - LIP_MM - inFromLip * Math.tan(toRad - Math.PI / 2);
    return { z, rgb: RUBBER, gloss: 0 };
  }
  if (inFromLip < 10) {
    const over = (inFromLip - 4.5) / 5;
    return { z: lidMm - 0.5 - 3 * over * over, rgb: paint, gloss: 0.8 };
  }
  if (inFromLip < 34) {
    const share = (inFromLip - 10) / 24;
    const ledge = 9 + (LEDGE_MM - 9) * share + 3 * Math.sin(share * Math.PI * 2);
    return { z: lidMm - ledge, rgb: paint, gloss: 0.5 };
  }
  return spokeAt(scene, place, lidMm, profile.flangeRadiusMm - 34, paint);
}

function spokeAt(
  scene: StandScene,
  place: Place,
  lidMm: number,
  outerMm: number,
  paint: readonly [number, number, number],
): Spot {
  const hub = 70;
  const out = Math.max(0, Math.min(1, (place.r - hub) / (outerMm - hub)));
  // Dished: the hub lies deeper than the spokes' ends.
  const face = lidMm - 24 - 22 * (1 - out) - 5 * Math.sin(out * Math.PI);
  if (place.r < hub + 4) return hubAt(place, face, paint);
  const pitchDeg = 360 / scene.rim.spokes;
  const fromSpokeDeg = ((place.angleDeg + pitchDeg / 2) % pitchDeg) - pitchDeg / 2;
  const away = (Math.abs(fromSpokeDeg) * Math.PI * place.r) / 180;
  const half = 17 + 9 * (1 - out) ** 2 + 13 * Math.max(0, out - 0.72);
  if (away < half) {
    const share = away / half;
    return { z: face - 7 * share ** 3, rgb: paint, gloss: 0.7 };
  }
  const ofSpoke = face - 7 - WALL_FALL * (away - half);
  const ofBarrel = lidMm - LEDGE_MM - WALL_FALL * (outerMm - place.r);
  const floor = lidMm - WINDOW_DEPTH_MM;
  const z = Math.max(floor, ofSpoke, ofBarrel);
  const shade = 0.75 - (0.75 - DEEP_SHADE) * Math.min(1, (face - z) / 70);
  return { z, rgb: [paint[0] * shade, paint[1] * shade, paint[2] * shade], gloss: 0.2 };
}

function hubAt(place: Place, face: number, paint: readonly [number, number, number]): Spot {
  const boltDeg = 360 / BOLTS;
  const from = ((place.angleDeg + boltDeg / 2) % boltDeg) - boltDeg / 2;
  const x = place.r * Math.cos((from * Math.PI) / 180) - BOLT_CIRCLE_MM;
  const y = place.r * Math.sin((from * Math.PI) / 180);
  const hole = Math.hypot(x, y);
  if (hole < 8) return { z: face - 16, rgb: [paint[0] * 0.2, paint[1] * 0.2, paint[2] * 0.2], gloss: 0.1 };
  const sunk = hole < 12 ? 3 * (1 - (hole - 8) / 4) : 0;
  return { z: face - sunk, rgb: paint, gloss: 0.7 };
}

/** A strip of pieces on the well's ledge, as long as its grams; what is taken off leaves nothing. */
function stickOn(spot: Spot, place: Place, weight: StandWeight, lidMm: number): void {
  if (weight.massG <= 0 || Math.abs(place.r - weight.radiusMm) > 4.5) return;
  const lengthMm = Math.max(SHORTEST_SEEN_MM, stripLengthMm(weight));
  const away = ((((place.angleDeg - weight.angleDeg) % 360) + 540) % 360) - 180;
  const alongMm = (away * Math.PI * weight.radiusMm) / 180;
  if (Math.abs(alongMm) > lengthMm / 2) return;
  const piece = ((alongMm + lengthMm / 2) / PIECE_MM) % 1;
  const gap = piece < 0.1 && lengthMm > PIECE_MM * 1.2;
  spot.z = lidMm - (gap ? 7 : 3);
  spot.rgb = gap ? BLACK : ZINC;
  spot.gloss = gap ? 0 : 0.4;
}
