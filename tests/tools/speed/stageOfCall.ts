import type { Profiler } from 'node:inspector';

/** Part of the measuring core's work, as the speed table lists it. */
export type Stage = string;

/** By the innermost of these functions that is at work. */
const STAGE_OF_FUNCTION: Readonly<Record<string, Stage>> = {
  meterLight: 'light meter',
  unrollPicture: 'band unroll',
  isRepeated: 'repeated picture',
  markUsableCells: 'laser mask',
  blockProfiles: 'block profiles',
  trackLean: 'lean',
  edgeRows: 'tread texture',
  treadTexture: 'tread texture',
  trackTurn: 'turn',
  shoulderColour: 'shoulder colour',
  watchLine: 'line',
  laserContrastOf: 'laser contrast',
  findLaserPath: 'path',
  followingProgress: 'progress',
};

/** Work of its own kind that calls the stages above: it counts as a whole, by the innermost of these. */
const STAGE_OF_CALLER: Readonly<Record<string, Stage>> = {
  lookForSight: 'line pooled',
  poolMore: 'line pooled',
  tryToRecord: 'camera found',
  tryKnownCamera: 'camera found',
  heldAgainstLine: 'camera found',
  recordWith: 'edge found',
  keepPicture: 'pictures kept',
  checkMark: 'tapes',
  secondLook: 'end of sweep',
  finish: 'end of sweep',
};

const GARBAGE: Stage = 'garbage collection';
const REST: Stage = 'rest';

/** Stage of every node of a processor profile. */
export function stagesOfNodes(profile: Profiler.Profile): Map<number, Stage> {
  const stageOf = new Map<number, Stage>();
  const nodeOf = new Map(profile.nodes.map((node) => [node.id, node]));
  const place = (id: number, inner: Stage, whole: Stage | null): void => {
    const node = nodeOf.get(id)!;
    const name = node.callFrame.functionName;
    const here = name === '(garbage collector)' ? GARBAGE : (STAGE_OF_FUNCTION[name] ?? inner);
    const caller = STAGE_OF_CALLER[name] ?? whole;
    stageOf.set(id, here === GARBAGE ? here : (caller ?? here));
    for (const child of node.children ?? []) place(child, here, caller);
  };
  place(profile.nodes[0]!.id, REST, null);
  return stageOf;
}
