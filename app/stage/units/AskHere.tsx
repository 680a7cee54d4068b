'use client';

import { useMemo } from 'react';
import { sampleFromS } from '@/lib/dive/timeline';
import type { AlarmKind } from '@/lib/rules/alarms';
import type { AlarmShown } from '@/lib/rules/unit/alarms-shown';
import type { Target } from '@/lib/ways-out/trouble';
import { usePreferences } from '../../parts/preferences';
import { AskWaysOut } from '../../working/ways-out/AskWaysOut';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { AT_S } from '../moments';
import { useCourse } from '../use-course';
import { logEntriesOf } from './log-entries';
import styles from './units.module.css';

const OF_ALARM: Readonly<Record<AlarmKind, Target>> = {
  'slow-down': 'slow-down',
  'above-ceiling': 'stop',
  'grace-over': 'stop',
};

const QUESTIONS: Readonly<Record<Target, string>> = {
  stop: 'What would have avoided the stop?',
  ceiling: 'What would have avoided the ceiling?',
  'slow-down': 'What would have avoided the “slow down”?',
};

/** Asks what would have avoided what is insisted on at the cursor, or the event whose mark it stands at. */
export function AskHere({ alarms }: { alarms: readonly AlarmShown[] }) {
  const { scene, watch } = useCourse();
  const timeline = useDeskOncePainted((state) => state.scene.timeline);
  const cursorS = useDeskOncePainted((state) => state.cursorS);
  const covered = useDesk((state) => state.covered.length > 0);
  const units = usePreferences((state) => state.units);
  const entries = useMemo(() => logEntriesOf(scene, watch, units), [scene, watch, units]);
  // A mark leads to the very instant, a step to where the readings first say so.
  const here = ({ timeS }: { timeS: number }) =>
    [timeS, sampleFromS(timeline, timeS)].some((atS) => Math.abs(atS - cursorS) <= AT_S);
  const alarmed = alarms.map(({ kind }) => OF_ALARM[kind]);
  // What an event is would give away what a class is to find.
  const marked = covered ? [] : entries.flatMap((entry) => (entry.avoidable && here(entry) ? [entry.avoidable] : []));
  const [target] = [...alarmed, ...marked];
  return target ? (
    <span className={styles.askHere}>
      <AskWaysOut target={target} kind="quiet">
        {QUESTIONS[target]}
      </AskWaysOut>
    </span>
  ) : null;
}
