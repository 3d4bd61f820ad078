import { describe, expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { FIRST_LOOK, lookAfter, type FilmLook } from '../../src/contract/filmLook.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import type { SweepResult } from '../../src/contract/sweep.ts';
import { subtractVectors, vectorAmount, vectorFromPolar } from '../../src/quantities/vector.ts';
import { createSweepReader } from '../../src/measure/sweepReader.ts';
import { randomScene } from '../tools/randomScene.ts';
import { accepted, expectRefused, expectUnbalance } from './readDrawnSweep.ts';

/**
 * A drawn film whose first view does not last: its recording is begun anew. Where hardly a picture could be
 * kept until then it is read twice. At twice the drawn scenes' usual rate there is something to leave out.
 */
const { scene: usual, setup } = randomScene('plain', 101);
const scene = { ...usual, frameRateHz: 20 };
const pictures = [...drawnSweep(scene).pictures()];

/** Other pictures of the same sweep may move its reading by this: its ± is 2 g. */
const MOST_MOVED_G = 0.15;

/** Fewer than the turn until then has at the spacing in which they are kept: each second one went. */
const SCANT_BYTES = 24 * 1.5 * scene.camera.widthPx * scene.camera.heightPx;

/** How many of a film's pictures each look took, and what came of the last one. */
function looksOver(film: readonly YuvPicture[], first: FilmLook, keptBytes?: number) {
  const taken: number[] = [];
  for (let look = first; ;) {
    const reader = createSweepReader(setup, { ...look, ...(keptBytes ? { keptBytes } : {}) });
    let count = 0;
    for (const picture of film) {
      if (!reader.needs(picture.timeS)) continue;
      reader.addFrame(picture);
      count++;
    }
    taken.push(count);
    const next = lookAfter(look, reader.secondLook());
    if (!next) return { taken, result: reader.finish() };
    look = next;
  }
}

function vectorOf({ reading }: SweepResult) {
  const { amountGmm, heavySpotDeg } = accepted(reading).unbalance;
  return vectorFromPolar(amountGmm, heavySpotDeg);
}

describe('a film begun anew from pictures near enough to each other', () => {
  const once = looksOver(pictures, FIRST_LOOK);

  it('is read once, as if the view had been known from the start', () => {
    expect(once.taken).toEqual([pictures.length]);
    const reader = createSweepReader(setup, FIRST_LOOK);
    for (const picture of pictures) reader.addFrame(picture);
    reader.finish();
    const known = createSweepReader(setup, { sight: reader.sightNow()! });
    for (const picture of pictures) known.addFrame(picture);
    const truth = { amountGmm: scene.unbalanceGmm, heavySpotDeg: scene.heavySpotDeg };
    expectUnbalance(accepted(once.result.reading), scene, truth);
    const moved = subtractVectors(vectorOf(once.result), vectorOf(known.finish()));
    expect(vectorAmount(moved) / scene.weightRadiusMm).toBeLessThan(MOST_MOVED_G);
  });
});

describe('a film of two looks', () => {
  const spared = looksOver(pictures, FIRST_LOOK, SCANT_BYTES);

  it('is measured in part the first time and wholly the second', () => {
    expect(spared.taken).toHaveLength(2);
    expect(spared.taken[0]).toBeLessThan(0.75 * pictures.length);
    expect(spared.taken[1]).toBe(pictures.length);
  });

  it('reads as if nothing had been left out', () => {
    const whole = looksOver(pictures, {}, SCANT_BYTES);
    expect(whole.taken).toEqual([pictures.length, pictures.length]);
    const truth = { amountGmm: scene.unbalanceGmm, heavySpotDeg: scene.heavySpotDeg };
    expectUnbalance(accepted(spared.result.reading), scene, truth);
    const moved = subtractVectors(vectorOf(spared.result), vectorOf(whole.result));
    expect(vectorAmount(moved) / scene.weightRadiusMm).toBeLessThan(MOST_MOVED_G);
  });

  it('that ends too soon is read wholly, and refused for what it lacks', () => {
    const cut = pictures.slice(0, Math.round(0.6 * pictures.length));
    const { taken, result } = looksOver(cut, FIRST_LOOK, SCANT_BYTES);
    expect(taken).toHaveLength(2);
    expect(taken[0]).toBeLessThan(cut.length);
    expect(taken[1]).toBe(cut.length);
    expectRefused(result, 'turn-incomplete');
  });

  it('is never left in part by a reader that was not told that pictures come again', () => {
    const live = createSweepReader(setup, { live: true });
    for (const picture of pictures) {
      expect(live.needs(picture.timeS)).toBe(true);
      live.addFrame(picture);
    }
  });
});
