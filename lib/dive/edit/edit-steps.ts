import { depthStepM, parseDepth } from '../../quantity/depth';
import { DEEPEST_M } from '../bounds';
import { ascendFor, depthLike, isInFeet, isSurfaceVerb, likeCapital, rateLike, timeLike } from '../script/edit-words';
import { FASTEST_M_MIN, legRateMMin } from '../script/leg-rate';
import { ScriptPage, type PageLeg, type Script } from '../script/page';
import { SURFACE } from '../script/step-words';

/**
 * Edits of a script that keep its remarks, its units and its writer's words: only a number changes, and the words that
 * begin a step where it turns from going down to going up. Steps count from 0, as in the dive. Each edit returns the
 * new text; one that could not be read is not made, and the text comes back as it was.
 */

/**
 * Moves the depth a step ends at. A stay or a switch is where the change of depth before it ended, so that is what
 * moves. The end of the last ascent of a dive stays at the surface. A depth that would leave a change of depth with
 * nothing to change stops one step short of it (0.1 m or 1 ft), so that dragging past and back loses nothing.
 */
export function setStepDepth(script: Script, stepIndex: number, depthM: number): string {
  const page = new ScriptPage(script);
  const lineIndex = page.lineOfStep(stepIndex);
  const leg =
    page.leg(lineIndex) ?? (page.step(lineIndex)?.kind === 'interval' ? undefined : page.legFrom(lineIndex, -1));
  const next = leg && page.legFrom(leg.lineIndex, 1);
  if (!leg || !next || !Number.isFinite(depthM)) return page.asGiven;
  const words = freeDepth(page, wordsOfDepth(page, leg), depthM, [page.depthBeforeM(leg.lineIndex), next.depth.value]);
  if (words === undefined) return page.asGiven;
  const saysSurface = isSurfaceVerb(page.line(leg.lineIndex).slice(...leg.verb));
  if (!saysSurface) page.replace(leg.lineIndex, leg.depth.span, words);
  else if (words !== 'surface')
    page.replace(leg.lineIndex, leg.verb, `${ascendFor(page.line(leg.lineIndex).slice(...leg.verb))} ${words}`);
  page.straighten();
  return page.editedOrAsGiven();
}

/**
 * Moves the end of a stay to another depth: in the same time it becomes a change of depth, and what follows goes on from
 * there. Other steps come back as they were.
 */
export function pullStayEnd(script: Script, stepIndex: number, depthM: number): string {
  const page = new ScriptPage(script);
  const lineIndex = page.lineOfStep(stepIndex);
  const read = page.read(lineIndex);
  const next = page.legFrom(lineIndex, 1);
  if (read.as !== 'step' || read.step.kind !== 'stay' || !next || !Number.isFinite(depthM)) return page.asGiven;
  const fromM = page.depthBeforeM(lineIndex);
  const words = freeDepth(page, { text: SURFACE, depthM: fromM }, depthM, [next.depth.value]);
  const toM = words === undefined ? fromM : depthOf(words);
  if (Math.abs(toM - fromM) < depthStepM(page.inFeet ? 'imperial' : 'metric') / 2) return page.asGiven;
  const verb = likeCapital(page.line(lineIndex).slice(...read.verb), toM > fromM ? 'descend to' : 'ascend to');
  page.replace(lineIndex, [read.verb[0], read.step.timeS.span[0]], `${verb} ${words} in `);
  page.straighten();
  return page.editedOrAsGiven();
}

/** A depth as it is written somewhere, and what it is. */
interface WrittenDepth {
  readonly text: string;
  readonly depthM: number | undefined;
}

function wordsOfDepth(page: ScriptPage, { lineIndex, depth }: PageLeg): WrittenDepth {
  return { text: page.line(lineIndex).slice(...depth.span), depthM: depth.value };
}

function depthOf(words: string): number {
  const read = parseDepth(words);
  return read.ok ? read.value : 0;
}

/** Depths nearer than this leave a change of depth with too little to change, m. */
export const SAME_DEPTH_M = 0.005;

function isSameDepth(oneM: number | undefined, otherM: number): boolean {
  return oneM !== undefined && Math.abs(oneM - otherM) < SAME_DEPTH_M;
}

/** The words of the depth nearest to the one asked for that is neither of its neighbours, on the side it comes from. */
function freeDepth(
  page: ScriptPage,
  old: WrittenDepth,
  askedM: number,
  neighbours: readonly (number | undefined)[],
): string | undefined {
  const { inFeet } = page;
  const stepM = depthStepM(isInFeet(old.text, inFeet) ? 'imperial' : 'metric');
  let depthM = Math.min(Math.max(askedM, 0), DEEPEST_M);
  let side: number | undefined;
  // Two neighbours may lie a step apart, at either end of the range: four tries pass both of them.
  for (let tries = 0; tries < 4; tries++) {
    const words = depthLike(old.text, depthM, inFeet);
    const valueM = depthOf(words);
    if (valueM <= DEEPEST_M && !neighbours.some((one) => isSameDepth(one, valueM))) return words;
    side ??= (old.depthM ?? valueM) < valueM ? -1 : 1;
    if (valueM + side * stepM < 0 || valueM + side * stepM > DEEPEST_M) side = -side;
    depthM = valueM + side * stepM;
  }
  return undefined;
}

/** Sets how long a step takes: its time where it gives one, else the rate that takes so long, rounded as rates are. */
export function setStepDuration(script: Script, stepIndex: number, durationS: number): string {
  const page = new ScriptPage(script);
  const lineIndex = page.lineOfStep(stepIndex);
  const step = page.step(lineIndex);
  if (!step || !(durationS > 0)) return page.asGiven;
  const leg = page.leg(lineIndex);
  if (leg) setLegSpeed(page, leg, legRateMMin(page.depthBeforeM(lineIndex), leg.depth.value ?? 0, durationS));
  else if ('timeS' in step)
    page.replace(lineIndex, step.timeS.span, timeLike(page.line(lineIndex).slice(...step.timeS.span), durationS));
  return page.editedOrAsGiven();
}

/** Sets the rate of a change of depth, m/min: the rate it gives, or the time it takes; other steps have none to set. */
export function setStepRate(script: Script, stepIndex: number, rateMMin: number): string {
  const page = new ScriptPage(script);
  const leg = page.leg(page.lineOfStep(stepIndex));
  if (!leg || !(rateMMin > 0)) return page.asGiven;
  setLegSpeed(page, leg, rateMMin);
  return page.editedOrAsGiven();
}

function setLegSpeed(page: ScriptPage, leg: PageLeg, askedMMin: number): void {
  const rateMMin = Math.min(askedMMin, FASTEST_M_MIN);
  if (!leg.speed) {
    const end = leg.depth.span[1];
    page.replace(leg.lineIndex, [end, end], ` at ${rateLike(page.inFeet ? '1 ft/min' : '1 m/min', rateMMin)}`);
    return;
  }
  const old = page.line(leg.lineIndex).slice(...leg.speed.span);
  if (leg.speed.value?.by === 'rate') {
    page.replace(leg.lineIndex, leg.speed.span, rateLike(old, rateMMin));
    return;
  }
  const climbM = Math.abs((leg.depth.value ?? 0) - page.depthBeforeM(leg.lineIndex));
  page.replace(leg.lineIndex, leg.speed.span, timeLike(old, (climbM * 60) / rateMMin));
  page.straighten();
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
