import type { Dive } from '@/lib/dive/dive';
import { insertStepAfter, removeStep } from '@/lib/dive/edit-steps';
import { setStepDepth, setStepDuration } from '@/lib/dive/edit';
import type { Leg } from '@/lib/dive/legs';

/** How far one key press or one notch of a drag moves a point. */
export interface Notch {
  readonly depthM: number;
  readonly timeS: number;
}

export function snapped(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** The script with the end of a leg moved to another depth; the surface between dives stays where it is. */
export function moveLegDepth(script: string, leg: Leg, depthM: number): string {
  return setStepDepth(script, leg.step, Math.max(0, depthM));
}

/** The script with the end of a leg moved to another time; what comes after moves along. */
export function moveLegEnd(script: string, leg: Leg, endS: number): string {
  return setStepDuration(script, leg.step, Math.max(1, endS - leg.startS));
}

/** Ascents and descents of new points go at these rates, m/min. */
const NEW_DESCENT_M_MIN = 18;
const NEW_ASCENT_M_MIN = 9;

/**
 * A new point: within a stay, the stay is cut there and the rest of it is spent at the new depth; elsewhere the dive
 * makes its way to the new depth and stays a minute.
 */
export function addPoint(script: string, dive: Dive, leg: Leg, timeS: number, depthM: number): string {
  if (leg.interval || depthM <= 0) return script;
  const step = dive.steps[leg.step];
  const fromM = step?.kind === 'stay' ? leg.fromM : leg.toM;
  if (Math.abs(depthM - fromM) < 0.5) return script;
  const down = depthM > fromM;
  const travelS = (Math.abs(depthM - fromM) / (down ? NEW_DESCENT_M_MIN : NEW_ASCENT_M_MIN)) * 60;
  const cut = step?.kind === 'stay';
  const before = cut ? Math.max(1, Math.round(timeS - leg.startS)) : 0;
  const rest = cut ? Math.max(30, Math.round(leg.endS - timeS)) : 60;
  const shortened = cut ? setStepDuration(script, leg.step, before) : script;
  const moved = insertStepAfter(shortened, leg.step, {
    kind: down ? 'descend' : 'ascend',
    toM: depthM,
    durationS: travelS,
  });
  return insertStepAfter(moved, leg.step + 1, { kind: 'stay', durationS: rest });
}

/** The script without a leg's step. */
export function removeLeg(script: string, leg: Leg): string {
  return removeStep(script, leg.step);
}
