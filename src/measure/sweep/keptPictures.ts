import type { YuvPicture } from '../../contract/picture.ts';

/**
 * Pictures kept from the sweep's beginning while it is not settled how the camera sees the wheel:
 * with a better view they are measured again. When they take too much memory every second one goes,
 * so that the beginning of the turn is never lost.
 */
export interface KeptPictures {
  readonly pictures: YuvPicture[];
  readonly mostBytes: number;
  bytes: number;
}

/**
 * What a tablet's browser can spare beside everything else, bytes: 97 pictures of 1280×720, as many as
 * there are to keep of the first third of a turn.
 */
const MOST_BYTES = 128 * 1024 * 1024;
/** The first ones are kept whole: the edge is proposed from them. */
export const FIRST_PICTURES = 8;

export function createKeptPictures(mostBytes = MOST_BYTES): KeptPictures {
  return { pictures: [], mostBytes, bytes: 0 };
}

/** Keeps a copy. */
export function keepPicture(kept: KeptPictures, picture: YuvPicture): void {
  // NV12's two chroma planes share one buffer, V one byte after U: copied apart they stay valid.
  const copy = { ...picture, y: picture.y.slice(), u: picture.u.slice(), v: picture.v.slice() };
  kept.pictures.push(copy);
  kept.bytes += bytesOf(copy);
}

/** Lets every second picture go when they take too much; whether it did. */
export function makeRoom(kept: KeptPictures): boolean {
  if (kept.bytes <= kept.mostBytes) return false;
  keepOnly(kept, (i) => i < FIRST_PICTURES || i % 2 === 0);
  return true;
}

/** Lets go of the pictures for which `wanted` says no. */
export function keepOnly(kept: KeptPictures, wanted: (index: number) => boolean): void {
  const left = kept.pictures.filter((_, i) => wanted(i));
  kept.pictures.splice(0, kept.pictures.length, ...left);
  kept.bytes = left.reduce((sum, p) => sum + bytesOf(p), 0);
}

function bytesOf(picture: YuvPicture): number {
  return picture.y.byteLength + picture.u.byteLength + picture.v.byteLength;
}
