import type { WeightKind, WeightRing, WheelArc } from '../../../src/balance/weightStock.ts';
import { wrapTurnDeg } from '../../../src/quantities/angle.ts';
import {
  addVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';

/**
 * Brute force, written apart from the search: every load of every ring at every angle of the grid,
 * alone and with every other; checks arcs and overlaps by sampling the strips every half degree.
 */
export function bruteForce(
  u: PlaneVector,
  kinds: readonly WeightKind[],
  rings: readonly WeightRing[],
  sameG: number,
  stepDeg: number,
): { pieces: number; places: number; residualGmm: number } {
  interface Spot {
    ring: number;
    counts: number[];
    pieces: number;
    fromDeg: number;
    spanDeg: number;
    pull: PlaneVector;
  }
  const origin = vectorAngleDeg(u) + 180;
  const spots: Spot[] = [];
  for (const [r, { radiusMm, accepts, forbidden, maxPieces }] of rings.entries()) {
    const counts = kinds.map(() => 0);
    const visit = (k: number): void => {
      if (k < kinds.length) {
        const most = accepts.includes(kinds[k]!.fitting) ? (kinds[k]!.onHand ?? maxPieces) : 0;
        for (let c = 0; c <= most; c += 1) {
          counts[k] = c;
          visit(k + 1);
        }
        counts[k] = 0;
        return;
      }
      const pieces = counts.reduce((a, b) => a + b, 0);
      if (pieces === 0 || pieces > maxPieces) return;
      // The strip by itself, from 0 on: pulls of thin slices summed.
      let edgeDeg = 0;
      let sum: PlaneVector = { along0: 0, along90: 0 };
      kinds.forEach((kind, i) => {
        for (let c = 0; c < counts[i]!; c += 1) {
          const spanDeg = (kind.lengthMm / radiusMm) * (180 / Math.PI);
          const slices = 400;
          for (let s = 0; s < slices; s += 1) {
            const at = edgeDeg + (spanDeg * (s + 0.5)) / slices;
            sum = addVectors(sum, vectorFromPolar((kind.massG * radiusMm) / slices, at));
          }
          edgeDeg += spanDeg;
        }
      });
      const behindDeg = vectorAngleDeg(sum);
      for (let at = 0; at < 360; at += stepDeg) {
        const angle = origin + at;
        const fromDeg = angle - behindDeg;
        if (forbidden.some((arc) => overlap(fromDeg, edgeDeg, arc.fromDeg, spanOf(arc)))) continue;
        spots.push({
          ring: r,
          counts: [...counts],
          pieces,
          fromDeg,
          spanDeg: edgeDeg,
          pull: vectorFromPolar(vectorAmount(sum), angle),
        });
      }
    };
    visit(0);
  }
  const levels = new Map<string, { pieces: number; places: number; residualGmm: number }>();
  const note = (pieces: number, places: number, left: PlaneVector): void => {
    const key = `${String(pieces).padStart(3, '0')}/${places}`;
    const residualGmm = vectorAmount(left);
    if (residualGmm < (levels.get(key)?.residualGmm ?? Infinity)) {
      levels.set(key, { pieces, places, residualGmm });
    }
  };
  note(0, 0, u);
  for (const [i, a] of spots.entries()) {
    const left = addVectors(u, a.pull);
    note(a.pieces, 1, left);
    for (let j = i + 1; j < spots.length; j += 1) {
      const b = spots[j]!;
      if (a.ring === b.ring && overlap(a.fromDeg, a.spanDeg, b.fromDeg, b.spanDeg)) continue;
      if (kinds.some((k, n) => a.counts[n]! + b.counts[n]! > (k.onHand ?? Infinity))) continue;
      note(a.pieces + b.pieces, 2, addVectors(left, b.pull));
    }
  }
  const sorted = [...levels.entries()].sort(([p], [q]) => (p < q ? -1 : 1)).map(([, v]) => v);
  const sameGmm = sameG * Math.min(...rings.map((r) => r.radiusMm));
  const least = Math.min(...sorted.map((v) => v.residualGmm));
  const limit = least <= sameGmm ? sameGmm : least + sameGmm;
  return sorted.find((v) => v.residualGmm <= limit)!;
}

const spanOf = (arc: WheelArc): number =>
  arc.toDeg - arc.fromDeg >= 360 ? 360 : wrapTurnDeg(arc.toDeg - arc.fromDeg);

/** Two arcs share more than a border. */
export function overlap(from1: number, span1: number, from2: number, span2: number): boolean {
  const ahead = wrapTurnDeg(from2 - from1);
  const back = wrapTurnDeg(from1 - from2);
  const slack = 1e-9;
  return ahead < span1 - slack || back < span2 - slack || (ahead === 0 && span1 > 0 && span2 > 0);
}
