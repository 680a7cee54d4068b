import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import type { Timeline } from '@/lib/dive/timeline';
import type { Scene } from './scene';

/** Oxygen, density and cylinders of a scene, each worked out once however many pictures ask; a scene is never altered. */
export const oxygenOf = onceAScene(oxygenExposureOf);
export const densitiesOf = onceAScene(gasDensitiesOf);
export const supplyOf = onceAScene(gasSupplyOf);

function onceAScene<Result>(workOut: (timeline: Timeline) => Result): (scene: Scene) => Result {
  const known = new WeakMap<Scene, { readonly result: Result }>();
  return (scene) => {
    const before = known.get(scene);
    if (before) return before.result;
    const result = workOut(scene.timeline);
    known.set(scene, { result });
    return result;
  };
}
