'use client';

import { useId, useState, type FormEvent } from 'react';
import { sayDepth } from '@/lib/quantity/depth';
import { atMost } from '@/lib/quantity/number';
import { METRES_PER_FOOT } from '@/lib/quantity/length';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { keptRun, nameOfRun, scriptOfRun } from '@/lib/steer/kept-run';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import { usePreferences } from '../../parts/preferences';
import { useStatus } from '../../parts/status';
import { useDeskStore } from '../../stage/desk-context';

const LONGEST_NAME = 80;

/** What a run becomes when it is kept, how near that is to what was steered, and what it is called. */
export function KeepRunDialog({ onClose }: { onClose: () => void }) {
  const form = useId();
  const desk = useDeskStore();
  const units = usePreferences((state) => state.units);
  const [kept] = useState(() => {
    const { run, base } = desk.getState();
    return run && base && keptRun(base.settings, run, units);
  });
  const [name, setName] = useState(() => (kept ? nameOfRun(kept, (depthM) => sayDepth(depthM, units)) : ''));
  if (!kept)
    return (
      <Dialog open onClose={onClose} title="Keep this dive">
        <p>Nobody has left the surface yet, so there is no dive to keep. Pull the lever down first.</p>
      </Dialog>
    );
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const { base, endRun } = desk.getState();
    if (!base) return;
    endRun(scriptOfRun(base, kept, name.trim() || nameOfRun(kept, (depthM) => sayDepth(depthM, units)), units));
    useStatus
      .getState()
      .say(`Kept as a script of ${steps(kept.steps.length)}. Undo brings back what stood there before.`);
    onClose();
  };
  return (
    <Dialog
      open
      onClose={onClose}
      title="Keep this dive"
      actions={
        <>
          <Button kind="primary" type="submit" form={form}>
            Keep it
          </Button>
          <Button kind="quiet" onClick={onClose}>
            Go on steering
          </Button>
        </>
      }
    >
      <form id={form} onSubmit={keep}>
        <Field
          label="Its name"
          value={name}
          maxLength={LONGEST_NAME}
          onChange={(event) => setName(event.target.value)}
        />
      </form>
      <p>
        It takes the place of the script, as {steps(kept.steps.length)}. No depth is more than{' '}
        {sayOff(kept.depthOffM, units)} from what you steered, and the model’s ceiling differs by{' '}
        {sayOff(kept.ceilingOffM, units)} at most.
      </p>
      {kept.wayUp.length > 0 && <p>You are still under water, so the way up that the model plans is added.</p>}
    </Dialog>
  );
}

const steps = (count: number) => (count === 1 ? '1 step' : `${count} steps`);

/** How far something is off, never rounded down. */
function sayOff(offM: number, units: UnitSystem): string {
  const [length, unit] = units === 'metric' ? [offM, 'm'] : [offM / METRES_PER_FOOT, 'ft'];
  return `${atMost(Math.ceil(length * 10 - 1e-6) / 10, 1)} ${unit}`;
}
