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
 * alone and with every other, those that work against each other apart; checks arcs and overlaps by sampling the strips every half degree.
 */
export function bruteForce(
  u: PlaneVector,
  kinds: readonly WeightKind[],
  rings: readonly WeightRing[],
  sameG: number,
  stepDeg: number,
  enoughG = 5,
): Choice {
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
  const together: Choice[] = [];
  const all: Choice[] = [];
  const note = (
    choice: Omit<Choice, 'residualGmm' | 'opposes'>,
    left: PlaneVector,
    opposes = false,
  ): void => {
    const noted = { ...choice, residualGmm: vectorAmount(left), opposes };
    all.push(noted);
    if (!opposes) together.push(noted);
  };
  note({ pieces: 0, places: 0, pullGmm: 0 }, u);
  for (const [i, a] of spots.entries()) {
    const left = addVectors(u, a.pull);
    note({ pieces: a.pieces, places: 1, pullGmm: vectorAmount(a.pull) }, left);
    for (let j = i + 1; j < spots.length; j += 1) {
      const b = spots[j]!;
      if (a.ring === b.ring && overlap(a.fromDeg, a.spanDeg, b.fromDeg, b.spanDeg)) continue;
      if (kinds.some((k, n) => a.counts[n]! + b.counts[n]! > (k.onHand ?? Infinity))) continue;
      const pulls = [vectorAmount(a.pull), vectorAmount(b.pull)] as const;
      const opposes = vectorAmount(addVectors(a.pull, b.pull)) < Math.max(...pulls) - SLICING_GMM;
      const pair = { pieces: a.pieces + b.pieces, places: 2, pullGmm: pulls[0] + pulls[1] };
      note(pair, addVectors(left, b.pull), opposes);
    }
  }
  const leastRadiusMm = Math.min(...rings.map((r) => r.radiusMm));
  const sameGmm = sameG * leastRadiusMm;
  const best = fewest(all, sameGmm);
  if (!best[0]!.opposes) return best[0]!;
  const other = fewest(together, sameGmm)[0]!;
  const leastGain = Math.max(sameGmm, enoughG * leastRadiusMm);
  if (other.residualGmm <= best[0]!.residualGmm + leastGain) return other;
  return best.sort((a, b) => a.pullGmm - b.pullGmm)[0]!;
}

interface Choice {
  readonly pieces: number;
  readonly places: number;
  /** Each place's pull by itself, added up. */
  readonly pullGmm: number;
  readonly residualGmm: number;
  /** Two places that together pull less than one of them alone. */
  readonly opposes: boolean;
}

/** What summing slices leaves open, g·mm. */
const SLICING_GMM = 0.005;

/** Those within the limit of the fewest pieces at the fewest places, the least first. */
function fewest(choices: readonly Choice[], sameGmm: number): Choice[] {
  const least = choices.reduce((a, { residualGmm }) => Math.min(a, residualGmm), Infinity);
  const limit = (least <= sameGmm ? sameGmm : least + sameGmm) + SLICING_GMM;
  const within = choices.filter(({ residualGmm }) => residualGmm <= limit);
  const rank = ({ pieces, places }: Choice) => 10 * pieces + places;
  const lowest = within.reduce((a, choice) => Math.min(a, rank(choice)), Infinity);
  return within
    .filter((choice) => rank(choice) === lowest)
    .sort((a, b) => a.residualGmm - b.residualGmm);
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
