import { expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import {
  drawnTape,
  SHED_SCENE,
  type DrawnBand,
  type DrawnScene,
} from '../../samples/drawnWheel/scene.ts';
import { subtractVectors, vectorAmount, vectorFromPolar } from '../../src/quantities/vector.ts';
import type { AcceptedReading } from '../../src/contract/reading.ts';
import { accepted, drawnSetup, expectUnbalance, readPictures } from './readDrawnSweep.ts';

/** A band stuck on 0.8 mm off square, which looks like 1.9 g, with a joint that stands out by a millimetre. */
const BAND: DrawnBand = {
  ...{ bottomMm: 1, topMm: 13, luma: 175, joinDeg: 150, joinStepMm: 1 },
  ...{ offSquareMm: 0.8, highAtDeg: 30 },
};
const BLOCKS = { crossWidthMm: 6, stepMm: 1.5 };
const BLUE = [drawnTape(0, 22, 'blue')];
const TRUTH = { amountGmm: SHED_SCENE.unbalanceGmm, heavySpotDeg: SHED_SCENE.heavySpotDeg };
/** A third of what the band's error looks like. */
const WITHOUT_BAND_G = 0.6;

it('leaves out how a band of tape is stuck on where the tread beside it tells', () => {
  for (const blocks of [undefined, BLOCKS]) {
    const { reading, progress } = read({ band: BAND, tapes: BLUE, ...(blocks && { blocks }) });
    expect(missG(reading)).toBeLessThan(WITHOUT_BAND_G);
    expect(reading.edge!.kind).toBe('band');
    expect(reading.edge!.bandOffSquareMm).toBeGreaterThan(0.3);
    expect(codesOf(reading)).not.toContain('band-alone');
    expect(progress.at(-1)!.edgeKind).toBe('band');
  }
}, 240_000);

it('says that a band alone was followed, with a ± that holds what a hand may miss', () => {
  const { reading, progress } = read({ band: BAND, tapes: BLUE, grooves: [], blocks: BLOCKS });
  expect(codesOf(reading)).toContain('band-alone');
  expect(reading.edge).toMatchObject({ kind: 'band', bandOffSquareMm: null });
  const [[c00], [, c11]] = reading.unbalance.covarianceGmm2;
  const sdG = Math.sqrt((c00 + c11) / 2) / SHED_SCENE.weightRadiusMm;
  // χ² with two freedoms: 95 of 100 within 2.45 standard deviations.
  expect(missG(reading)).toBeLessThan(2.45 * sdG);
  // The ± told on the way is the reading's own: of the amount, 1.96 standard deviations.
  expect(progress.at(-1)!.soFar!.amountG95).toBeGreaterThan(0.8 * 1.96 * sdG);
}, 240_000);

it('reads a tread of blocks whose gaps step up and down, and says so', () => {
  const { reading } = read({ blocks: { crossWidthMm: 6, stepMm: 1 } });
  expectUnbalance(reading, SHED_SCENE, TRUTH);
  expect(reading.edge!.kind).toBe('blocks');
}, 240_000);

it('does not take gaps that step in and out of the line for a camera that moved', () => {
  const { reading } = read({ blocks: BLOCKS, seed: 7 });
  expectUnbalance(reading, SHED_SCENE, TRUTH);
}, 240_000);

it('says of a usual tread that a rib was followed, and how well', () => {
  const { reading, progress } = read({});
  expect(reading.edge!.kind).toBe('rib');
  expect(reading.edge!.bandOffSquareMm).toBeUndefined();
  expect(reading.edge!.seenShare).toBeGreaterThan(0.9);
  // Noise of a picture's block after the waves are out: some tenths of a millimetre at most.
  expect(reading.edge!.scatterMm).toBeLessThan(0.3);
  expect(progress.at(-1)!.edgeKind).toBe('rib');
}, 240_000);

function read(changes: Partial<DrawnScene>) {
  const { scene, pictures } = drawnSweep(changes);
  const colour = changes.tapes ? 'blue' : 'white';
  const setup = drawnSetup(scene, (usual) => ({
    ...usual,
    sight: { ...usual.sight, valveMark: { widthMm: 22, colour } },
  }));
  const { result, progress } = readPictures(pictures(), setup);
  return { reading: accepted(result.reading), progress };
}

function missG({ unbalance }: AcceptedReading): number {
  const read = vectorFromPolar(unbalance.amountGmm, unbalance.heavySpotDeg);
  const truth = vectorFromPolar(TRUTH.amountGmm, TRUTH.heavySpotDeg);
  return vectorAmount(subtractVectors(read, truth)) / SHED_SCENE.weightRadiusMm;
}

const codesOf = (reading: AcceptedReading) => (reading.warnings ?? []).map(({ code }) => code);
