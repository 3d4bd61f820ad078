import { describe, expect, it } from 'vitest';

import { REGION_95, REGION_999, squaredDistance } from '../../src/measure/fit/confidence.ts';
import type { SweepObservations } from '../../src/contract/observations.ts';
import { fitTilt } from '../../src/measure/fit/fitTilt.ts';
import { edgeRise } from '../../src/measure/sweep/edgeRise.ts';
import { gaussianFrom, seededRandom } from './seededRandom.ts';
import { drawConditions, simulateSweep } from './simulatedSweep.ts';

/**
 * Is the stated ± honest? Seeded sweeps under conditions drawn at random (rocking, noise, lean of the
 * stand, gaps, wrong scale and mark, a lively arm in half of them), simulated by small steps of time without the fit's matrices; over all of them the 95 % region must hold the truth 95 % of
 * the time (DESIGN section 5).
 *
 * With N = 500 and a true 95 %, the count's standard deviation is √(0.05·0.95/500) = 1.0 %: 93 to
 * 97 % is two of them either way. Seeds are fixed, so the result is the same at every run;
 * TILTSWEEP_COVERAGE=2000 runs as many, from other seeds.
 */
const ASKED = Number(process.env['TILTSWEEP_COVERAGE'] ?? 0);
const SWEEPS = ASKED > 0 ? ASKED : 500;
const FIRST_SEED = ASKED > 0 ? 100_001 : 10_001;
/** χ² with two freedoms: half of the truths lie within. */
const REGION_50 = 2 * Math.LN2;
/** As a pose from the line and a tape stuck on by hand have them: 1 % of the scale, 0.4° of the mark. */
const SCALE_RELATIVE_SD = 0.01;
const MARK_SD_DEG = 0.4;
/** One in a thousand lies outside of the 99.9 % region; three standard deviations of such a count more. */
const MOST_OUTSIDE_999 = SWEEPS / 1000 + 3 * Math.sqrt(SWEEPS / 1000);
const TIME_LIMIT_MS = 3000 * SWEEPS;

interface Outcome {
  readonly seed: number;
  readonly style: string;
  readonly tilt: number;
  readonly stand: number;
}

/** The same sweep through a camera whose scale and a tape whose place are somewhat wrong. */
function misread(seed: number, observations: SweepObservations): SweepObservations {
  const gaussian = gaussianFrom(seededRandom(seed + 424_243));
  const scale = 1 + SCALE_RELATIVE_SD * gaussian();
  const markDeg = MARK_SD_DEG * gaussian();
  return {
    ...observations,
    heightMm: observations.heightMm.map((h) => h * scale),
    turnDeg: observations.turnDeg.map((t) => t + markDeg),
  };
}

function run(): { outcomes: Outcome[]; failures: string[] } {
  const outcomes: Outcome[] = [];
  const failures: string[] = [];
  for (let seed = FIRST_SEED; seed < FIRST_SEED + SWEEPS; seed++) {
    const conditions = drawConditions(seed);
    const sweep = simulateSweep(seed, conditions);
    const fit = fitTilt(misread(seed, sweep.observations));
    if (!fit.ok) {
      failures.push(`${seed}: ${fit.failure.code}`);
      continue;
    }
    const { tiltMm, tiltCovarianceMm2, standMm, standCovarianceMm2 } = fit.value;
    outcomes.push({
      seed,
      style: conditions.style,
      tilt: squaredDistance(
        { along0: tiltMm.along0 - sweep.tiltMm[0], along90: tiltMm.along90 - sweep.tiltMm[1] },
        edgeRise({ tiltMm, tiltCovarianceMm2 }, SCALE_RELATIVE_SD, MARK_SD_DEG).covarianceMm2,
      ),
      stand: squaredDistance(
        { along0: standMm.along0 - sweep.standMm[0], along90: standMm.along90 - sweep.standMm[1] },
        standCovarianceMm2,
      ),
    });
  }
  return { outcomes, failures };
}

const share = (outcomes: readonly Outcome[], of: 'tilt' | 'stand', region: number): number =>
  outcomes.filter((o) => o[of] <= region).length / outcomes.length;

describe('stated covariance of the tilt', () => {
  it(
    `holds the truth as often as it says over ${SWEEPS} sweeps`,
    () => {
      const { outcomes, failures } = run();
      const summary = {
        sweeps: outcomes.length,
        in95: share(outcomes, 'tilt', REGION_95),
        outside999: outcomes.filter((o) => o.tilt > REGION_999).length,
        in50: share(outcomes, 'tilt', REGION_50),
        standIn95: share(outcomes, 'stand', REGION_95),
        byStyle: Object.fromEntries(
          ['steady', 'uneven', 'stop-and-go'].map((style) => [
            style,
            share(
              outcomes.filter((o) => o.style === style),
              'tilt',
              REGION_95,
            ),
          ]),
        ),
      };
      console.info(JSON.stringify(summary));
      // Rocking beyond what a camera can follow may be refused; it is rare in what is drawn.
      expect(failures.length, failures.join(', ')).toBeLessThanOrEqual(SWEEPS / 100);
      expect(summary.in95).toBeGreaterThanOrEqual(0.93);
      expect(summary.in95).toBeLessThanOrEqual(0.97);
      expect(summary.outside999).toBeLessThanOrEqual(MOST_OUTSIDE_999);
      // Three standard deviations of a count at one half (±0.067 of 500), and 0.02 because the
      // covariance is made for the 95 % region of a long-tailed error, whose core is narrower.
      expect(Math.abs(summary.in50 - 0.5)).toBeLessThan(3 * Math.sqrt(0.25 / SWEEPS) + 0.02);
      expect(summary.standIn95).toBeGreaterThanOrEqual(0.9);
    },
    TIME_LIMIT_MS,
  );
});
