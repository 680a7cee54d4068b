import { useDeferredValue, useMemo } from 'react';
import { usePreferences } from '../parts/preferences';
import { chosenWatch } from '../pictures/scene-watches';
import { useDeskOncePainted } from './desk-context';
import { momentsOf, type NamedTime } from './moments';

/**
 * The scene and the chosen unit's watch, for what is read from a dive's whole course. While a hand drags, the dive and
 * the readings follow it at once, and this when they have been painted.
 */
export function useCourse() {
  const scene = useDeferredValue(useDeskOncePainted((state) => state.scene));
  const watch = useDeferredValue(useDeskOncePainted(chosenWatch));
  return { scene, watch };
}

/** The times worth stopping at, in order. */
export function useMoments(): readonly NamedTime[] {
  const { scene, watch } = useCourse();
  const units = usePreferences((state) => state.units);
  return useMemo(() => momentsOf(scene, watch, units), [scene, watch, units]);
}
