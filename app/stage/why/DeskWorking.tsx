'use client';

import { useMemo } from 'react';
import { workingOfChangedDive } from '@/lib/working/dive-what-if';
import { isRuleReading } from '@/lib/working/rules/unit-all';
import type { Target } from '@/lib/ways-out/trouble';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import type { OnDive } from '../../parts/working/use-what-if';
import { WorkingPanel } from '../../parts/working/WorkingPanel';
import { useDesk } from '../desk-context';
import { NotShownNow } from './NotShownNow';
import { useAskedWorking, type AskedWorking } from './use-asked-working';

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

/** The working behind a reading at the time cursor: the model's own, or one unit's by its own depths, tissues and rules. */
export function DeskWorking(asked: AskedWorking) {
  const { reading, onClose } = asked;
  const { scene, sample, watch, working, where } = useAskedWorking(asked);
  const script = useDesk((state) => state.script);
  const onDive = useMemo((): OnDive | undefined => {
    if (watch || isRuleReading(reading)) return undefined;
    return (symbol, value) =>
      workingOfChangedDive(reading, script, { timeline: scene.timeline, sample }, symbol, value);
  }, [watch, reading, script, scene, sample]);
  if (!working) return <NotShownNow where={where} onClose={onClose} />;
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
