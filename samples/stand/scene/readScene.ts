import * as v from 'valibot';

import { failed, succeeded, type Outcome } from '../../../src/contract/outcome.ts';
import { StandSceneSchema, type StandScene, type StandSceneInput } from './standScene.ts';

/** Checks a parsed scene file; a failure's evidence names the first value that is wrong and how. */
export function readScene(json: unknown): Outcome<StandScene, 'scene-invalid'> {
  const parsed = v.safeParse(StandSceneSchema, json);
  if (parsed.success) return succeeded(parsed.output);
  const issue = parsed.issues[0];
  return failed('scene-invalid', {
    where: v.getDotPath(issue) ?? 'the whole file',
    problem: issue.message,
  });
}

/** A scene from code: what is left out is as usual; a value out of range is the programmer's slip. */
export function standScene(changes: StandSceneInput = {}): StandScene {
  return v.parse(StandSceneSchema, { format: 'tiltsweep.scene/1', ...changes });
}
