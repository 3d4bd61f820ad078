import { Session } from 'node:inspector/promises';

import type { SweepReaderOptions, SweepResult } from '../../../src/contract/sweep.ts';
import { benchFilm, type PictureSize } from './benchFilm.ts';
import type { BundledCore } from './bundledCore.ts';
import { stagesOfNodes, type Stage } from './stageOfCall.ts';

/**
 * Processor time, not time by the clock: what other programs take does not count, all threads of this
 * one do (compiling and collecting garbage beside the measuring), as on one core.
 */
export interface CoreRun {
  readonly cpuMs: readonly number[];
  readonly endMs: number;
  readonly result: SweepResult;
  /** Time of each stage at each picture; empty when not asked for. */
  readonly stageMs: ReadonlyMap<Stage, readonly number[]>;
}

export interface RunChoice {
  readonly options?: SweepReaderOptions;
  /** Pictures of the film; default all. */
  readonly first?: number;
  /** Also by stages: sampling costs some time of its own. */
  readonly byStage?: boolean;
  /** Clock of the pictures, in times of the film's own; default 1. */
  readonly faster?: number;
}

/** Samples of what is at work, µs apart. */
const SAMPLE_US = 100;

interface Span {
  readonly fromUs: number;
  readonly toUs: number;
  readonly cpuMs: number;
}

/** The core reads the built-in sample in a size, one picture after the other. */
export async function runCore(
  core: BundledCore,
  size: PictureSize,
  { options = {}, first = Infinity, byStage = false, faster = 1 }: RunChoice = {},
): Promise<CoreRun> {
  const { setup, pictures } = benchFilm(size);
  const reader = core.createSweepReader(setup, options);
  const session = byStage ? await startSampling() : null;
  const spans: Span[] = [];
  for await (const picture of pictures()) {
    const timed = { ...picture, timeS: picture.timeS / faster };
    spans.push(spanOf(() => reader.addFrame(timed)));
    if (spans.length >= first) break;
  }
  const profile = session && (await session.post('Profiler.stop')).profile;
  session?.disconnect();
  let result: SweepResult | null = null;
  const end = spanOf(() => {
    reader.secondLook();
    result = reader.finish();
  });
  return {
    cpuMs: spans.map((span) => span.cpuMs),
    endMs: end.cpuMs,
    result: result!,
    stageMs: profile ? timesByStage(profile, spans) : new Map(),
  };
}

async function startSampling(): Promise<Session> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.setSamplingInterval', { interval: SAMPLE_US });
  await session.post('Profiler.start');
  return session;
}

function spanOf(work: () => unknown): Span {
  const before = process.cpuUsage();
  const fromUs = nowUs();
  work();
  const toUs = nowUs();
  const { user, system } = process.cpuUsage(before);
  return { fromUs, toUs, cpuMs: (user + system) / 1000 };
}

const nowUs = (): number => Number(process.hrtime.bigint()) / 1000;

type Profile = Parameters<typeof stagesOfNodes>[0];

/** Each picture's processor time, shared out by what was at work when samples were taken. */
function timesByStage(profile: Profile, spans: readonly Span[]): Map<Stage, number[]> {
  const stageOf = stagesOfNodes(profile);
  const counts = spans.map(() => new Map<Stage, number>());
  const { samples = [], timeDeltas = [] } = profile;
  let atUs = profile.startTime;
  let picture = 0;
  samples.forEach((node, i) => {
    atUs += timeDeltas[i]!;
    while (picture < spans.length && spans[picture]!.toUs < atUs) picture++;
    if (picture >= spans.length || atUs < spans[picture]!.fromUs) return;
    const stage = stageOf.get(node)!;
    counts[picture]!.set(stage, (counts[picture]!.get(stage) ?? 0) + 1);
  });
  const stages = new Set(counts.flatMap((count) => [...count.keys()]));
  return new Map(
    [...stages].map((stage) => [
      stage,
      spans.map((span, i) => shareOf(counts[i]!, stage) * span.cpuMs),
    ]),
  );
}

function shareOf(counts: ReadonlyMap<Stage, number>, stage: Stage): number {
  const all = [...counts.values()].reduce((sum, n) => sum + n, 0);
  return all > 0 ? (counts.get(stage) ?? 0) / all : 0;
}

/** Value below which a share of the values lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
