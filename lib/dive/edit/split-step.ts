import { depthStepM, parseDepth } from '../../quantity/depth';
import { writeTime } from '../../quantity/duration';
import { tidy } from '../../quantity/number';
import { SHORTEST_S } from '../bounds';
import { ascendFor, depthLike, isInFeet, isSurfaceVerb, timeLike } from '../script/edit-words';
import { ScriptPage, type PageLeg, type Script } from '../script/page';
import { remarkFrom } from '../script/read-line';

/** A whole second is looked for as near as this, as a share of the step and in seconds. */
const NEAR_SHARE = 0.05;
const NEAR_S = 3;

/**
 * Cuts a step in two where `share` (0 to 1) of its time is gone, the dive otherwise unchanged: the first part is a step
 * of its own in the same words, and the remark stays with the second. A stay is cut at a whole second, a change of depth
 * at a depth as fine as depths are written. A step too short to be cut, an interval and a switch come back as they were.
 */
export function splitStep(script: Script, stepIndex: number, share: number): string {
  const page = new ScriptPage(script);
  const lineIndex = page.lineOfStep(stepIndex);
  const step = page.step(lineIndex);
  const leg = page.leg(lineIndex);
  if (!(share > 0 && share < 1)) return page.asGiven;
  if (leg) splitLeg(page, leg, share);
  else if (step?.kind === 'stay' && step.timeS.value !== undefined) splitStay(page, lineIndex, step.timeS.value, share);
  return page.editedOrAsGiven();
}

function splitStay(page: ScriptPage, lineIndex: number, wholeS: number, share: number): void {
  const firstS = Math.max(1, Math.round(wholeS * share));
  const restS = tidy(wholeS - firstS);
  if (restS < SHORTEST_S) return;
  insertCopy(page, lineIndex);
  setTime(page, lineIndex, firstS);
  setTime(page, lineIndex + 1, restS);
}

function splitLeg(page: ScriptPage, { lineIndex, verb, depth, speed }: PageLeg, share: number): void {
  const fromM = page.depthBeforeM(lineIndex);
  const toM = depth.value;
  if (toM === undefined) return;
  const old = page.line(lineIndex).slice(...depth.span);
  const wholeS = speed?.value?.by === 'time' ? speed.value.s : undefined;
  const stepM = depthStepM(isInFeet(old, page.inFeet) ? 'imperial' : 'metric');
  const cutM = cutDepthM({ fromM, toM, stepM, wholeS, share });
  if (cutM === undefined) return;
  const written = depthLike(old, cutM, page.inFeet);
  const read = parseDepth(written);
  if (!read.ok) return;
  insertCopy(page, lineIndex);
  if (wholeS !== undefined) {
    const firstS = tidy((wholeS * (read.value - fromM)) / (toM - fromM));
    setTime(page, lineIndex + 1, tidy(wholeS - firstS));
    setTime(page, lineIndex, firstS);
  }
  const verbText = page.line(lineIndex).slice(...verb);
  if (isSurfaceVerb(verbText)) page.replace(lineIndex, verb, `${ascendFor(verbText)} ${written}`);
  else page.replace(lineIndex, page.leg(lineIndex)!.depth.span, written);
}

interface Cut {
  readonly fromM: number;
  readonly toM: number;
  /** How finely depths are written. */
  readonly stepM: number;
  /** The time the step gives, where it gives one. */
  readonly wholeS: number | undefined;
  readonly share: number;
}

/** Where to cut: the depth nearest to the place, or one near by that is reached at a whole second. */
function cutDepthM({ fromM, toM, stepM, wholeS, share }: Cut): number | undefined {
  const onStep = (depthM: number) => tidy(Math.round(depthM / stepM) * stepM);
  const [least, most] = [Math.min(fromM, toM), Math.max(fromM, toM)];
  const fits = (depthM: number) => depthM > least + stepM / 2 && depthM < most - stepM / 2;
  const nearest = onStep(fromM + (toM - fromM) * share);
  const depthM = fits(nearest) ? nearest : onStep(nearest + (nearest <= least + stepM / 2 ? stepM : -stepM));
  if (!fits(depthM)) return undefined;
  if (wholeS === undefined) return depthM;
  const wishedS = Math.round(wholeS * share);
  for (let off = 0; off <= Math.max(NEAR_S, wholeS * NEAR_SHARE); off += 1) {
    for (const timeS of [wishedS - off, wishedS + off]) {
      const there = fromM + ((toM - fromM) * timeS) / wholeS;
      if (timeS >= SHORTEST_S && fits(there) && Math.abs(there - onStep(there)) < 1e-9) return onStep(there);
    }
  }
  return depthM;
}

/** The line once more before itself, without its remark. */
function insertCopy(page: ScriptPage, lineIndex: number): void {
  const line = page.line(lineIndex);
  const words = line.slice(0, remarkFrom(line)).trimEnd();
  page.insert(lineIndex, words.slice(/^[ \t]*/.exec(line)![0].length));
}

/** Writes how long a step takes in the words it was written in, where they can say it exactly. */
function setTime(page: ScriptPage, lineIndex: number, timeS: number): void {
  const leg = page.leg(lineIndex);
  const step = page.step(lineIndex);
  const span = leg ? leg.speed?.span : step && 'timeS' in step ? step.timeS.span : undefined;
  if (!span) return;
  const old = page.line(lineIndex).slice(...span);
  page.replace(lineIndex, span, Number.isInteger(timeS) ? timeLike(old, timeS) : writeTime(timeS));
}
