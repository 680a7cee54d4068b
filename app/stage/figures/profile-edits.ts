import { pullStayEnd, removeStep, setStepDepth, setStepDuration } from '@/lib/dive/edit/edit-steps';
import type { Leg } from '@/lib/dive/legs';
import { splitStep } from '@/lib/dive/edit/split-step';

/** How far one key press or one notch of a drag moves a point. */
export interface Notch {
  readonly depthM: number;
  readonly timeS: number;
}

export function snapped(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** The script with a leg moved to another depth: a stay as a whole, a change of depth at its end. */
export function moveLegDepth(script: string, leg: Leg, depthM: number): string {
  return setStepDepth(script, leg.step, Math.max(0, depthM));
}

/** The script with the end of a leg pulled to another depth: that of a stay makes a way up or down of it. */
export function pullLegEnd(script: string, leg: Leg, depthM: number): string {
  return isLevel(leg) ? pullStayEnd(script, leg.step, Math.max(0, depthM)) : moveLegDepth(script, leg, depthM);
}

export const isLevel = ({ fromM, toM }: Leg): boolean => fromM === toM;

/** The script with the end of a leg moved to another time; what comes after moves along. */
export function moveLegEnd(script: string, leg: Leg, endS: number): string {
  return setStepDuration(script, leg.step, Math.max(1, endS - leg.startS));
}

/** The script with a new point on a leg, where it is at a time; the dive itself stays as it is. */
export function addPoint(script: string, leg: Leg, timeS: number): string {
  if (leg.interval) return script;
  return splitStep(script, leg.step, (timeS - leg.startS) / (leg.endS - leg.startS));
}

/** Where the key puts a new point on a leg: at the time cursor, or half way where that is elsewhere. */
export function newPointS(leg: Leg, cursorS: number): number {
  return cursorS > leg.startS && cursorS < leg.endS ? cursorS : (leg.startS + leg.endS) / 2;
}

/** The script without a leg's step. */
export function removeLeg(script: string, leg: Leg): string {
  return removeStep(script, leg.step);
}
