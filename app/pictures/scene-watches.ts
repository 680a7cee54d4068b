import { DEFAULT_RULES } from '@/lib/rules/all';
import { watchDive, type Watch } from '@/lib/rules/watch';
import { deskSampling, type Scene } from './scene';

/**
 * The dive of a scene as its instruments see it, in the order of `setups`: worked out when first asked for, then kept
 * with the scene. The desk opens without the rules; whoever shows what a unit says brings them.
 */
export function watchesOf(scene: Scene): readonly Watch[] {
  const { dive, timeline, figures, setups, rules = DEFAULT_RULES, watched } = scene;
  if (watched.watches) return watched.watches;
  const { everyS, intervalEveryS } = deskSampling(dive);
  const truth = { timeline, figures };
  watched.watches = setups.map((setup, index) =>
    watchDive(dive, setup, rules, everyS, { truth, intervalEveryS, reuse: watched.spare?.[index] }),
  );
  watched.spare = undefined;
  return watched.watches;
}

/** The unit whose rules and readings are shown: the chosen one while the script still names it, else the one set right. */
export function chosenWatch({ scene, unit }: { readonly scene: Scene; readonly unit: number }): Watch {
  const watches = watchesOf(scene);
  return watches[unit] ?? watches[0]!;
}
