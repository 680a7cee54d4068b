'use client';

import { useMemo } from 'react';
import { writeScript } from '@/lib/dive/script';
import { workingFor } from '@/lib/working/all';
import { isRuleReading, unitWorkingFor } from '@/lib/working/rules/unit-all';
import { diveAgain } from '@/lib/working/what-if/dive-again';
import type { Target } from '@/lib/ways-out/trouble';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import { WorkingPanel } from '../../parts/working/WorkingPanel';
import { deskSampling } from '../../pictures/scene';
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
  const onDive = useMemo(() => {
    if (!working) return undefined;
    const { dive } = scene;
    const script = writeScript(dive);
    if (watch) {
      return diveAgain(
        { working, dive, script, timeline: watch.timeline, sample, watch },
        {
          of: 'unit',
          working: (then, at) => unitWorkingFor(reading, { watch: then, sample: at }),
          sampling: deskSampling,
        },
      );
    }
    if (isRuleReading(reading)) return undefined;
    return diveAgain(
      { working, dive, script, timeline: scene.timeline, sample },
      { of: 'model', working: (...then) => workingFor(reading, ...then) },
    );
  }, [working, watch, reading, scene, sample]);
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
