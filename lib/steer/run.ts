import type { Step } from '../dive/dive';
import { tidy } from '../quantity/number';
import { stepTo } from '../dive/step-to';

/**
 * A dive steered by hand, as it has gone so far: depth, m, at times in seconds since the start, changing evenly between
 * them. Speeds change at whole seconds of the dive only, so that all points but the last lie there.
 */
export interface SteerRun {
  readonly timesS: readonly number[];
  readonly depthsM: readonly number[];
}

/** A run that has not begun. */
export const FRESH_RUN: SteerRun = { timesS: [0], depthsM: [0] };

/** Where steering ends downward, m. */
export const DEEPEST_STEERED_M = 100;

/** How long a dive is steered at most, s: nobody looks on for longer. */
export const LONGEST_STEERED_S = 12 * 3600;

/** Moments and depths nearer than this are the same. */
const SAME = 1e-6;

/** How long a run has lasted, s. */
export function runEndS(run: SteerRun): number {
  return run.timesS.at(-1)!;
}

/** The depth at one moment of a run, m; at its end for any later one. */
export function runDepthM({ timesS, depthsM }: SteerRun, timeS: number): number {
  const next = timesS.findIndex((at) => at > timeS);
  if (next < 0) return depthsM.at(-1)!;
  if (next === 0) return depthsM[0]!;
  const share = (timeS - timesS[next - 1]!) / (timesS[next]! - timesS[next - 1]!);
  return depthsM[next - 1]! + share * (depthsM[next]! - depthsM[next - 1]!);
}

/**
 * The run some seconds later, going at a rate, m/min, downward positive. A diver who stops, stops at the nearest multiple
 * of `everyM`: level is level. Nobody goes above the surface, or deeper or longer than can be steered.
 */
export function steered(run: SteerRun, rateMMin: number, seconds: number, everyM: number): SteerRun {
  const timesS = [...run.timesS];
  const depthsM = [...run.depthsM];
  let leftS = Math.min(seconds, LONGEST_STEERED_S - runEndS(run));
  while (leftS > SAME) {
    const timeS = timesS.at(-1)!;
    const depthM = depthsM.at(-1)!;
    const intoS = timeS - Math.floor(timeS + SAME);
    const begins = intoS < SAME;
    const mPerS = begins ? nextM(depthM, rateMMin, everyM) - depthM : lastMPerS({ timesS, depthsM });
    const partS = Math.min(leftS, begins ? 1 : 1 - intoS);
    const nowS = timeS + partS;
    const straightOn = timesS.length > 1 && Math.abs(lastMPerS({ timesS, depthsM }) - mPerS) < SAME;
    if (straightOn) {
      timesS.pop();
      depthsM.pop();
    }
    // From the last change of speed on, so that sums of many frames stay what they are meant to be.
    const wentM = mPerS * (nowS - timesS.at(-1)!);
    const whole = Math.abs(nowS - Math.round(nowS)) < SAME;
    timesS.push(whole ? Math.round(nowS) : nowS);
    depthsM.push(whole ? snapped(depthsM.at(-1)! + wentM, everyM) : depthsM.at(-1)! + wentM);
    leftS -= partS;
  }
  return { timesS, depthsM };
}

/** The depth a second later, m. */
function nextM(depthM: number, rateMMin: number, everyM: number): number {
  const wantedM = rateMMin === 0 ? nearestM(depthM, everyM) : depthM + rateMMin / 60;
  const keptM = Math.min(Math.max(0, wantedM), DEEPEST_STEERED_M);
  return Math.abs(keptM - depthM) < SAME ? depthM : keptM;
}

/** A depth as the multiple of `everyM` that it is but for rounding. */
function snapped(depthM: number, everyM: number): number {
  const nearM = nearestM(depthM, everyM);
  return Math.abs(nearM - depthM) < SAME ? nearM : depthM;
}

/** The nearest depth that is a multiple of `everyM`, m. */
export function nearestM(depthM: number, everyM: number): number {
  return tidy(Math.round(depthM / everyM) * everyM);
}

function lastMPerS({ timesS, depthsM }: SteerRun): number {
  const last = timesS.length - 1;
  return (depthsM[last]! - depthsM[last - 1]!) / (timesS[last]! - timesS[last - 1]!);
}

/** The run up to the last whole second at or before a moment: what came after it is as if it had not been. */
export function cutRun(run: SteerRun, timeS: number): SteerRun {
  const endS = Math.min(Math.max(0, Math.floor(timeS + SAME)), runEndS(run));
  const kept = run.timesS.filter((at) => at < endS).length;
  if (kept === 0) return FRESH_RUN;
  return {
    timesS: [...run.timesS.slice(0, kept), endS],
    depthsM: [...run.depthsM.slice(0, kept), runDepthM(run, endS)],
  };
}

/** The run as it was steered, every change of speed a step. */
export function stepsAsSteered({ timesS, depthsM }: SteerRun): Step[] {
  return timesS.slice(1).map((timeS, index) => stepTo(depthsM[index]!, depthsM[index + 1]!, timeS - timesS[index]!));
}
