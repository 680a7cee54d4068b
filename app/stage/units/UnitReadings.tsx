'use client';

import { useMemo } from 'react';
import { printStopDepth } from '@/lib/quantity/depth';
import { printClock, printHours } from '@/lib/quantity/duration';
import { printPercent } from '@/lib/quantity/percent';
import { printRate } from '@/lib/quantity/rate';
import { shownAt, type Shown } from '@/lib/rules/unit/shown';
import { STOP_KINDS } from '@/lib/rules/stop-kinds';
import { Icon } from '../../parts/Icon';
import { usePreferences } from '../../parts/preferences';
import { Reading } from '../../parts/Reading';
import { useCovering } from '../covering';
import { cursorSample } from '../desk-store';
import { useDesk } from '../desk-context';
import type { ReadingId } from '../reading-ids';
import { safetyStopMeaning } from './shown-rows';
import { DeskWhy } from '../why/DeskWhy';
import { StopMark } from '../../pictures/StopMark';
import { chosenWatch } from '../../pictures/scene-watches';
import styles from './units.module.css';

/** What the chosen unit adds to the model at the cursor: speed, safety stop, imposed stop, alarms, the wait before flying. */
export function UnitReadings({ only }: { only?: readonly ReadingId[] | undefined }) {
  const cover = useCovering(only);
  const watch = useDesk(chosenWatch);
  const unit = useDesk((state) => (state.scene.setups[state.unit] ? state.unit : 0));
  const sample = useDesk(cursorSample);
  const units = usePreferences((state) => state.units);
  const shown = useMemo(() => shownAt(watch, sample, units), [watch, sample, units]);
  const { safetyStop, imposedStop } = shown;
  const [rate, rateUnit] = printRate(Math.abs(shown.rateMMin ?? 0), units).split(' ');
  return (
    <>
      {shown.rateMMin !== null && (
        <Reading
          {...cover('rate')}
          why={<DeskWhy unit={unit} reading="rate" about="this rate" />}
          label="Rate"
          value={rate!}
          unit={rateUnit}
          roomFor={3}
          tone={tooFast(shown.rateLevel) ? 'rule' : 'plain'}
          note={`${rateWay(shown)}; ${rateNote(shown)}`}
        />
      )}
      {safetyStop && (
        <Reading
          {...cover('safety-stop')}
          why={<DeskWhy unit={unit} reading="safety-stop" about="this safety stop" />}
          label="Safety stop"
          value={printClock(safetyStop.leftS)}
          roomFor={5}
          note={
            <span title={STOP_KINDS.safety.explanation}>
              <StopMark kind="safety" /> {safetyStop.state}. {safetyStopMeaning(shown)}
            </span>
          }
        />
      )}
      {imposedStop && (
        <Reading
          {...cover('imposed-stop')}
          why={<DeskWhy unit={unit} reading="imposed-stop" about="this imposed stop" />}
          label="Imposed stop"
          value={printClock(imposedStop.minutes * 60)}
          roomFor={5}
          tone="rule"
          note={
            <span title={STOP_KINDS.imposed.explanation}>
              <StopMark kind="imposed" /> at {printStopDepth(imposedStop.depthM, units)}, a rule’s demand
            </span>
          }
        />
      )}
      {shown.noFlyH !== null && (
        <Reading
          {...cover('no-fly')}
          why={<DeskWhy unit={unit} reading="no-fly" about="this wait before flying" />}
          label="No flying for"
          value={printHours(shown.noFlyH * 3600)}
          roomFor={8}
          note="guideline or model, the longer"
        />
      )}
      {shown.tightenedHigh !== null && (
        <p className={styles.alarm}>
          <span>The unit has drawn its limits in: a high gradient factor of {printPercent(shown.tightenedHigh)}.</span>
          <DeskWhy small unit={unit} reading="tightened-limits" about="these limits" />
        </p>
      )}
      {shown.mode === 'locked out' && (
        <p className={styles.alarm}>
          <Icon name="caution" /> Locked: depth and time only, for {printHours(shown.lockedForS ?? 0)} more.
        </p>
      )}
      {shown.mode === 'gauge' && <p>{watch.setup.name} is in gauge mode: it works nothing out.</p>}
      {shown.alarms.map((alarm) => (
        <p key={alarm.kind} className={styles.alarm}>
          <Icon name="caution" /> {alarm.text}
        </p>
      ))}
    </>
  );
}

function tooFast(level: string | null): boolean {
  return level === 'too fast' || level === 'far too fast';
}

function rateWay({ rateMMin, rateLevel }: Pick<Shown, 'rateMMin' | 'rateLevel'>): string {
  if (Math.abs(rateMMin ?? 0) < 0.05) return 'steady';
  return rateMMin! < 0 ? 'down' : `up, ${rateLevel}`;
}

function rateNote({ breaches }: { breaches: number | null }): string {
  if (!breaches) return 'no breach on this dive';
  return breaches === 1 ? 'one breach on this dive' : `${breaches} breaches on this dive`;
}
