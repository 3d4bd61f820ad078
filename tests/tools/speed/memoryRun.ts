import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

import type { YuvPicture } from '../../../src/contract/picture.ts';
import { benchFilm, nameOfSize, SIZE_720P } from './benchFilm.ts';
import type { BundledCore } from './bundledCore.ts';

/** Live time that is played, and how often memory is looked at. */
const MINUTES = 30;
const CAMERA_HZ = 30;
const LOOKS = 15;
/** Pictures of the sample that are played forth and back: a hand that turns a wheel to and fro. */
const PICTURES = 200;
/**
 * Memory of the last half may lie above that of the minutes before it by so much: 0.1 kB a picture,
 * where what is kept of one picture is 25 kB.
 */
const MOST_GROWTH_MB = 8;

/**
 * Half an hour before a camera, as fast as it goes: memory in use after garbage has been collected.
 * `followOnly` is the sight that stands open, the other a sweep that is never ended.
 */
export async function memoryRun(core: BundledCore): Promise<boolean> {
  const { setup, pictures } = benchFilm(SIZE_720P);
  const kept: YuvPicture[] = [];
  for await (const picture of pictures()) {
    kept.push({ ...picture, y: picture.y.slice(), u: picture.u.slice(), v: picture.v.slice() });
    if (kept.length >= PICTURES) break;
  }
  let isFlat = true;
  for (const followOnly of [true, false]) {
    const reader = core.createSweepReader(setup, { live: true, followOnly });
    const usedMb: number[] = [];
    const total = MINUTES * 60 * CAMERA_HZ;
    const before = inUseMb();
    for (let n = 0; n < total; n++) {
      reader.addFrame({ ...kept[toAndFro(n)]!, timeS: n / CAMERA_HZ });
      if ((n + 1) % Math.floor(total / LOOKS) === 0) usedMb.push(inUseMb() - before);
    }
    const half = usedMb.length >> 1;
    const growthMb = Math.max(...usedMb.slice(half)) - Math.max(...usedMb.slice(1, half + 1));
    isFlat &&= growthMb <= MOST_GROWTH_MB;
    console.log(
      `${followOnly ? 'sighting' : 'sweeping'}, ${MINUTES} min of ${CAMERA_HZ} pictures of ${nameOfSize(SIZE_720P)} a second: ` +
        `MB in use every ${MINUTES / LOOKS} min: ${usedMb.map((mb) => mb.toFixed(0)).join(' ')}; ` +
        `growth in the second half ${growthMb.toFixed(1)} MB (at most ${MOST_GROWTH_MB} asked)`,
    );
  }
  return isFlat;
}

function toAndFro(n: number): number {
  const at = n % (2 * PICTURES - 2);
  return at < PICTURES ? at : 2 * PICTURES - 2 - at;
}

let collect: (() => void) | null = null;

/** Heap and array buffers after a full collection, MB. */
function inUseMb(): number {
  if (!collect) {
    setFlagsFromString('--expose-gc');
    collect = runInNewContext('gc') as () => void;
  }
  collect();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 2 ** 20;
}
