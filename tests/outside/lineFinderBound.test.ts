import { describe, expect, it } from 'vitest';

import { findLaserLine } from '../../src/measure/laser/laserLine.ts';
import { drawLaserScene } from '../tools/drawnLaserLine.ts';

/**
 * Bound on the position of a Gaussian line in white noise:
 * σ_x = √(2/√π)·(σ_n/A)·√(w·Δ), w the RMS width, Δ the pixel (Hagen, Kupinski & Dereniak 2007; the
 * form and its factor 1.06225 from memory; the three values are checked by Fisher information).
 */
const PER_SNR = Math.sqrt(2 / Math.sqrt(Math.PI));

function boundPx(snr: number, widthPx: number): number {
  return (PER_SNR / snr) * Math.sqrt(widthPx);
}

/** 1/√I for the position alone, I = Σ (∂s/∂x)²/σ² over the pixels, at one sub-pixel position. */
function fisherBoundPx(snr: number, widthPx: number, centrePx: number): number {
  let information = 0;
  for (let row = 0; row < 200; row++) {
    const z = row + 0.5 - centrePx;
    const slope = (z / widthPx ** 2) * Math.exp(-(z * z) / (2 * widthPx ** 2));
    information += (slope * snr) ** 2;
  }
  return 1 / Math.sqrt(information);
}

describe('the Cramér–Rao bound', () => {
  it.each([
    [10, 2, 0.15023],
    [50, 3, 0.0368],
    [100, 1.5, 0.01301],
  ])('is for SNR %d and width %d px as given and as Fisher information says', (snr, w, px) => {
    expect(boundPx(snr, w)).toBeCloseTo(px, 5);
    for (const centre of [100, 100.2, 100.5]) {
      // Sampling at whole pixels adds under a thousandth from w = 1.5 px on.
      expect(fisherBoundPx(snr, w, centre) / boundPx(snr, w)).toBeCloseTo(1, 3);
    }
  });
});

describe('the line finder on drawn Gaussian lines', () => {
  const LUMA_PER_GREEN = 0.587;
  const columns = 1200;

  for (const snr of [10, 20, 50, 100]) {
    for (const widthPx of [1.5, 2, 3, 4]) {
      it(`stays within 1.3 of the bound at SNR ${snr}, RMS width ${widthPx} px`, () => {
        const amplitude = 160 * LUMA_PER_GREEN;
        // Rounding to whole steps is noise too: 1/12 of a step squared.
        const total = amplitude / snr;
        const noise = Math.sqrt(total ** 2 - 1 / 12);
        const rowPx = (x: number): number => 40.3 + 0.0371 * x;
        const picture = drawLaserScene({
          ...{ widthPx: columns, heightPx: 130, noise, seed: snr * 10 + widthPx },
          lines: [{ rowPx, widthPx, peak: 160 }],
        });
        const line = findLaserLine(picture, 'green');
        // At SNR 10 the colour of one column in hundreds drowns in noise and is rightly refused.
        expect(line.presentCount).toBeGreaterThan(0.99 * columns);
        let squares = 0;
        line.columnsPx.forEach((x, n) => {
          if (!Number.isNaN(line.rowPx[n])) squares += (line.rowPx[n] - rowPx(x)) ** 2;
        });
        const ratio = Math.sqrt(squares / line.presentCount) / boundPx(snr, widthPx);
        expect(ratio).toBeLessThan(1.3);
        // An rms over 1200 columns is good to 2 %: less than 0.93 would mean a broken scale.
        expect(ratio).toBeGreaterThan(0.93);
      });
    }
  }
});
