import { rimMap, type RimMap } from '../shape/rimMap.ts';
import { shedPicture, type ShedPicture } from '../shape/shedPicture.ts';
import { type TreadMap } from '../shape/skinTexels.ts';
import { treadMap } from '../shape/treadMap.ts';
import { tyreProfile, type TyreProfile } from '../shape/tyreProfile.ts';
import type { StandScene, StandWeight } from '../scene/standScene.ts';
import { standCamera, type StandCamera } from './standCamera.ts';
import { tyreInWheel, type TyreInWheel } from './tyreFrame.ts';

/** Where things are, without what they look like. */
export interface StandShape {
  readonly scene: StandScene;
  readonly profile: TyreProfile;
  readonly sits: TyreInWheel;
  readonly camera: StandCamera;
}

/** A scene with all that is worked out once: what both renderers draw from. */
export interface StandModel extends StandShape {
  readonly tread: TreadMap;
  readonly rim: RimMap;
  readonly shed: ShedPicture;
}

export function standModel(scene: StandScene): StandModel {
  const profile = tyreProfile(scene);
  const sits = tyreInWheel(scene, profile);
  const camera = standCamera(scene);
  return {
    scene,
    profile,
    sits,
    camera,
    tread: treadMap(scene, profile),
    rim: rimMap(scene, profile, -sits.origin[2]),
    shed: shedPicture(scene, camera),
  };
}

/** The same model with other weights on the rim: tread and shed stay as they are. */
export function withWeights(model: StandModel, weights: readonly StandWeight[]): StandModel {
  const scene = { ...model.scene, wheel: { ...model.scene.wheel, weights: [...weights] } };
  return { ...model, scene, rim: rimMap(scene, model.profile, -model.sits.origin[2]) };
}

/** The same model pictured in another size. */
export function inSize(model: StandModel, widthPx: number, heightPx: number): StandModel {
  const scene = { ...model.scene, camera: { ...model.scene.camera, widthPx, heightPx } };
  const camera = standCamera(scene);
  return { ...model, scene, camera, shed: shedPicture(scene, camera) };
}
