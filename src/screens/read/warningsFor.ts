import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { formatRoomDirection } from '../words/directions.ts';
import { formatKnownMass, formatLength, formatPlusMinusDeg, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { ReadingSummary } from './readingSummary.ts';

/**
 * A lean that moves the edge as far as a quarter ounce does on a usual wheel (DESIGN section 1):
 * a person levelling by eye would see it, and the ball is then nearer to rolling off.
 */
const STAND_RISE_WORTH_A_WORD_MM = 3;

/** A hand places a weight to about an hour on the dial divided by four; wider than this hurts. */
const WIDE_ANGLE_DEG = 12;

/** What to keep in mind, weightiest first. */
export function warningsFor(
  reading: AcceptedReading,
  summary: ReadingSummary,
  setup: Pick<SweepSetup, 'weightStepG'>,
  assumed: readonly string[],
  units: Units,
): readonly string[] {
  const { weightStepG } = setup;
  const warnings: string[] = [];
  const { spots, weights } = summary;
  for (const { code, message, remedy } of reading.warnings ?? []) {
    // A file of a later version may warn of what this one has no words for.
    const said = code in words.readingWarnings ? words.readingWarnings[code] : null;
    warnings.push(said ? `${said.cause} ${said.remedy}` : `${message} ${remedy}`);
  }
  if (weights.length > 0 && spots !== null && spots.plusMinusDeg > WIDE_ANGLE_DEG) {
    warnings.push(words.warnings.wideAngle(formatPlusMinusDeg(spots.plusMinusDeg)));
  }
  if (reading.response.source === 'model' && assumed.length > 0) {
    warnings.push(words.warnings.assumed(assumed.map(assumedName).join(', ')));
  }
  if (weights.length > 0 && summary.leftG > weightStepG / 2) {
    warnings.push(words.warnings.left(formatKnownMass(summary.leftG, units)));
  }
  if (summary.isStandTold && summary.standRiseMm >= STAND_RISE_WORTH_A_WORD_MM) {
    warnings.push(
      words.warnings.standLean(
        formatLength(summary.standRiseMm, units, 0.5).text.split('\u00a0±')[0]!,
        formatRoomDirection(reading.tilt.standHighAzimuthDeg),
      ),
    );
  }
  return warnings;
}

/** Records of earlier versions carry the words themselves. */
function assumedName(path: string): string {
  return words.reading.assumedNames[path] ?? path;
}
