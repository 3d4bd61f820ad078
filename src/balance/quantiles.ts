/** Points of the distributions that the tests and intervals here need, in closed form. */

/** 99 % point of the standard normal distribution. */
const NORMAL_99 = 2.326348;

/**
 * Upper 99 % point of χ² by Wilson and Hilferty's cube: d·(1 − 2/(9d) + z·√(2/(9d)))³; within 0.5 %
 * for d ≥ 2. Source: E. B. Wilson and M. M. Hilferty 1931 (from memory), checked against R's qchisq.
 */
export function chiSquare99(degreesOfFreedom: number): number {
  const share = 2 / (9 * degreesOfFreedom);
  return degreesOfFreedom * (1 - share + NORMAL_99 * Math.sqrt(share)) ** 3;
}

/**
 * Upper point of F with two degrees of freedom above, exact: (ν/2)·(α^(−2/ν) − 1), α the share left
 * out above. A plane vector against a scatter of ν degrees of freedom has this distribution.
 */
export function fPointTwoAbove(degreesOfFreedomBelow: number, shareAbove: number): number {
  const half = degreesOfFreedomBelow / 2;
  return half * (shareAbove ** (-1 / half) - 1);
}
