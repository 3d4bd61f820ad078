import { normalFrom, seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { StandBand, StandScene } from '../scene/standScene.ts';

/** Nodes of the hand's unsteadiness, a hand's breadth apart, and of the frayed border. */
const UNEVEN_NODES = 24;
const RAGGED_NODES = 720;
/** Length over which one end of the tape covers the other. */
export const JOIN_DEG = 5;

/**
 * How far the band's lower border stands above its mean place at a wheel angle, mm: the hand's
 * once-round error, its unsteadiness, and the step where the ends meet.
 */
export function bandBorderMm(scene: StandScene, band: StandBand): (wheelDeg: number) => number {
  const normal = normalFrom(seededRandom(scene.seed + 51));
  const uneven = Float64Array.from({ length: UNEVEN_NODES }, () => band.unevenMm * normal());
  withoutOnceRound(uneven);
  return (wheelDeg) => {
    const once = band.offSquareMm * Math.cos(((wheelDeg - band.highAtDeg) * Math.PI) / 180);
    const joined = wrapped(wheelDeg - band.joinDeg) < JOIN_DEG ? band.joinStepMm : 0;
    return once + smoothAt(uneven, wheelDeg) + joined;
  };
}

/** The same with what is frayed and dented, too short to be followed. */
export function raggedBorderMm(scene: StandScene, band: StandBand): (wheelDeg: number) => number {
  const border = bandBorderMm(scene, band);
  const normal = normalFrom(seededRandom(scene.seed + 52));
  const ragged = Float64Array.from({ length: RAGGED_NODES }, () => band.raggedMm * normal());
  return (wheelDeg) => border(wheelDeg) + smoothAt(ragged, wheelDeg);
}

/** The once-round error is `offSquareMm` alone: none of it hides in the unsteadiness. */
function withoutOnceRound(nodes: Float64Array): void {
  const angle = (k: number) => (2 * Math.PI * k) / nodes.length;
  const mean = nodes.reduce((sum, y) => sum + y, 0) / nodes.length;
  const cos = nodes.reduce((sum, y, k) => sum + y * Math.cos(angle(k)), 0) * (2 / nodes.length);
  const sin = nodes.reduce((sum, y, k) => sum + y * Math.sin(angle(k)), 0) * (2 / nodes.length);
  nodes.forEach((_, k) => {
    nodes[k] -= mean + cos * Math.cos(angle(k)) + sin * Math.sin(angle(k));
  });
}

/** Between nodes round the wheel, eased. */
function smoothAt(nodes: Float64Array, wheelDeg: number): number {
  const at = (wrapped(wheelDeg) / 360) * nodes.length;
  const k = Math.floor(at) % nodes.length;
  const part = at - Math.floor(at);
  const eased = part * part * (3 - 2 * part);
  return nodes[k] + (nodes[(k + 1) % nodes.length] - nodes[k]) * eased;
}

const wrapped = (deg: number): number => ((deg % 360) + 360) % 360;
