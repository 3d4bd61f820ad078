import { describe, expect, it } from 'vitest';

import { FIRST_LOOK, type FilmLook } from '../../../src/contract/filmLook.ts';
import type { YuvPicture } from '../../../src/contract/picture.ts';
import type { SecondLook, SightMemory, SweepReader } from '../../../src/contract/sweep.ts';
import type { Film } from '../../../workers/filmFrames.ts';
import type { FilmPlace } from '../../../workers/pictureReport.ts';
import { MOST_PICTURES, readPasses } from '../../../workers/readFilm.ts';
import { AS_STORED } from '../../../workers/turnedPicture.ts';
import { createSweepReader } from '../../fakes/fakeReader.ts';
import setupJson from '../../../samples/shed-front-left.setup.json' with { type: 'json' };
import { readSetup } from '../../../src/contract/setup.ts';

const setup = readSetup(setupJson);
if (!setup.ok) throw new Error('the sample setup is not valid');
const SETUP = setup.value;
const TAUGHT: SecondLook = {
  sight: { laserColour: 'green' } as SightMemory,
  seenLine: { curvePx: new Float32Array(0), rows: new Map() },
};

/** A film of bare times that counts its open pictures; it breaks after the last one if asked to. */
function filmOf(
  timesS: readonly number[],
  { breaks = false, durationS = timesS.at(-1) ?? 0 } = {},
) {
  let open = 0;
  const film: Film = {
    durationS,
    async *frames() {
      for (const timeS of timesS) {
        open += 1;
        const frame = { close: () => (open -= 1) } as unknown as VideoFrame;
        yield { frame, timeS, showing: AS_STORED };
      }
      if (breaks) throw new Error('the packet ends in the middle');
    },
    close: () => undefined,
  };
  return { film, stillOpen: () => open };
}

const steps = (count: number) => Array.from({ length: count }, (_, i) => i / 24);

/** What each look teaches; `unneeded` of its pictures, by their times, are not wanted. */
interface FakeLooks {
  readonly taught?: readonly (SecondLook | 'whole' | null)[];
  readonly unneeded?: (timeS: number) => boolean;
  readonly stopAfter?: number;
}

function setUp({ taught = [], unneeded = () => false, stopAfter = Infinity }: FakeLooks = {}) {
  const seenS: number[][] = [];
  const given: FilmLook[] = [];
  const places: FilmPlace[] = [];
  const makeReader = (look: FilmLook): SweepReader => {
    const taughtNow = taught[given.length] ?? null;
    const times: number[] = [];
    given.push(look);
    seenS.push(times);
    const reader = createSweepReader(SETUP);
    return {
      addFrame(picture) {
        times.push(picture.timeS);
        return reader.addFrame(picture);
      },
      finish: () => reader.finish(),
      needs: (timeS) => !look.mayLeaveOut || !unneeded(timeS),
      secondLook: () => taughtNow,
      sightNow: () => null,
      takeNotes: () => null,
    };
  };
  const tools = {
    copy: async (_frame: VideoFrame, timeS: number) => ({ timeS }) as YuvPicture,
    report: {
      progress: (_: unknown, place: FilmPlace | null) => void (place && places.push(place)),
      preview: async () => undefined,
    },
    stopped: () => seenS.flat().length >= stopAfter,
  };
  return { seenS, given, places, makeReader, tools };
}

describe('readPasses', () => {
  it('reads a film once where that is enough', async () => {
    const { film, stillOpen } = filmOf(steps(30));
    const { seenS, places, makeReader, tools } = setUp();
    const read = await readPasses(film, makeReader, tools);
    expect(read).toMatchObject({
      ok: true,
      value: { ending: 'whole', timing: { pictures: 30, passes: 1 } },
    });
    expect(seenS).toEqual([steps(30)]);
    expect(places.at(-1)).toEqual({ fraction: 1, pass: 1 });
    expect(stillOpen()).toBe(0);
  });

  it('reads it again with what the first pass taught, and only once more', async () => {
    const { film, stillOpen } = filmOf(steps(30));
    const { seenS, given, places, makeReader, tools } = setUp({ taught: [TAUGHT, TAUGHT] });
    const read = await readPasses(film, makeReader, tools);
    expect(read).toMatchObject({ ok: true, value: { timing: { pictures: 30, passes: 2 } } });
    expect(given).toEqual([FIRST_LOOK, TAUGHT]);
    expect(seenS).toEqual([steps(30), steps(30)]);
    expect(places[30]).toEqual({ fraction: 0, pass: 2 });
    expect(stillOpen()).toBe(0);
  });

  it('hands over no picture that is not needed, and closes it', async () => {
    const { film, stillOpen } = filmOf(steps(30));
    const unneeded = (timeS: number) => timeS > 0.5 && Math.round(24 * timeS) % 2 === 1;
    const { seenS, makeReader, tools } = setUp({ taught: [TAUGHT], unneeded });
    const read = await readPasses(film, makeReader, tools);
    expect(read).toMatchObject({ ok: true, value: { timing: { pictures: 30, passes: 2 } } });
    expect(seenS).toEqual([steps(30).filter((timeS) => !unneeded(timeS)), steps(30)]);
    expect(stillOpen()).toBe(0);
  });

  it('reads all of a film whose pictures were left out in vain, and then as any other', async () => {
    const { film } = filmOf(steps(30));
    const { given, places, makeReader, tools } = setUp({ taught: ['whole', TAUGHT] });
    expect(await readPasses(film, makeReader, tools)).toMatchObject({
      value: { timing: { passes: 3 } },
    });
    expect(given).toEqual([FIRST_LOOK, {}, TAUGHT]);
    expect(places.at(-1)).toEqual({ fraction: 1, pass: 2 });
    const inVain = setUp({ taught: ['whole', 'whole'] });
    await readPasses(filmOf(steps(30)).film, inVain.makeReader, inVain.tools);
    expect(inVain.given).toEqual([FIRST_LOOK, {}]);
  });

  it('leaves out pictures before time 0 and times that do not go on', async () => {
    const { film, stillOpen } = filmOf([-0.04, 0, 0.04, 0.04, 0.03, 0.1]);
    const { seenS, makeReader, tools } = setUp();
    await readPasses(film, makeReader, tools);
    expect(seenS).toEqual([[0, 0.04, 0.1]]);
    expect(stillOpen()).toBe(0);
  });

  it('reads a film that breaks as far as it goes, and says so', async () => {
    const { film } = filmOf(steps(30), { breaks: true });
    const { makeReader, tools } = setUp();
    expect(await readPasses(film, makeReader, tools)).toMatchObject({
      ok: true,
      value: { ending: 'cut-off' },
    });
    const silent = filmOf(steps(30), { durationS: 10 });
    expect(await readPasses(silent.film, makeReader, tools)).toMatchObject({
      value: { ending: 'cut-off' },
    });
  });

  it('of a film with more pictures than a hand can turn in takes sixty a second', async () => {
    const { film, stillOpen } = filmOf(Array.from({ length: 480 }, (_, i) => i / 240));
    const { seenS, makeReader, tools } = setUp();
    expect(await readPasses(film, makeReader, tools)).toMatchObject({
      value: { ending: 'whole', timing: { pictures: 120 } },
    });
    expect(seenS[0]!.slice(0, 3)).toEqual([0, 4 / 240, 8 / 240]);
    expect(stillOpen()).toBe(0);
  });

  it('of a film of twenty minutes reads what there is memory for, and says so', async () => {
    const { film, stillOpen } = filmOf(Array.from({ length: 20 * 60 * 30 }, (_, i) => i / 30));
    const { makeReader, tools } = setUp();
    const all = { ...tools, stopped: () => false };
    expect(await readPasses(film, makeReader, all)).toMatchObject({
      value: { ending: 'too-long', timing: { pictures: MOST_PICTURES } },
    });
    expect(stillOpen()).toBe(0);
  });

  it('has no reading of a film that breaks at once, or has no picture', async () => {
    const { makeReader, tools } = setUp();
    const broken = filmOf(steps(3), { breaks: true });
    expect(await readPasses(broken.film, makeReader, tools)).toMatchObject({
      failure: { code: 'film-cut-off', evidence: { pictures: 3 } },
    });
    expect(await readPasses(filmOf([]).film, makeReader, tools)).toMatchObject({
      failure: { code: 'file-unreadable' },
    });
  });

  it('stops in either pass and closes what is open', async () => {
    for (const stopAfter of [5, 35]) {
      const { film, stillOpen } = filmOf(steps(30));
      const { seenS, makeReader, tools } = setUp({ taught: [TAUGHT], stopAfter });
      expect(await readPasses(film, makeReader, tools)).toMatchObject({
        failure: { code: 'stopped' },
      });
      expect(seenS.flat()).toHaveLength(stopAfter);
      expect(stillOpen()).toBe(0);
    }
  });
});
