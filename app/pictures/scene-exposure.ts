import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import type { Scene } from './scene';

/** Oxygen, density and cylinders of a scene, each worked out once however many pictures ask; a scene is never altered. */
export const oxygenOf = onceAScene(({ timeline }) => oxygenExposureOf(timeline));
export const densitiesOf = onceAScene(({ timeline }) => gasDensitiesOf(timeline));
export const supplyOf = onceAScene(({ timeline, dive }) => gasSupplyOf(timeline, dive.settings));

function onceAScene<Result>(workOut: (scene: Scene) => Result): (scene: Scene) => Result {
  const known = new WeakMap<Scene, { readonly result: Result }>();
  return (scene) => {
    const before = known.get(scene);
    if (before) return before.result;
    const result = workOut(scene);
    known.set(scene, { result });
    return result;
  };
}
