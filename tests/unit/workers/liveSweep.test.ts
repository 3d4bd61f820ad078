import { describe, expect, it } from 'vitest';

import type { YuvPicture } from '../../../src/contract/picture.ts';
import { createLiveSweep } from '../../../workers/liveSweep.ts';
import { createSweepReader } from '../../fakes/fakeReader.ts';
import setupJson from '../../../samples/shed-front-left.setup.json' with { type: 'json' };
import { readSetup } from '../../../src/contract/setup.ts';

const setup = readSetup(setupJson);
if (!setup.ok) throw new Error('the sample setup is not valid');
const SETUP = setup.value;

class FakeFrame {
  closed = 0;
  readonly timestamp: number;
  readonly displayWidth: number;
  readonly displayHeight = 720;
  constructor(timeS: number, widthPx = 1280) {
    this.timestamp = timeS * 1e6;
    this.displayWidth = widthPx;
  }
  close() {
    this.closed += 1;
  }
}
const asFrame = (frame: FakeFrame) => frame as unknown as VideoFrame;

function sweepWithLog() {
  const timesS: number[] = [];
  const reader = createSweepReader(SETUP);
  const logging = {
    addFrame(picture: YuvPicture) {
      timesS.push(picture.timeS);
      return reader.addFrame(picture);
    },
    finish: () => reader.finish(),
    needs: (timeS: number) => reader.needs(timeS),
    secondLook: () => reader.secondLook(),
    sightNow: () => reader.sightNow(),
    takeNotes: () => reader.takeNotes(),
  };
  const copy = async (_frame: VideoFrame, timeS: number) => ({ timeS }) as YuvPicture;
  const report = { progress: () => undefined, preview: async () => undefined };
  return { timesS, sweep: createLiveSweep(logging, { copy, report }) };
}

function streamOf(frames: FakeFrame[]): ReadableStream<VideoFrame> {
  return new ReadableStream<VideoFrame>({
    start(controller) {
      for (const frame of frames) controller.enqueue(asFrame(frame));
      controller.close();
    },
  });
}

describe('createLiveSweep', () => {
  it('starts its own time at the first picture and closes every one', async () => {
    const { timesS, sweep } = sweepWithLog();
    const frames = [100, 100.04, 100.1].map((t) => new FakeFrame(t));
    expect(await sweep.pump(streamOf(frames))).toBe('stream-ended');
    expect(timesS.map((t) => Number(t.toFixed(6)))).toEqual([0, 0.04, 0.1]);
    expect(frames.map((f) => f.closed)).toEqual([1, 1, 1]);
    expect(sweep.picturesTaken()).toBe(3);
  });

  it('takes a picture that comes twice, or late, only once', async () => {
    const { timesS, sweep } = sweepWithLog();
    const frames = [1, 1, 0.9, 1.5].map((t) => new FakeFrame(t));
    await sweep.pump(streamOf(frames));
    expect(timesS).toEqual([0, 0.5]);
    expect(frames.every((f) => f.closed === 1)).toBe(true);
  });

  it('ends when the picture changes its size, and keeps what came before', async () => {
    const { timesS, sweep } = sweepWithLog();
    const frames = [new FakeFrame(1), new FakeFrame(2), new FakeFrame(3, 720)];
    expect(await sweep.pump(streamOf(frames))).toBe('picture-changed');
    expect(timesS).toHaveLength(2);
    expect(frames[2]!.closed).toBe(1);
  });

  it('takes nothing more once finished, and closes what still comes', async () => {
    const { timesS, sweep } = sweepWithLog();
    await sweep.add(asFrame(new FakeFrame(1)), 1);
    sweep.finish();
    const late = new FakeFrame(2);
    expect(await sweep.add(asFrame(late), 2)).toBe('over');
    expect([timesS.length, late.closed]).toEqual([1, 1]);
  });

  it('leaves out a picture that was being copied when the sweep was finished', async () => {
    const { timesS, sweep } = sweepWithLog();
    const adding = sweep.add(asFrame(new FakeFrame(1)), 1);
    sweep.finish();
    expect(await adding).toBe('over');
    expect(timesS).toEqual([]);
  });
});
