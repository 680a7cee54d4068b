import { useMemo } from 'react';
import { dayPlaceAt, sayAtDayClock } from '@/lib/dive/day-clock';
import { workingFor } from '@/lib/working/all';
import { isRuleReading, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { chosenWatch } from '../../pictures/scene-watches';
import { cursorSample } from '../desk-store';
import { useDeskOncePainted } from '../desk-context';

export interface AskedWorking {
  reading: UnitReadingId;
  unit?: number | undefined;
  onClose: () => void;
}

/** The working behind a reading at the time cursor, null where it is not shown then, and where and by whom it is read. */
export function useAskedWorking({ reading, unit }: Pick<AskedWorking, 'reading' | 'unit'>) {
  const scene = useDeskOncePainted((state) => state.scene);
  const sample = useDeskOncePainted(cursorSample);
  const watch = unit === undefined ? undefined : chosenWatch({ scene, unit });
  const working = useMemo(() => {
    if (watch) return unitWorkingFor(reading, { watch, sample });
    return isRuleReading(reading) ? null : workingFor(reading, scene.timeline, scene.figures, sample);
  }, [reading, watch, scene, sample]);
  const timeS = scene.timeline.timeS[sample]!;
  const where = `${sayAtDayClock(scene.timeline, timeS)}${dayPlaceAt(scene.timeline, timeS) ? '' : ' of the dive'}${watch ? `, by “${watch.setup.name}”` : ''}`;
  return { scene, sample, watch, working, where };
}
