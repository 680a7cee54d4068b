import { figuresAt } from '@/lib/ascent/figures';
import type { ModelMoment } from '@/lib/sayings/model-readings';
import type { Scene } from '../pictures/scene';

const latest = new WeakMap<Scene, ModelMoment>();

/** What the model says at a sample of a scene; worked out once however many surfaces ask about the same instant. */
export function modelMomentOf(scene: Scene, sample: number): ModelMoment {
  const before = latest.get(scene);
  if (before?.sample === sample) return before;
  const { timeline, figures } = scene;
  const moment = { timeline, sample, now: figuresAt(timeline, figures, sample) };
  latest.set(scene, moment);
  return moment;
}
