import type { SweepSetup, TurnSense } from '../../../src/contract/setup.ts';
import { wrapTurnDeg } from '../../../src/quantities/angle.ts';
import type { SweepTruth } from '../score.ts';
import { pixelAfter } from './pixelAfter.ts';
import { troubleOf, type TroubledPlan } from './trouble.ts';
import { toldTroubles } from './troubledPlan.ts';

/** Longest time without the line that may still be read, s: as the core takes on trust. */
const LONGEST_DARK_S = 10;

/**
 * What a person would enter for the troubled film, whose wheel was turned in `sense` as far as that is
 * known; a check sweep becomes a sweep of its own.
 */
export function troubledSetup(
  plan: TroubledPlan,
  setup: SweepSetup,
  sense: TurnSense | undefined = setup.turnSense,
): SweepSetup {
  const { after: _, ...own } = setup;
  const { horizontalFovDeg, ...camera } = setup.camera;
  const { edgePoint, ...sight } = setup.sight;
  const knowsFov = horizontalFovDeg !== undefined && !troubleOf(plan, 'no-field-of-view');
  const mirrored = sense !== undefined && troubleOf(plan, 'mirrored') !== undefined;
  return {
    ...own,
    label: `${plan.film.name}: ${toldTroubles(plan)}`.slice(0, 200),
    camera: { ...camera, ...(knowsFov ? { horizontalFovDeg } : {}) },
    sight: {
      ...sight,
      ...(edgePoint && !troubleOf(plan, 'no-tap')
        ? { edgePoint: { timeS: edgePoint.timeS, ...roundedPixel(pixelAfter(plan, edgePoint)) } }
        : {}),
    },
    ...(mirrored ? { turnSense: otherSense(sense) } : {}),
  };
}

function otherSense(sense: TurnSense): TurnSense {
  return sense === 'clockwise' ? 'counter-clockwise' : 'clockwise';
}

interface TroubledTruth extends SweepTruth {
  readonly format: 'tiltsweep.truth/1';
  readonly madeFrom: string;
  readonly seed: number;
  readonly troubles: TroubledPlan['troubles'];
  readonly note: string;
}

/** A film mirrored is a film of the mirrored wheel: its angles run the other way. */
export function troubledTruth(plan: TroubledPlan, truth: SweepTruth): TroubledTruth {
  const { amountGmm, heavySpotDeg, lightSpotDeg } = truth.unbalance;
  const sign = troubleOf(plan, 'mirrored') ? -1 : 1;
  const darkS = troubleOf(plan, 'laser-off')?.lastsS ?? 0;
  return {
    format: 'tiltsweep.truth/1',
    shouldRefuse: darkS > LONGEST_DARK_S ? 'line-lost' : false,
    unbalance: {
      amountGmm,
      heavySpotDeg: wrapTurnDeg(sign * heavySpotDeg),
      lightSpotDeg: wrapTurnDeg(sign * lightSpotDeg),
    },
    madeFrom: plan.film.name,
    seed: plan.seed,
    troubles: plan.troubles,
    note: 'What the film’s own truth says picture by picture is left out here: it does not follow the troubles.',
  };
}

function roundedPixel({ xPx, yPx }: { xPx: number; yPx: number }) {
  return { xPx: Math.round(10 * xPx) / 10, yPx: Math.round(10 * yPx) / 10 };
}
