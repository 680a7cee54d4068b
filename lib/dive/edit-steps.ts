import { depthStepM } from '../quantity/depth';
import { METRES_PER_FOOT } from '../quantity/length';
import { atMost } from '../quantity/number';
import { DEEPEST_M } from './bounds';
import type { Step } from './dive';
import { ScriptPage, type Script } from './script/page';
import { stepWords } from './script/plain-script';

/** Edits that add and take away steps; they keep what `edit.ts` keeps. */

const WAY_UP = 'ascend to surface at 9 m/min';
const WAY_UP_FEET = 'ascend to surface at 30 ft/min';

/**
 * Adds a step after another (-1: before the first). A change of depth goes whichever way its depth lies; to the depth
 * the diver is at already, it becomes a stay. Where nothing after it leads back to the surface, a way up is added; an
 * interval surfaces first.
 */
export function insertStepAfter(script: Script, stepIndex: number, step: Step): string {
  const page = new ScriptPage(script);
  const after = stepIndex < 0 ? -1 : page.lineOfStep(stepIndex);
  if (stepIndex >= 0 && after < 0) return page.asGiven;
  const at = after >= 0 ? after + 1 : page.firstStepLine();
  const neighbour = after >= 0 ? after : at;
  const fromM = page.depthBeforeM(at);
  const next = page.legFrom(at - 1, 1);
  const wayUp = page.inFeet ? WAY_UP_FEET : WAY_UP;
  if (step.kind === 'interval') {
    page.insert(at, stepWords(step, 0), neighbour);
    if (fromM > 0) page.insert(at, wayUp, neighbour);
  } else {
    const fitting = fitted(step, fromM, next?.depth.value, page.inFeet);
    if (!next && 'toM' in fitting && fitting.toM > 0) page.insert(at, wayUp, neighbour);
    page.insert(at, roundWords(fitting, fromM), neighbour);
    if (page.inFeet) writeInFeet(page, at);
  }
  page.straighten();
  return page.editedOrAsGiven();
}

/** The step as it can stand between the depth before it and the one after it. */
function fitted(
  step: Exclude<Step, { kind: 'interval' }>,
  fromM: number,
  nextM: number | undefined,
  inFeet: boolean,
): typeof step {
  if (!('toM' in step)) return step;
  let toM = Math.min(Math.max(step.toM, 0), DEEPEST_M);
  // Ending where the next change of depth ends would leave that one nothing to change.
  if (toM === nextM) toM += (toM === 0 || fromM > toM ? 1 : -1) * depthStepM(inFeet ? 'imperial' : 'metric');
  if (toM === fromM) return { kind: 'stay', durationS: step.durationS };
  return { kind: toM > fromM ? 'descend' : 'ascend', toM: Math.round(toM * 1000) / 1000, durationS: step.durationS };
}

/** The words of a step, its time to the second unless a whole rate says it exactly. */
function roundWords(step: Step, fromM: number): string {
  const words = stepWords(step, fromM);
  const fraction = /\d\.\d+ s$/.test(words) && 'durationS' in step;
  return fraction ? stepWords({ ...step, durationS: Math.max(1, Math.round(step.durationS)) }, fromM) : words;
}

function writeInFeet(page: ScriptPage, lineIndex: number): void {
  const leg = page.leg(lineIndex);
  if (!leg) return;
  const { depth, speed } = leg;
  // The later part first, so that the earlier one is still where it was.
  if (speed?.value?.by === 'rate')
    page.replace(lineIndex, speed.span, `${atMost(speed.value.mMin / METRES_PER_FOOT, 0)} ft/min`);
  if (depth.value) page.replace(lineIndex, depth.span, `${Math.max(1, Math.round(depth.value / METRES_PER_FOOT))} ft`);
}

/**
 * Takes a step away; a remark beside it stays, on a line of its own. A change of depth that is left with nothing to
 * change goes with it. The last way up of a dive cannot be taken away alone.
 */
export function removeStep(script: Script, stepIndex: number): string {
  const page = new ScriptPage(script);
  const lineIndex = page.lineOfStep(stepIndex);
  if (lineIndex < 0) return page.asGiven;
  page.remove(lineIndex);
  page.straighten();
  return page.editedOrAsGiven();
}
