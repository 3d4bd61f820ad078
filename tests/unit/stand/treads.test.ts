import { createHash } from 'node:crypto';

import { describe, expect, it } from 'vitest';

import { renderPicture } from '../../../samples/stand/cpu/renderPicture.ts';
import { edgeSeenAt, filmTruth } from '../../../samples/stand/film/filmTruth.ts';
import { standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { standScene } from '../../../samples/stand/scene/readScene.ts';
import { bandBorderMm } from '../../../samples/stand/shape/shoulderBand.ts';
import { DEPTH_RANGE_MM } from '../../../samples/stand/shape/skinTexels.ts';
import { treadMap } from '../../../samples/stand/shape/treadMap.ts';
import { tyreProfile } from '../../../samples/stand/shape/tyreProfile.ts';
import { standModel } from '../../../samples/stand/view/standModel.ts';

/** Of the tread map before there were blocks and bands: scenes without them must stay what they were. */
const PLAIN_SHA256 = '0324f024e3885806b681bee2e3f39d9e81e1d27f0cfb2b01cf6b4f341efb0af3';

it('is the same tread as ever without blocks and band', () => {
  const scene = standScene({ tyre: { dust: 0.4 } });
  const { texels } = treadMap(scene, tyreProfile(scene));
  expect(createHash('sha256').update(texels).digest('hex')).toBe(PLAIN_SHA256);
});

describe('a tread of blocks', () => {
  const scene = standScene({ tyre: { grooves: [], pitches: 48, blocks: { stepMm: 2 } } });
  const map = treadMap(scene, tyreProfile(scene));
  const depthMm = (column: number, wayMm: number) => {
    const row = Math.round((wayMm - map.fromWayMm) / map.wayPerRowMm);
    return (map.texels[4 * (row * map.columns + column) + 3] * DEPTH_RANGE_MM) / 255;
  };

  it('has no face that runs all round', () => {
    for (let wayMm = -70; wayMm <= 70; wayMm += 5) {
      let open = 0;
      for (let c = 0; c < map.columns; c++) if (depthMm(c, wayMm) > 3) open++;
      // 48 cross grooves of 7 mm in 1941 mm are 17 %; across a gap more is open.
      expect(open / map.columns).toBeGreaterThan(0.12);
    }
  });

  it('has gaps whose border steps from block to block', () => {
    const topsMm = new Set<number>();
    for (let c = 0; c < map.columns; c += 7) {
      let wayMm = 24;
      while (depthMm(c, wayMm) > 3 && wayMm < 40) wayMm += 0.5;
      topsMm.add(wayMm);
    }
    expect([...topsMm].filter((wayMm) => wayMm >= 31 && wayMm <= 32.5)).not.toHaveLength(0);
    expect([...topsMm].filter((wayMm) => wayMm >= 27 && wayMm <= 28.5)).not.toHaveLength(0);
  });
});

describe('a band of tape round the shoulder', () => {
  const scene = standScene({
    seed: 6,
    wheel: { unbalance: { amountGmm: 900, heavySpotDeg: 100 } },
    stand: { edgeAboveLineMm: -12, slopeMrad: 1, startSwingMm: 0 },
    tyre: {
      grooves: [],
      blocks: { gaps: [] },
      band: { offSquareMm: 0.8, highAtDeg: 30, raggedMm: 0.1 },
      tapes: [{ colour: 'blue', middleDeg: 180 }],
    },
    laser: { skirt: 0, peak: 0 },
    camera: { widthPx: 640, heightPx: 360 },
  });
  const model = standModel(scene);
  const pose = standMotion(scene, 40).pose();

  it('stands off square by what the scene says, and by no more', () => {
    const border = bandBorderMm(scene, { ...scene.tyre.band!, joinStepMm: 0 });
    let [cos, sin] = [0, 0];
    for (let deg = 0; deg < 360; deg++) {
      cos += (border(deg) * Math.cos((deg * Math.PI) / 180)) / 180;
      sin += (border(deg) * Math.sin((deg * Math.PI) / 180)) / 180;
    }
    // The unsteadiness is eased between its nodes, which leaves some hundredths.
    expect(Math.hypot(cos, sin)).toBeCloseTo(0.8, 1);
    expect((Math.atan2(sin, cos) * 180) / Math.PI).toBeCloseTo(30, -1);
    expect(filmTruth(model, [pose]).bandOffSquareMm).toEqual({ amplitudeMm: 0.8, highAtDeg: 30 });
  });

  it('ends in the picture where the truth has its border, to a pixel', () => {
    const { rgb } = renderPicture(model, pose, null);
    const off: number[] = [];
    for (let azimuthDeg = -30; azimuthDeg <= 30; azimuthDeg += 1) {
      const edge = edgeSeenAt(model, pose, azimuthDeg);
      const x = Math.floor(edge.xPx);
      const from = Math.round(edge.yPx) - 3;
      const luma = Array.from({ length: 7 }, (_, i) => rgb[3 * ((from + i) * 640 + x)]);
      const step = luma.slice(1).map((v, i) => luma[i] - v);
      const steepest = step.indexOf(Math.max(...step));
      if (step[steepest] > 20) off.push(from + steepest + 1 - edge.yPx);
    }
    expect(off.length).toBeGreaterThan(50);
    const sorted = off.map(Math.abs).sort((a, b) => a - b);
    expect(sorted[Math.floor(0.9 * sorted.length)]).toBeLessThan(1);
  });
});

describe('a tape across the shoulder', () => {
  const scene = standScene({
    tyre: {
      tapes: [{ colour: 'blue' }, { colour: 'yellow', middleDeg: 90, dirt: 0.6, raggedMm: 2.5 }],
    },
  });
  const map = treadMap(scene, tyreProfile(scene));
  /** Columns that tape covers about a wheel angle at a way along the profile: nothing else closes the cuts. */
  const endsMm = (middleDeg: number, isTape: (red: number, blue: number) => boolean) =>
    [36, 44, 52, 60].map((wayMm) => {
      const row = Math.round((wayMm - map.fromWayMm) / map.wayPerRowMm);
      const middle = Math.round((middleDeg / 360) * map.columns);
      let column = middle;
      const texel = (c: number, k: number) => {
        const at = row * map.columns + (c % map.columns);
        return map.texels[4 * at + k];
      };
      while (isTape(texel(column, 0), texel(column, 2))) column++;
      return ((column - middle) / map.columns) * 2 * Math.PI * scene.wheel.edgeRadiusMm;
    });
  const spread = (values: number[]) => Math.max(...values) - Math.min(...values);

  it('ends where it was torn, not on a straight line', () => {
    expect(spread(endsMm(0, (red, blue) => blue > 2 * red))).toBeLessThan(1.5);
    expect(spread(endsMm(90, (red, blue) => red > 1.25 * blue && red > 90))).toBeGreaterThan(1.5);
  });
});
