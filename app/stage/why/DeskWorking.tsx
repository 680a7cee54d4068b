'use client';

import { useMemo } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { workingFor } from '@/lib/working/all';
import { workingOfChangedDive } from '@/lib/working/dive-what-if';
import { isRuleReading, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import type { Target } from '@/lib/ways-out/trouble';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import type { OnDive } from '../../parts/working/use-what-if';
import { WorkingPanel } from '../../parts/working/WorkingPanel';
import { WorkingSheet } from '../../parts/working/WorkingSheet';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import { chosenWatch } from '../../pictures/scene-watches';

/** What a reading's "why?" leads on to. */
const ASKS: Readonly<Record<string, { target: Target; reverse?: boolean }>> = {
  'required-stop': { target: 'stop' },
  'time-to-surface': { target: 'stop' },
  ceiling: { target: 'ceiling' },
  'no-stop': { target: 'stop', reverse: true },
  'credited-no-stop': { target: 'stop', reverse: true },
  rate: { target: 'slow-down' },
  'imposed-stop': { target: 'slow-down' },
};

interface DeskWorkingProps {
  reading: UnitReadingId;
  unit?: number | undefined;
  onClose: () => void;
}

/** The working behind a reading at the time cursor: the model's own, or one unit's by its own depths, tissues and rules. */
export function DeskWorking({ reading, unit, onClose }: DeskWorkingProps) {
  const scene = useDesk((state) => state.scene);
  const sample = useDesk(cursorSample);
  const watch = unit === undefined ? undefined : chosenWatch({ scene, unit });
  const working = useMemo(() => {
    if (watch) return unitWorkingFor(reading, { watch, sample });
    return isRuleReading(reading) ? null : workingFor(reading, scene.timeline, scene.figures, sample);
  }, [reading, watch, scene, sample]);
  const script = useDesk((state) => state.script);
  const onDive = useMemo((): OnDive | undefined => {
    if (watch || isRuleReading(reading)) return undefined;
    return (symbol, value) =>
      workingOfChangedDive(reading, script, { timeline: scene.timeline, sample }, symbol, value);
  }, [watch, reading, script, scene, sample]);
  const where = `At ${printClock(scene.timeline.timeS[sample]!)} of the dive${watch ? `, by “${watch.setup.name}”` : ''}`;
  if (!working) {
    return (
      <WorkingSheet title="Why?" where={where} onClose={onClose}>
        <p>This is not shown at this moment. Move the time cursor to where it is.</p>
      </WorkingSheet>
    );
  }
  const asks = ASKS[working.reading];
  return (
    <WorkingPanel
      key={working.reading}
      working={working}
      where={where}
      {...(onDive && { onDive })}
      onClose={onClose}
      next={asks && <AskWaysOut {...asks} />}
    />
  );
}
