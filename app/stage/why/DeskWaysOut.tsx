'use client';

import { useDeferredValue, useEffect, useMemo } from 'react';
import { createPortal } from 'react-dom';
import { parseScript, writeScript } from '@/lib/dive/script';
import { sampleAt } from '@/lib/dive/timeline';
import { sayAtDayClock } from '@/lib/dive/day-clock';
import { modelSayings } from '@/lib/sayings/model-readings';
import { needsDeepCaution } from '@/lib/ways-out/deep';
import type { Target } from '@/lib/ways-out/trouble';
import type { WayOut } from '@/lib/ways-out/ways-out';
import { usePreferences } from '../../parts/preferences';
import { afterPaint } from '../../parts/after-paint';
import { useStatus } from '../../parts/status';
import { useOpenWhy } from '../../parts/working/open-why';
import { WorkingItOut, WorkingSheet } from '../../parts/working/WorkingSheet';
import { useWaysOut } from '../../working/ways-out/use-ways-out';
import { targetOf, useWaysOutHere, waysOutId } from '../../working/ways-out/ways-out-here';
import { WaysOutPanel } from '../../working/ways-out/WaysOutPanel';
import { cursorSample } from '../desk-store';
import { useDesk, useDeskOncePainted, useDeskStore } from '../desk-context';
import { modelMomentOf } from '../model-moment';
import { sceneOf, type Scene } from '../../pictures/scene';

interface DeskWaysOutProps {
  /** Tells without offering to write it into the script, as where the dive is for the learner to mend. */
  tellOnly?: boolean;
}

/** Answers on the desk what would have avoided a stop, whoever asked: a reading, an event of the log, a "why?". */
export function DeskWaysOut({ tellOnly = false }: DeskWaysOutProps) {
  const target = useOpenWhy((state) => targetOf(state.id));
  useEffect(() => {
    useWaysOutHere.setState(({ panels }) => ({ panels: panels + 1 }));
    return () => useWaysOutHere.setState(({ panels }) => ({ panels: panels - 1 }));
  }, []);
  return target ? createPortal(<OpenPanel target={target} tellOnly={tellOnly} />, document.body) : null;
}

const MOST_SHOWN = 2;

const PanelSoon = afterPaint(WaysOutPanel, WorkingItOut);

function OpenPanel({ target, tellOnly }: { target: Target; tellOnly: boolean }) {
  const store = useDeskStore();
  const scene = useDeskOncePainted((state) => state.scene);
  const rules = useDesk((state) => state.rules);
  const shown = useDesk((state) => state.shownWays);
  const live = useDesk((state) => state.base !== undefined || state.still);
  const sample = useDeskOncePainted(cursorSample);
  const units = usePreferences((state) => state.units);
  const { ask, close } = useOpenWhy.getState();
  const asked = useMemo(
    () => ({ script: writeScript(scene.dive), question: { target, system: units, rules } }),
    [scene, target, units, rules],
  );
  const answer = useWaysOut(asked);
  const cursorS = scene.timeline.timeS[sample]!;
  // The button says at once that it is pressed; the dive it asks for is worked out when that has been painted.
  const workedOut = useDeferredValue(shown);
  const others = useMemo(
    () => workedOut.map(({ script }) => sceneOfScript(script)).filter((one) => one !== undefined),
    [workedOut],
  );

  // What is shown beside the dive belongs to the question: it goes when that does.
  useEffect(() => () => store.getState().showWays([]), [store]);

  const show = (way: WayOut) => {
    const left = shown.filter(({ script }) => script !== way.script);
    store.getState().showWays(left.length < shown.length ? left : [...left.slice(1 - MOST_SHOWN), way]);
  };
  const use = (way: WayOut) => {
    const { change, undo, showWays } = store.getState();
    showWays([]);
    change({ script: way.script });
    useStatus.getState().say('The change is written into the script.', { label: 'Undo', run: undo });
    close();
  };
  const saidOf = (of: Scene, at: number) => modelSayings(modelMomentOf(of, at), units);
  const said = [saidOf(scene, sample), ...others.map((other) => saidOf(other, sampleAt(other.timeline, cursorS)))];
  const rows = (['no-stop', 'ceiling', 'required-stop'] as const).map((reading) => ({
    reading: said[0]![reading].name,
    values: said.map((one) => one[reading].text),
  }));
  return (
    <WorkingSheet title="What would have avoided it?" onClose={close}>
      <PanelSoon
        target={target}
        onTarget={(next) => ask(waysOutId(next))}
        answer={answer}
        shown={shown}
        onShow={show}
        onUse={live || tellOnly ? undefined : use}
        beside={{ when: sayAtDayClock(scene.timeline, cursorS), ways: workedOut, rows }}
        deep={needsDeepCaution(scene.dive)}
      />
    </WorkingSheet>
  );
}

function sceneOfScript(script: string): Scene | undefined {
  const parsed = parseScript(script);
  return parsed.ok ? sceneOf(parsed.dive) : undefined;
}
