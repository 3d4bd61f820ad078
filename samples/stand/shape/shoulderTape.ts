import type { MarkColour } from '../../../src/contract/setup.ts';
import { normalFrom, seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { StandScene, StandTape } from '../scene/standScene.ts';
import { latticeNoise, noiseAt } from './latticeNoise.ts';
import { DUST, type TreadMap } from './skinTexels.ts';
import { skinPoint, type TyreProfile } from './tyreProfile.ts';

/** Reflectances, linear. */
const TAPE: Readonly<Record<MarkColour, readonly [number, number, number]>> = {
  white: [0.62, 0.61, 0.57],
  yellow: [0.66, 0.5, 0.03],
  orange: [0.65, 0.2, 0.03],
  red: [0.45, 0.03, 0.03],
  green: [0.03, 0.3, 0.07],
  blue: [0.03, 0.09, 0.5],
};
/** Length of border over which a torn end keeps its way, mm. */
const TEAR_MM = 4;

/** A strip of tape over the shoulder rib, from just under the edge up; it bridges the cuts. */
export function stickTape(
  scene: StandScene,
  profile: TyreProfile,
  map: TreadMap,
  tape: StandTape,
): void {
  const { columns, rows, texels } = map;
  const from = profile.edgeWayMm - 0.4;
  const to = scene.tyre.treadHalfWidthMm + 8;
  const weave = latticeNoise(scene.seed + 31, 4096, 160);
  const stains = latticeNoise(scene.seed + 32, 600, 60);
  const torn = tornEndsMm(scene.seed + Math.round(tape.middleDeg), tape.raggedMm, to - from);
  for (let row = 0; row < rows; row++) {
    const wayMm = map.fromWayMm + row * map.wayPerRowMm;
    if (wayMm < from || wayMm > to) continue;
    const mmPerColumn = (2 * Math.PI * skinPoint(profile, wayMm)[0]) / columns;
    const middle = (tape.middleDeg / 360) * columns;
    const half = tape.widthMm / 2;
    const [backMm, frontMm] = torn(wayMm - from);
    const last = middle + (half + frontMm) / mmPerColumn;
    for (let c = Math.ceil(middle - (half + backMm) / mmPerColumn); c <= last; c++) {
      const column = ((c % columns) + columns) % columns;
      const at = 4 * (row * columns + column);
      const grain = 1 + 0.1 * noiseAt(weave, column / columns, row / rows);
      const stain = 0.5 + 0.5 * noiseAt(stains, column / columns, row / rows);
      const dirty = Math.min(0.95, tape.dirt * (0.4 + 1.2 * stain));
      // Over a cut the tape hollows a little.
      const hollow = texels[at + 3] > 100 ? 0.86 : 1;
      for (let k = 0; k < 3; k++) {
        const shown = TAPE[tape.colour][k] * grain * hollow * (1 - dirty) + DUST[k] * dirty;
        texels[at + k] = Math.round(255 * Math.sqrt(Math.min(1, shown)));
      }
      texels[at + 3] = 0;
    }
  }
}

/** How far each end of a torn strip stands beyond a straight cut at a way up from its foot, mm. */
function tornEndsMm(seed: number, raggedMm: number, lengthMm: number) {
  const normal = normalFrom(seededRandom(seed));
  const nodes = Array.from({ length: Math.ceil(lengthMm / TEAR_MM) + 2 }, () => [
    raggedMm * normal(),
    raggedMm * normal(),
  ]);
  return (upMm: number): [number, number] => {
    const at = Math.max(0, upMm) / TEAR_MM;
    const k = Math.floor(at);
    const between = (end: 0 | 1) => nodes[k][end] + (nodes[k + 1][end] - nodes[k][end]) * (at - k);
    return [between(0), between(1)];
  };
}
