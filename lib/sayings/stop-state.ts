import type { StopState } from '../ascent/stop-state';
import type { UnitSystem } from '../quantity/unit-system';
import { printRate } from '../quantity/rate';
import { printAs } from './measures';

/** Everything the words of a state are made from, at one instant. */
export interface Standing {
  readonly state: StopState;
  readonly depthM: number;
  /** 0 without one. */
  readonly ceilingM: number;
  /** The first stop of the plan's way up. */
  readonly stop: { readonly depthM: number; readonly minutes: number } | undefined;
  readonly noStopMin: number;
  /** The compartment (1–16) that sets the no-stop time; 0 where none ever will. */
  readonly noStopLeader: number;
  /** Undefined where nobody worked it out. */
  readonly creditedNoStopMin: number | undefined;
  /** The plan's rate, m/min. */
  readonly ascentMMin: number;
}

/** How a diver stands, in a sentence for pictures, announcements and sheets. */
export function sayStanding(standing: Standing, system: UnitSystem): string {
  const { state, noStopMin, ceilingM } = standing;
  const rate = printRate(standing.ascentMMin, system);
  switch (state) {
    case 'free':
      return noStopMin === Infinity
        ? 'Nothing is owed, however long you stay here.'
        : `Nothing is owed; you may stay ${sayLeft(noStopMin, system)} here before you need a stop.`;
    case 'clearing':
      return `There is a ceiling at ${printAs('ceilingM', ceilingM, system)}; coming up at ${rate} it is gone before you reach it${clearsFor(standing, system)}.`;
    case 'filling':
      return `There is no ceiling yet, but coming up at ${rate} takes up enough gas to need a stop: ${standing.stop ? sayStop(standing.stop, system) : 'none'}.`;
    case 'owed':
      return oweText(standing, system);
  }
}

/** A stop with its minutes: `2 min at 6 m`. */
export function sayStop({ depthM, minutes }: { depthM: number; minutes: number }, system: UnitSystem): string {
  return `${minutes === Infinity ? 'without end' : sayHeld(minutes, system)} at ${printAs('stopM', depthM, system)}`;
}

/**
 * How long a stop that ends is held. From where nobody should be, as at the surface with a stop left out, going down to it
 * may be all that it takes.
 */
function sayHeld(minutes: number, system: UnitSystem): string {
  return minutes === 0 ? 'under 1 min' : printAs('stopMin', minutes, system);
}

/** A no-stop time in a sentence: less than a minute is not yet none. */
export function sayLeft(minutes: number, system: UnitSystem): string {
  return minutes > 0 && minutes < 1 ? 'under 1 min' : printAs('noStopMin', minutes, system);
}

/** What belongs under a no-stop time. */
export function noStopNote(standing: Standing, system: UnitSystem): string {
  const { state, noStopMin, noStopLeader, creditedNoStopMin: credited } = standing;
  if (state === 'owed') return `over, by compartment ${noStopLeader}`;
  if (state === 'clearing') return `over, by compartment ${noStopLeader}; the way up still clears it`;
  if (state === 'filling') return `the way up needs a stop; ${sayLeft(noStopMin, system)} without it`;
  if (noStopLeader === 0) return 'no compartment will reach its limit here';
  if (credited === undefined) return `compartment ${noStopLeader}`;
  const told = printAs('creditedNoStopMin', credited, system);
  return credited < noStopMin
    ? `compartment ${noStopLeader}; ${told} with the way up, still taking up gas`
    : `compartment ${noStopLeader}; ${told} with credit for the way up`;
}

/** What belongs under a ceiling; `leader` is the compartment that sets it. */
export function ceilingNote({ state }: Standing, leader: number): string {
  return {
    free: 'you may surface',
    filling: 'the way up itself will bring one',
    clearing: `set by compartment ${leader}; gone before you reach it`,
    owed: `set by compartment ${leader}`,
  }[state];
}

/** What belongs under a required stop. */
export function requiredStopNote(standing: Standing, system: UnitSystem): string {
  const { state, stop } = standing;
  if (state === 'free') return 'straight up is tolerated';
  if (state === 'clearing') return `the way up clears the ceiling${clearsFor(standing, system)}`;
  if (!stop) return '';
  if (stop.minutes === Infinity) return 'no stop there is ever long enough';
  const minutes = sayHeld(stop.minutes, system);
  if (state === 'filling') return `the way up itself will ask for ${minutes} there`;
  if (standing.depthM <= 0) return `left out: ${minutes} there; follow your training for an omitted stop`;
  if (!isAbove(standing)) return `you need to stop there for ${minutes}`;
  return stop.minutes === 0 ? 'you need to go down there, not to wait' : `you need to go down there for ${minutes}`;
}

function oweText(standing: Standing, system: UnitSystem): string {
  const { stop, depthM } = standing;
  if (!stop) return 'You need to stop.';
  if (depthM <= 0) return `You have left out a stop: ${sayStop(stop, system)}.`;
  const at = printAs('stopM', stop.depthM, system);
  const above = isAbove(standing);
  if (above && stop.minutes === 0) return `You need to go down to ${at}; from there the way up is open.`;
  const way = above ? `go down to ${at} and stop` : `stop at ${at}`;
  return stop.minutes === Infinity
    ? `You need to ${way}, and no stop there is ever long enough.`
    : `You need to ${way} for ${sayHeld(stop.minutes, system)}.`;
}

/** Whether the stop lies below the diver, by more than a depth is shown to. */
function isAbove({ stop, depthM }: Standing): boolean {
  return stop !== undefined && stop.depthM > depthM + 0.05;
}

function clearsFor({ creditedNoStopMin: minutes }: Standing, system: UnitSystem): string {
  if (minutes === undefined || minutes === Infinity) return '';
  return `, for ${sayLeft(minutes, system)} more`;
}
