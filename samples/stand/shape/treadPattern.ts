import { seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { StandBlocks, StandScene } from '../scene/standScene.ts';

/** The lengths of tread blocks that tyres mix so as not to hum, of the mean one. */
const PITCH_MIX = [0.85, 1, 1.15] as const;

/** Where the blocks begin round the wheel, by rib: degrees, rising, one per pitch. */
export interface TreadPattern {
  readonly shoulderStartDeg: Float64Array;
  readonly innerStartDeg: Float64Array;
  readonly lowerStartDeg: Float64Array;
  readonly grooves: StandScene['tyre']['grooves'];
}

/** A seeded sequence of pitches, the same on every rib but set off against each other. */
export function treadPattern(scene: StandScene): TreadPattern {
  const random = seededRandom(scene.seed + 11);
  const lengths = Array.from(
    { length: scene.tyre.pitches },
    () => PITCH_MIX[Math.floor(random() * PITCH_MIX.length)],
  );
  const perTurn = 360 / lengths.reduce((sum, l) => sum + l, 0);
  const starts = (offsetDeg: number): Float64Array => {
    let at = offsetDeg;
    const all = lengths.map((l) => (at += l * perTurn) % 360);
    return Float64Array.from(all.sort((a, b) => a - b));
  };
  const mean = 360 / scene.tyre.pitches;
  return {
    shoulderStartDeg: starts(0),
    innerStartDeg: starts(0.37 * mean),
    lowerStartDeg: starts(0.6 * mean + 141),
    grooves: scene.tyre.grooves,
  };
}

/** Depth of the grooves that run round the wheel, at a way along the profile; 0 on a rib. */
export function grooveDepthMm(grooves: TreadPattern['grooves'], wayMm: number): number {
  for (let k = 0; k < grooves.length; k++) {
    const { topMm, widthMm, depthMm } = grooves[k];
    const down = topMm - wayMm;
    if (down <= 0 || down >= widthMm) continue;
    // Walls lean outward a little, as a mould needs.
    const wall = Math.min(down, widthMm - down) * WALL_STEEPNESS;
    return Math.min(depthMm, wall);
  }
  return 0;
}

/** Depth gained per mm across a groove's wall. */
export const WALL_STEEPNESS = 6;

/** A cut across a rib: where it runs, how wide and how deep, in the pitch it belongs to. */
export interface CrossCut {
  readonly fromWayMm: number;
  readonly toWayMm: number;
  /** Middle of the cut as a share of the pitch, at both ends. */
  readonly atFrom: number;
  readonly atTo: number;
  readonly widthMm: number;
  readonly depthMm: number;
  /** Zigzag of a sipe, mm. */
  readonly zigzagMm: number;
}

const cut = (
  fromWayMm: number,
  toWayMm: number,
  atFrom: number,
  atTo: number,
  widthMm: number,
  depthMm: number,
  zigzagMm = 0,
): CrossCut => ({ fromWayMm, toWayMm, atFrom, atTo, widthMm, depthMm, zigzagMm });

/** Cross grooves through every row of blocks, and one sipe a block. */
function blockCuts(
  { tyre }: StandScene,
  { gaps, crossWidthMm, crossDepthMm, slant }: StandBlocks,
): ReturnType<typeof ribCuts> {
  const side = tyre.treadHalfWidthMm + 16;
  const high = [...gaps].sort((a, b) => b.topMm - a.topMm);
  // Each row from the middle of the gap over it to that of the gap below.
  const borders = [side, ...high.map((gap) => gap.topMm - gap.widthMm / 2), -side];
  const across = (from: number, to: number) => [
    cut(to, from, 0, slant, crossWidthMm, crossDepthMm),
    cut(to + 0.2 * (from - to), from - 0.2 * (from - to), 0.5, 0.5 + slant, 0.8, 4, 1.1),
  ];
  const rows = borders.slice(1).map((to, k) => across(borders[k], to));
  return { shoulder: rows[0], inner: rows.slice(1, -1).flat(), lower: rows[rows.length - 1] };
}

/** Cuts of the three kinds of rib; ways relative to the ribs' borders in {@link ribCuts}. */
export function ribCuts(scene: StandScene): Record<'shoulder' | 'inner' | 'lower', CrossCut[]> {
  const edge = scene.tyre.edgeAboveMiddleMm;
  const side = scene.tyre.treadHalfWidthMm;
  if (scene.tyre.blocks) return blockCuts(scene, scene.tyre.blocks);
  const grooves = [...scene.tyre.grooves].sort((a, b) => b.topMm - a.topMm);
  const inner: CrossCut[] = [];
  for (let k = 1; k < grooves.length; k++) {
    const top = grooves[k - 1].topMm - grooves[k - 1].widthMm;
    const bottom = grooves[k].topMm;
    const high = top - bottom;
    inner.push(cut(bottom + 0.3 * high, top, 0.15, 0.55, 2.2, 5.5));
    inner.push(cut(bottom, bottom + 0.72 * high, 0.62, 0.9, 0.9, 4.5));
  }
  const last = grooves[grooves.length - 1];
  const lowest = last ? last.topMm - last.widthMm : edge;
  return {
    shoulder: [
      cut(edge - 1, edge + 24, 0.06, 0.13, 2.1, 5.5),
      cut(edge + 24, side + 16, 0.13, 0.24, 3.4, 5.5),
      cut(edge + 9, edge + 34, 0.55, 0.62, 0.8, 4, 1.1),
    ],
    inner,
    lower: [
      cut(-side - 12, lowest - 7, 0.12, 0.3, 3, 5.5),
      cut(-side + 8, lowest, 0.6, 0.68, 0.8, 4, 1.1),
    ],
  };
}
