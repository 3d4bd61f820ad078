import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { drawnTape, type DrawnTape } from '../../../samples/drawnWheel/scene.ts';
import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import type { MarkColour } from '../../../src/contract/setup.ts';
import { shortWayDeg, wrapTurnDeg } from '../../../src/quantities/angle.ts';
import type { ShoulderColour } from '../../../src/measure/mark/shoulderColour.ts';
import { findTapes, shoulderPanorama, type Tape } from '../../../src/measure/mark/tapes.ts';
import { valveMark } from '../../../src/measure/mark/valveMark.ts';

const RADIUS_MM = 305;
const MM_PER_DEG = (RADIUS_MM * Math.PI) / 180;
const AZIMUTHS = Float64Array.from({ length: 251 }, (_, i) => 50 - 0.4 * i);
const COLOURS: readonly MarkColour[] = ['white', 'yellow', 'orange', 'red', 'green', 'blue'];

/** The shoulder as 200 pictures of a whole turn see it: rubber with slots, noise, tapes. */
function shoulder(
  tapes: readonly DrawnTape[],
  lamp = 1,
  /** What wear leaves of a tape so far from its middle, 0 to 1. */
  left: (offMm: number) => number = () => 1,
) {
  const normal = normalFrom(seededRandom(6));
  return Array.from({ length: 200 }, (_, f) => {
    const turnDeg = -1.9 * f;
    const n = AZIMUTHS.length;
    const colour: ShoulderColour = {
      y: new Uint8Array(n),
      u: new Int8Array(n),
      v: new Int8Array(n),
    };
    AZIMUTHS.forEach((azimuth, i) => {
      const angle = wrapTurnDeg(azimuth - turnDeg);
      const tape = tapes.find(
        (t) => Math.abs(shortWayDeg(t.middleDeg, angle)) * MM_PER_DEG < t.widthMm / 2,
      );
      const rubber = [angle % 5 < 0.8 ? 76 : 90 + 6 * Math.sin(angle / 9), 0, 0];
      const share = tape ? left(shortWayDeg(tape.middleDeg, angle) * MM_PER_DEG) : 0;
      const [y, u, v] = rubber.map((r, k) => r + share * ((tape?.yuv[k] ?? r) - r));
      colour.y[i] = Math.max(1, Math.min(255, lamp * y + 2 * normal()));
      colour.u[i] = lamp * u + normal();
      colour.v[i] = lamp * v + normal();
    });
    return { colour, turnDeg };
  });
}

const tapesOf = (tapes: readonly DrawnTape[], lamp = 1): Tape[] =>
  findTapes(shoulderPanorama(shoulder(tapes, lamp), AZIMUTHS));

describe('findTapes', () => {
  for (const colour of COLOURS) {
    it(`finds a ${colour} tape, its middle and its width`, () => {
      for (const lamp of [1, 0.6]) {
        const found = tapesOf([drawnTape(123.4, 22, colour)], lamp);
        expect(found.map((t) => t.colour)).toEqual([colour]);
        // A bin is 0.25°, a view's column 0.4°: a border is good to a fraction of either.
        expect(Math.abs(found[0].middleDeg - 123.4)).toBeLessThan(0.2);
        expect(Math.abs(found[0].widthDeg * MM_PER_DEG - 22)).toBeLessThan(2.5);
      }
    });
  }

  it('turns with the tape, across the seam too', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359.99, noNaN: true }), (middleDeg) => {
        const found = tapesOf([drawnTape(middleDeg, 25, 'white')]);
        expect(found.length).toBe(1);
        expect(Math.abs(shortWayDeg(middleDeg, found[0].middleDeg))).toBeLessThan(0.2);
      }),
      { numRuns: 12 },
    );
  });

  it('finds several, and none on bare rubber or on nothing', () => {
    const three = [
      drawnTape(20, 22, 'white'),
      drawnTape(40, 12, 'yellow'),
      drawnTape(300, 40, 'blue'),
    ];
    expect(
      tapesOf(three)
        .map((t) => t.colour)
        .sort(),
    ).toEqual(['blue', 'white', 'yellow']);
    expect(tapesOf([])).toEqual([]);
    expect(findTapes(shoulderPanorama([], AZIMUTHS))).toEqual([]);
  });
});

describe('a worn tape', () => {
  const read = (tape: DrawnTape, colour: MarkColour, left: (offMm: number) => number) => {
    const tapes = findTapes(shoulderPanorama(shoulder([tape], 0.8, left), AZIMUTHS));
    const wanted = { widthMm: tape.widthMm, colour, edgeRadiusMm: RADIUS_MM };
    const mark = valveMark(tapes, wanted);
    return mark.ok ? mark.value.middleDeg : mark.failure.code;
  };
  /** Torn askew: one border runs over 6 mm of the shoulder, the other is straight. */
  const ragged = (offMm: number) => Math.max(0, Math.min(1, (11 - offMm) / 6));
  const dirty = (offMm: number) => 0.5 + 0.25 * Math.sin(3 * offMm);
  const torn = (offMm: number) => (Math.abs(offMm) < 4 ? 0 : 1);

  it.each(COLOURS)('of %s is found dirty, ragged and torn across', (colour) => {
    const tape = drawnTape(201, 22, colour);
    for (const left of [dirty, torn]) {
      expect(Math.abs(Number(read(tape, colour, left)) - 201)).toBeLessThan(0.3);
    }
    // The middle of a slanting border is the border: 3 mm in, so the tape's middle moves by 1.5 mm.
    const moved = shortWayDeg(201, Number(read(tape, colour, ragged)));
    expect(Math.abs(moved + 1.5 / MM_PER_DEG)).toBeLessThan(0.3);
  });

  it('of white is white still when it has gone yellow, and yellow is not white', () => {
    const yellowed: DrawnTape = { middleDeg: 80, widthMm: 22, yuv: [194, -24, 8] };
    expect(Math.abs(Number(read(yellowed, 'white', () => 1)) - 80)).toBeLessThan(0.2);
    expect(read(drawnTape(80, 22, 'yellow'), 'white', () => 1)).toBe('mark-missing');
    expect(read(drawnTape(80, 22, 'yellow'), 'white', dirty)).toBe('mark-missing');
  });
});

describe('what is darker than the rubber', () => {
  // Fails: without colour it is called white whatever its luma; a black patch of the mark's width
  // becomes the mark.
  it('is no white tape', () => {
    const patch: DrawnTape = { middleDeg: 80, widthMm: 22, yuv: [30, 0, 0] };
    expect(tapesOf([patch]).filter((t) => t.colour === 'white')).toEqual([]);
  });
});

describe('valveMark', () => {
  const tape = (widthMm: number, colour: Tape['colour'], middleDeg = 10): Tape => ({
    ...{ middleDeg, widthDeg: widthMm / MM_PER_DEG, colour, contrast: 20 },
  });
  const wanted = { widthMm: 22, colour: 'white', edgeRadiusMm: RADIUS_MM } as const;

  it('takes the tape of the entered colour and width', () => {
    const mark = valveMark(
      [tape(22, 'yellow', 50), tape(21, 'white', 10), tape(60, 'white', 90)],
      wanted,
    );
    expect(mark.ok && mark.value.middleDeg).toBe(10);
  });

  it('takes the better fitting of two widths, and refuses where neither clearly fits better', () => {
    const clear = valveMark([tape(22, 'white', 10), tape(33, 'white', 200)], wanted);
    expect(clear.ok && clear.value.middleDeg).toBe(10);
    const alike = valveMark([tape(21, 'white', 10), tape(24, 'white', 200)], wanted);
    expect(!alike.ok && alike.failure.code).toBe('mark-ambiguous');
  });

  it('takes a lookalike colour only when the right one is not there', () => {
    const orange = { ...wanted, colour: 'orange' } as const;
    const both = valveMark([tape(22, 'red', 10), tape(22, 'orange', 80)], orange);
    expect(both.ok && both.value.middleDeg).toBe(80);
    const red = valveMark([tape(22, 'red', 10)], orange);
    expect(red.ok && red.value.middleDeg).toBe(10);
  });

  it('says that the mark is missing', () => {
    for (const tapes of [[], [tape(22, 'blue')], [tape(60, 'white')], [tape(8, 'white')]]) {
      const mark = valveMark(tapes, wanted);
      expect(!mark.ok && mark.failure.code).toBe('mark-missing');
    }
  });
});
