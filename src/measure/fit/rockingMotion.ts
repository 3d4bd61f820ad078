/**
 * The motion of a wheel that rocks on its ball while it turns: the complex tilt z (along azimuth
 * 0° + i·90°, clockwise) obeys
 *
 *   z̈ + (2ζω₀ − i·s·Ω)·ż + ω₀²·z = ω₀²·(stand + W·e^{iφ}) + force,
 *
 * s·Ω the gyroscopic coupling. Free swings have ω = sΩ/2 ± √(ω₀² + (sΩ/2)²); the forced answer to
 * a steady turn is W·e^{iφ}/(1 + (s − 1)(Ω/ω₀)² + 2iζΩ/ω₀) (DESIGN sections 3 and 8.7).
 */
export interface RockingParameters {
  /** ω₀, 1/s: rate of free swings of the wheel at rest. */
  readonly rateRadPerS: number;
  /** ζ, in (0, 1). */
  readonly dampingRatio: number;
  /** √(q/ω₀³), mm: q the intensity of the white random force on one axis, mm²/s³. */
  readonly kickMm: number;
  /** Standard deviation of the slow change of offset and lean, mm, and its correlation time, s. */
  readonly slowMm: number;
  readonly slowTimeS: number;
  /** Standard deviations of what the picture's own sway looks like: a rise, a lean across the sight, mm. */
  readonly swayDownMm: number;
  readonly swayAcrossMm: number;
  /** Factor on the planes' own standard errors. */
  readonly planeScale: number;
  /** Standard deviation of a swing left over at the first frame, beside the lasting one, mm. */
  readonly startMm: number;
}

/**
 * Transition over a step and the noise that comes in, written into `out` (length 12):
 * Φ as complex [Φzz, Φzv, Φvz, Φvv] (8 numbers, real then imaginary), then the unit-force noise
 * Qzz, Re Qzv, Im Qzv, Qvv.
 *
 * With z = e^{−pt/2}·u, p = 2ζω₀ − isΩ, u swings with ν = √(ω₀² − p²/4). The noise is
 * Σ∞ − Φ·Σ∞·Φᴴ, Σ∞ = diag(1/(4ζω₀³), 1/(4ζω₀)) the covariance of an endless run, which does not
 * depend on Ω.
 */
export function stepMotion(
  rateRadPerS: number,
  dampingRatio: number,
  gyroRadPerS: number,
  stepS: number,
  out: Float64Array,
): void {
  const w2 = rateRadPerS * rateRadPerS;
  const decay = dampingRatio * rateRadPerS;
  const half = gyroRadPerS / 2;
  // ν² = ω₀² − (decay − i·half)²; its real part is positive for ζ < 1, so the root is plain.
  const re = w2 - decay * decay + half * half;
  const im = 2 * decay * half;
  const nuRe = Math.sqrt((re + Math.hypot(re, im)) / 2);
  const nuIm = im / (2 * nuRe);
  const cosA = Math.cos(nuRe * stepS);
  const sinA = Math.sin(nuRe * stepS);
  const grow = Math.exp(nuIm * stepS);
  const cosh = (grow + 1 / grow) / 2;
  const sinh = (grow - 1 / grow) / 2;
  const cRe = cosA * cosh;
  const cIm = -sinA * sinh;
  const sRe = sinA * cosh;
  const sIm = cosA * sinh;
  const nu2 = nuRe * nuRe + nuIm * nuIm;
  const gRe = (sRe * nuRe + sIm * nuIm) / nu2;
  const gIm = (sIm * nuRe - sRe * nuIm) / nu2;
  // p/2 · g
  const hRe = decay * gRe + half * gIm;
  const hIm = decay * gIm - half * gRe;
  // e^{−pΔ/2}
  const size = Math.exp(-decay * stepS);
  const eRe = size * Math.cos(half * stepS);
  const eIm = size * Math.sin(half * stepS);
  const zzRe = cRe + hRe;
  const zzIm = cIm + hIm;
  const vvRe = cRe - hRe;
  const vvIm = cIm - hIm;
  out[0] = eRe * zzRe - eIm * zzIm;
  out[1] = eRe * zzIm + eIm * zzRe;
  out[2] = eRe * gRe - eIm * gIm;
  out[3] = eRe * gIm + eIm * gRe;
  out[4] = -w2 * out[2];
  out[5] = -w2 * out[3];
  out[6] = eRe * vvRe - eIm * vvIm;
  out[7] = eRe * vvIm + eIm * vvRe;
  const endV = 1 / (4 * decay);
  const endZ = endV / w2;
  out[8] =
    endZ * (1 - out[0] * out[0] - out[1] * out[1]) - endV * (out[2] * out[2] + out[3] * out[3]);
  out[9] = -endZ * (out[0] * out[4] + out[1] * out[5]) - endV * (out[2] * out[6] + out[3] * out[7]);
  out[10] =
    -endZ * (out[1] * out[4] - out[0] * out[5]) - endV * (out[3] * out[6] - out[2] * out[7]);
  out[11] =
    endV * (1 - out[6] * out[6] - out[7] * out[7]) - endZ * (out[4] * out[4] + out[5] * out[5]);
}

/**
 * The tilt of a wheel with W = 1 at each time, complex: the forced answer with the swings that
 * starting and stopping set off. Four numbers a time: tilt (re, im), its rate (re, im).
 *
 * `transitions` holds `perStep` numbers a time, the first eight as `stepMotion` writes them.
 * Over a step the turn runs evenly; there the steady answer is G·e^{iφ}, and the difference from it
 * swings freely. With `addedAt` W comes on at that time: until then the wheel rests at 0.
 */
export function turningTilt(
  timeS: Float64Array,
  turnRad: Float64Array,
  spinRatio: number,
  rateRadPerS: number,
  dampingRatio: number,
  transitions: Float64Array,
  perStep: number,
  addedAt = 0,
): Float64Array {
  const n = timeS.length;
  const out = new Float64Array(4 * n);
  let zRe = 0;
  let zIm = 0;
  let vRe = 0;
  let vIm = 0;
  for (let k = addedAt; k < n; k++) {
    // The step that ends here; the first frame borrows the rate of the step after it.
    const from = k === 0 ? 0 : k - 1;
    const to = k === 0 ? Math.min(1, n - 1) : k;
    const rate = to === from ? 0 : (turnRad[to] - turnRad[from]) / (timeS[to] - timeS[from]);
    const x = rate / rateRadPerS;
    const denRe = 1 + (spinRatio - 1) * x * x;
    const denIm = 2 * dampingRatio * x;
    const den2 = denRe * denRe + denIm * denIm;
    const gRe = denRe / den2;
    const gIm = -denIm / den2;
    const c = Math.cos(turnRad[k]);
    const s = Math.sin(turnRad[k]);
    const endRe = gRe * c - gIm * s;
    const endIm = gRe * s + gIm * c;
    if (k === 0) {
      zRe = endRe;
      zIm = endIm;
      vRe = -rate * endIm;
      vIm = rate * endRe;
    } else if (k > addedAt) {
      const c0 = Math.cos(turnRad[k - 1]);
      const s0 = Math.sin(turnRad[k - 1]);
      const startRe = gRe * c0 - gIm * s0;
      const startIm = gRe * s0 + gIm * c0;
      const dRe = zRe - startRe;
      const dIm = zIm - startIm;
      const uRe = vRe + rate * startIm;
      const uIm = vIm - rate * startRe;
      const at = k * perStep;
      const t = transitions;
      zRe = endRe + t[at] * dRe - t[at + 1] * dIm + t[at + 2] * uRe - t[at + 3] * uIm;
      zIm = endIm + t[at] * dIm + t[at + 1] * dRe + t[at + 2] * uIm + t[at + 3] * uRe;
      vRe = -rate * endIm + t[at + 4] * dRe - t[at + 5] * dIm + t[at + 6] * uRe - t[at + 7] * uIm;
      vIm = rate * endRe + t[at + 4] * dIm + t[at + 5] * dRe + t[at + 6] * uIm + t[at + 7] * uRe;
    }
    out[4 * k] = zRe;
    out[4 * k + 1] = zIm;
    out[4 * k + 2] = vRe;
    out[4 * k + 3] = vIm;
  }
  return out;
}
