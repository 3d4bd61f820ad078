import { beforeAll, describe, expect, it } from 'vitest';

import { drawnSweep, type DrawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { drawnTape } from '../../samples/drawnWheel/scene.ts';
import { seededRandom } from '../../samples/drawnWheel/seededRandom.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import type { MarkColour } from '../../src/contract/setup.ts';
import {
  accepted,
  drawnSetup,
  expectRefused,
  expectUnbalance,
  readPictures,
} from './readDrawnSweep.ts';

describe('which tape is the mark', () => {
  let sweep: DrawnSweep;
  let pictures: YuvPicture[];

  beforeAll(() => {
    sweep = drawnSweep({
      ...{ seed: 5, unbalanceGmm: 3500, heavySpotDeg: 250 },
      tapes: [drawnTape(0, 22, 'white'), drawnTape(204, 22, 'white'), drawnTape(130, 20, 'blue')],
    });
    pictures = [...sweep.pictures()];
  });

  const readWith = (colour: MarkColour, widthMm: number) =>
    readPictures(
      pictures,
      drawnSetup(sweep.scene, (s) => ({ ...s, sight: { valveMark: { colour, widthMm } } })),
    ).result;

  it('turns the answer with the tape', () => {
    const reading = accepted(readWith('blue', 20).reading);
    expectUnbalance(reading, sweep.scene, { amountGmm: 3500, heavySpotDeg: 250 - 130 });
  });

  it('refuses two alike', () => {
    expectRefused(readWith('white', 22), 'mark-ambiguous');
  });

  it('refuses when none is of the colour', () => {
    expectRefused(readWith('red', 22), 'mark-missing');
  });

  it('refuses a check sweep without the earlier reading', () => {
    const setup = drawnSetup(sweep.scene, (s) => ({
      ...s,
      sight: { valveMark: { colour: 'blue', widthMm: 20 } },
      after: { sweep: 'first', added: [{ massG: 20, radiusMm: 185, angleDeg: 0 }] },
    }));
    expectRefused(readPictures(pictures, setup).result, 'earlier-sweep-missing');
  });

  it('says that a few pictures are too few', () => {
    const setup = drawnSetup(sweep.scene);
    expectRefused(readPictures(pictures.slice(0, 5), setup).result, 'too-few-frames');
    expectRefused(readPictures(pictures.slice(0, 40), setup).result, 'too-few-frames');
    expectRefused(readPictures([], setup).result, 'too-few-frames');
  });
});

describe('what is no sweep', () => {
  it('refuses a laser that goes out half-way', () => {
    // The edge below the line: were the laser on, the rib would show it.
    const sweep = drawnSweep({ edgeAboveLineMm: -8, unbalanceGmm: 1500, laserOffAtS: 12 });
    expectRefused(readPictures(sweep.pictures(), drawnSetup(sweep.scene)).result, 'line-lost');
  });

  it('refuses a wheel that stands still', () => {
    const sweep = drawnSweep({
      turnPoints: [
        { timeS: 0, turnDeg: 0 },
        { timeS: 8, turnDeg: 0 },
      ],
    });
    const { result, progress } = readPictures(sweep.pictures(), drawnSetup(sweep.scene));
    expectRefused(result, 'turn-incomplete');
    expect(progress[progress.length - 1].coveredDeg).toBeLessThan(2);
  });

  it('refuses black, white and noisy pictures, each with its reason', () => {
    const setup = drawnSetup(drawnSweep().scene);
    const random = seededRandom(9);
    const plain = (luma: () => number, chroma: () => number) =>
      Array.from({ length: 80 }, (_, i) => plainPicture(i / 10, luma, chroma));
    const grey = () => 128;
    expectRefused(
      readPictures(
        plain(() => 4, grey),
        setup,
      ).result,
      'too-dark',
    );
    expectRefused(
      readPictures(
        plain(() => 255, grey),
        setup,
      ).result,
      'too-bright',
    );
    const even = () => 256 * random();
    expectRefused(readPictures(plain(even, even), setup).result, 'line-lost');
  });
});

function plainPicture(timeS: number, luma: () => number, chroma: () => number): YuvPicture {
  return {
    ...{ widthPx: 320, heightPx: 180, timeS, yStride: 320, chromaStride: 160 },
    ...{ chromaStep: 1, chromaShift: 1, fullRange: true },
    y: Uint8Array.from({ length: 320 * 180 }, luma),
    u: Uint8Array.from({ length: 160 * 90 }, chroma),
    v: Uint8Array.from({ length: 160 * 90 }, chroma),
  };
}
