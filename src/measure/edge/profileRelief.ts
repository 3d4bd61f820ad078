import { BAND_ROWS, Z_STEP_MM } from '../band/treadBand.ts';

/** Over so much the lip of a groove is blurred, a pixel or so, mm. */
const LIP_MM = 1;
const LIP_ROWS = Math.round(LIP_MM / Z_STEP_MM);

/**
 * How much each row of height profiles (blocks × rows) stands out from the two rows that lie a lip's blur
 * above and below it: a second difference. NaN where one of the three is not known.
 *
 * What a profile differs in from the template, both in place, is smooth: the laser's skirt of light, shade,
 * dust. Rows 1 mm apart differ alike (correlation 0.92 to 0.99 in twelve rendered and four drawn films), and
 * against such a disturbance the best weights of a match are the inverse of its covariance: for that
 * correlation this very difference (the two neighbours' coefficient is 1.00 to 1.02). Matched as they were,
 * the profiles were held back by what stands still beside the laser, and blocks strayed from their
 * picture's plane by half as much again.
 */
export function profileRelief(profiles: Float32Array, out: Float32Array): Float32Array {
  out.fill(NaN);
  for (let start = 0; start < profiles.length; start += BAND_ROWS) {
    for (let i = start + LIP_ROWS; i < start + BAND_ROWS - LIP_ROWS; i++)
      out[i] = profiles[i] - (profiles[i - LIP_ROWS] + profiles[i + LIP_ROWS]) / 2;
  }
  return out;
}
