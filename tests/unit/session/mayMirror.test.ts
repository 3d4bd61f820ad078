import { expect, it } from 'vitest';

import { mayMirror } from '../../../src/session/mayMirror.ts';

const stream = (label: string, facingMode?: string) => {
  const track = { label, getSettings: () => (facingMode === undefined ? {} : { facingMode }) };
  return { getVideoTracks: () => [track] } as unknown as MediaStream;
};

it('tells the camera on the tablet’s face by its facing, else by its name', () => {
  expect(mayMirror(stream('camera2 1', 'user'))).toBe(true);
  expect(mayMirror(stream('camera2 1, facing front'))).toBe(true);
  expect(mayMirror(stream('Front Camera'))).toBe(true);
  expect(mayMirror(stream('front bay camera', 'environment'))).toBe(false);
  expect(mayMirror(stream('camera2 0, facing back'))).toBe(false);
  expect(mayMirror(stream('USB camera'))).toBe(false);
});
