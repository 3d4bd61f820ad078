import { parseArgs } from 'node:util';

import { drawnCamera, drawnPixel, type Vec3 } from '../../samples/drawnWheel/drawnCamera.ts';
import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import type { DrawnScene } from '../../samples/drawnWheel/scene.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';
import type { WheelView } from '../../src/measure/sweep/wheelView.ts';
import { projectPoint } from '../../src/measure/geometry/camera.ts';
import { roomPoint } from '../../src/measure/sweep/wheelView.ts';
import { createOpenSweepReader } from '../../src/measure/sweepReader.ts';
import { subtractVectors, vectorAmount, vectorFromPolar } from '../../src/quantities/vector.ts';
import { randomScene, type SceneKind } from './randomScene.ts';

/**
 * Reads many random drawn sweeps in one pass, as a live camera's, and as a film's, and says for
 * each what was read or why it was refused, and how far the geometry was off.
 *
 *   npx tsx tests/tools/readDrawn.ts [--kind plain|crooked|aside|blocks] [--from 1] [--count 24]
 */
const { values } = parseArgs({
  options: {
    kind: { type: 'string', default: 'plain' },
    from: { type: 'string', default: '1' },
    count: { type: 'string', default: '24' },
  },
});

interface Read {
  readonly errorG: number | null;
  readonly why: string;
  readonly chiSquare: number | null;
  readonly first: ViewError | null;
  readonly last: ViewError | null;
}

/** How far a view is off the truth: the height scale at the sight, and azimuths at ±35° of it. */
interface ViewError {
  readonly scalePercent: number;
  readonly azimuthDeg: number;
}

const rows: { live: Read; film: Read }[] = [];
for (let seed = Number(values.from), n = 0; n < Number(values.count); seed++, n++) {
  const { scene, setup } = randomScene(values.kind as SceneKind, seed);
  const pictures = [...drawnSweep(scene).pictures()];
  const live = createOpenSweepReader(setup);
  for (const picture of pictures) live.addFrame(picture);
  const liveRead = readOf(scene, live);
  const taught = live.secondLook();
  let filmRead = liveRead;
  if (taught && taught !== 'whole') {
    const again = createOpenSweepReader(setup, taught);
    for (const picture of pictures) again.addFrame(picture);
    filmRead = readOf(scene, again);
  }
  rows.push({ live: liveRead, film: filmRead });
  console.log(
    `${described(scene, setup, seed)}\n   live ${shown(liveRead)}\n   film ${taught ? shown(filmRead) : 'the same'}`,
  );
}
for (const way of ['live', 'film'] as const) {
  const all = rows.map((r) => r[way]);
  const read = all.filter((r) => r.errorG !== null);
  const sorted = read.map((r) => r.errorG!).sort((a, b) => a - b);
  const scales = all
    .flatMap((r) => (r.last ? [Math.abs(r.last.scalePercent)] : []))
    .sort((a, b) => a - b);
  const misses = read.filter((r) => r.chiSquare! > 5.99).length;
  console.log(
    `${way}: read ${read.length} of ${all.length}; error g median ${at(sorted, 0.5)} 90% ${at(sorted, 0.9)} worst ${at(sorted, 1)}; ` +
      `outside the 95 % region ${misses}; scale error % median ${at(scales, 0.5)} 90% ${at(scales, 0.9)} worst ${at(scales, 1)}`,
  );
}

function at(sorted: number[], share: number): string {
  return (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(2);
}

function readOf(scene: DrawnScene, reader: ReturnType<typeof createOpenSweepReader>): Read {
  const { reading } = reader.finish();
  const { recording, geometry } = reader.inside();
  const views = {
    first: recording && viewError(scene, recording.view),
    last: geometry && viewError(scene, geometry.view),
  };
  if (reading.status !== 'ok') {
    const { code, evidence } = reading.refusals[0];
    return { errorG: null, chiSquare: null, why: `${code} ${JSON.stringify(evidence)}`, ...views };
  }
  const { amountGmm, heavySpotDeg, covarianceGmm2 } = reading.unbalance;
  const miss = subtractVectors(
    vectorFromPolar(amountGmm, heavySpotDeg),
    vectorFromPolar(scene.unbalanceGmm, scene.heavySpotDeg),
  );
  const [[a, b], [, d]] = covarianceGmm2;
  const { along0: x, along90: y } = miss;
  const chiSquare = (d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b);
  const why = `stand ${reading.tilt.standMrad.toFixed(1)} (${scene.standMrad.toFixed(1)})`;
  return { errorG: vectorAmount(miss) / scene.weightRadiusMm, chiSquare, why, ...views };
}

/** The true camera sees the sight's neighbourhood otherwise than the solved one says. */
function viewError(scene: DrawnScene, view: WheelView): ViewError {
  const camera = drawnCamera(scene.camera);
  const bearingDeg = view.sight.sightBearingDeg;
  const pixelAt = (azimuthDeg: number, zMm: number) => {
    const b = (azimuthDeg * Math.PI) / 180;
    const r = scene.edgeRadiusMm;
    return drawnPixel(camera, [r * Math.cos(b), -r * Math.sin(b), zMm] as Vec3);
  };
  // What the view calls azimuth 0 lies at its own bearing; both cameras count bearings from themselves.
  const heightPx = (project: (zMm: number) => number) => project(-0.5) - project(0.5);
  const out = new Float64Array(2);
  const own = (azimuthDeg: number, zMm: number) => {
    const { xMm, yMm } = roomPoint(view, azimuthDeg);
    projectPoint(view.sight.camera, xMm, yMm, zMm, out);
    return { xPx: out[0], yPx: out[1] };
  };
  const truePx = heightPx((z) => pixelAt(bearingDeg, z).yPx);
  const ownPx = heightPx((z) => own(0, z).yPx);
  const bearingTrue = (xPx: number, near: number) => {
    let [low, high] = [near - 20, near + 20];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (pixelAt(middle, 0).xPx > xPx) low = middle;
      else high = middle;
    }
    return low;
  };
  const middle = bearingTrue(own(0, 0).xPx, bearingDeg);
  const flanks = [-35, 35].map((a) => bearingTrue(own(a, 0).xPx, bearingDeg + a) - middle - a);
  return {
    scalePercent: 100 * (truePx / ownPx - 1),
    azimuthDeg: flanks.reduce((m, f) => (Math.abs(f) > Math.abs(m) ? f : m), 0),
  };
}

function shown(read: Read): string {
  const view = (v: ViewError | null) =>
    v ? `scale ${v.scalePercent.toFixed(1)} % azimuth ${v.azimuthDeg.toFixed(1)}°` : '–';
  const error =
    read.errorG === null
      ? 'refused'
      : `${read.errorG.toFixed(2)} g χ² ${read.chiSquare!.toFixed(1)}`;
  return `${error} ${read.why}; first look ${view(read.first)}; last ${view(read.last)}`;
}

function described(scene: DrawnScene, setup: SweepSetup, seed: number): string {
  const c = scene.camera;
  return (
    `${seed}: ${scene.laserColour} edge ${scene.edgeAboveLineMm.toFixed(1)} U ${(scene.unbalanceGmm / scene.weightRadiusMm).toFixed(0)} g ` +
    `tilt ${c.downTiltDeg.toFixed(1)} (${setup.camera.downTiltDeg.toFixed(1)}) roll ${c.rollDeg.toFixed(1)} yaw ${c.yawDeg.toFixed(1)} ` +
    `fov ${c.horizontalFovDeg.toFixed(1)} (${setup.camera.horizontalFovDeg?.toFixed(1) ?? '–'}) radial ${(c.radial ?? 0).toFixed(3)}`
  );
}
