import { LASER_LEVEL_SD_MRAD, plateSlopeFromLean } from '../balance/levelling.ts';
import { screwTurnsToLevel } from '../balance/levellingScrews.ts';
import type { StandRecord } from '../contract/logbook.ts';
import type { AcceptedReading } from '../contract/reading.ts';
import type { SweepSetup } from '../contract/setup.ts';
import { vectorFromPolar } from '../quantities/vector.ts';

/** One screw to turn; numbered as on the stand's drawing, from the first one clockwise. */
interface ScrewToTurn {
  readonly screw: 1 | 2 | 3;
  /** Turns of the screw, positive clockwise seen from above. */
  readonly clockwiseTurns: number;
}

/** Which screws to turn; `unsure` where the lean is known too badly for that. */
export type LevellingAdvice =
  | { readonly kind: 'turn'; readonly screws: readonly ScrewToTurn[] }
  | { readonly kind: 'unsure' };

/**
 * A lean of three standard deviations is known to about 20° in direction and to a third in size:
 * turned by it, the plate stands better than before. Below that it may well stand worse.
 */
const KNOWN_AT_SDS = 3;
/** Less of a turn than this is not worth kneeling for, turns. */
const LEAST_TURN = 0.05;

/**
 * What levels the plate, from the stand lean of a reading. Null where nothing is to be said: no
 * screws are known, the reading does not tell how good its lean is, or the plate is level.
 */
export function levellingAdvice(
  tilt: AcceptedReading['tilt'],
  stand: SweepSetup['stand'],
  screws: StandRecord['screws'],
): LevellingAdvice | null {
  const { standMrad, standHighAzimuthDeg, standMradStandardError } = tilt;
  if (screws === null || standMradStandardError === undefined) return null;
  const slope = plateSlopeFromLean({
    leanMrad: vectorFromPolar(standMrad, standHighAzimuthDeg),
    slopeAmplification: stand.ballDiameterMm / 2 / stand.pendulumDepthMm,
  });
  if (!slope.ok) return null;
  const first = screws.firstAzimuthDeg;
  const turned = screwTurnsToLevel(slope.value.slopeMrad, {
    ...screws,
    azimuthsDeg: [first, first + 120, first + 240],
  });
  if (!turned.ok) return null;
  const worth = turned.value.flatMap(({ clockwiseTurns }, i) =>
    Math.abs(clockwiseTurns) < LEAST_TURN
      ? []
      : [{ screw: (i + 1) as ScrewToTurn['screw'], clockwiseTurns }],
  );
  if (worth.length === 0) return null;
  const sdMrad = Math.hypot(standMradStandardError, LASER_LEVEL_SD_MRAD);
  return standMrad < KNOWN_AT_SDS * sdMrad ? { kind: 'unsure' } : { kind: 'turn', screws: worth };
}
