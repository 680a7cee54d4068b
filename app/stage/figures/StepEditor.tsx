'use client';

import { setStepDepth, setStepDuration, setStepRate } from '@/lib/dive/edit/edit-steps';
import type { Leg } from '@/lib/dive/legs';
import { parseDepth, sayDepth } from '@/lib/quantity/depth';
import { writeTime } from '@/lib/quantity/duration';
import { parseRate, printRate } from '@/lib/quantity/rate';
import { parseTime } from '@/lib/quantity/time';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { Button } from '../../parts/Button';
import { TypedValue } from '../../parts/TypedValue';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskOncePainted, useDeskStore } from '../desk-context';
import { StepHint } from './StepHint';
import { addPoint, isLevel, newPointS, removeLeg } from './profile-edits';
import styles from '../stage.module.css';
import { useScriptEdit } from '../gas/use-script-edit';

/** Exact values for the step under the hand: typed, where a drag is too coarse. */
export function StepEditor() {
  const legs = useDeskOncePainted((state) => state.scene.timeline.legs);
  const selected = useDesk((state) => state.selectedStep);
  const units = usePreferences((state) => state.units);
  const store = useDeskStore();
  const { edit } = useScriptEdit();
  const index = legs.findIndex((one) => one.step === selected);
  const leg = legs[index];
  if (!leg) return <StepHint />;
  return (
    <div className={styles.stepEditor} role="group" aria-label={`Exact values of point ${index + 1}`}>
      <p>
        <b>Point {index + 1}.</b> {kindOf(leg)}
      </p>
      {!leg.interval && (
        <TypedValue
          label="Depth"
          shown={sayDepth(leg.toM, units)}
          parse={parseDepth}
          onValue={(depthM) => edit((script) => setStepDepth(script, leg.step, depthM))}
        />
      )}
      <TypedValue
        label="Takes"
        shown={writeTime(Math.max(1, Math.round(leg.endS - leg.startS)))}
        parse={parseTime}
        onValue={(timeS) => edit((script) => setStepDuration(script, leg.step, timeS))}
      />
      {!isLevel(leg) && (
        <TypedValue
          label="Rate"
          shown={rateText(leg, units)}
          parse={parseRate}
          onValue={(rate) => edit((script) => setStepRate(script, leg.step, rate))}
        />
      )}
      <Button
        icon="plus"
        onClick={() => edit((script) => addPoint(script, leg, newPointS(leg, store.getState().cursorS)))}
      >
        Add a point
      </Button>
      <Button icon="minus" aria-label="Remove this leg" onClick={() => edit((script) => removeLeg(script, leg))}>
        Remove
      </Button>
    </div>
  );
}

function kindOf(leg: Leg): string {
  if (leg.interval) return 'An interval at the surface.';
  if (isLevel(leg)) return 'A stay.';
  return leg.toM > leg.fromM ? 'A descent.' : 'An ascent.';
}

function rateText(leg: Leg, units: UnitSystem): string {
  return printRate((Math.abs(leg.toM - leg.fromM) / (leg.endS - leg.startS)) * 60, units);
}
