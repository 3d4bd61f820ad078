import { describe, expect, it } from 'vitest';

import { cameraOf, createSignKeeper } from '../../../src/session/signKeeper.ts';

const stream = (deviceId: string, label: string) =>
  ({
    getVideoTracks: () => [{ label, getSettings: () => ({ deviceId }) }],
  }) as never as MediaStream;

const back = stream('a1', 'back camera');
const front = stream('b2', 'front camera');
const ofStand = { camera: cameraOf(back), up: 'confirmed', turn: 'confirmed' } as const;

describe('what was tried by hand before a camera', () => {
  it('holds from another day before the camera that it was tried before, and before no other', () => {
    const signs = createSignKeeper();
    expect(signs.for(back, ofStand)).toEqual({ up: 'confirmed', turn: 'confirmed' });
    expect(signs.for(front, ofStand)).toEqual({});
    expect(signs.for(back, null)).toEqual({});
  });

  it('gives way to what was tried since', () => {
    const signs = createSignKeeper();
    signs.keep(back, { up: 'reversed' });
    expect(signs.for(back, ofStand)).toEqual({ up: 'reversed' });
  });

  it('is void once the picture was seen otherwise', () => {
    const signs = createSignKeeper();
    signs.keep(back, {});
    expect(signs.for(back, ofStand)).toEqual({});
  });
});
