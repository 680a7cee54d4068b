import type { Leg } from '../dive/legs';
import { timeLike } from '../dive/script/edit-words';
import { ScriptPage } from '../dive/script/page';
import { writeTime } from '../quantity/duration';
import { METRES_PER_FOOT } from '../quantity/length';
import { atMost } from '../quantity/number';
import type { UnitSystem } from '../quantity/unit-system';

/** Changes of a script's steps that keep its remarks and its other words. Steps count from 0, as in the dive. */

/** A depth as a way out writes it: half metres, or whole feet. */
export function depthWords(depthM: number, system: UnitSystem): string {
  return system === 'metric' ? `${atMost(depthM, 1)} m` : `${Math.round(depthM / METRES_PER_FOOT)} ft`;
}

/** A rate as a script in the reader’s units says it: to a tenth of a m/min, or whole ft/min. */
export function rateWords(rateMMin: number, system: UnitSystem): string {
  return system === 'metric' ? `${atMost(rateMMin, 1)} m/min` : `${Math.round(rateMMin / METRES_PER_FOOT)} ft/min`;
}

/** Sets how long a wait lasts; a wait of no time goes. */
export function setWait(page: ScriptPage, step: number, durationS: number): void {
  const line = page.lineOfStep(step);
  const read = page.step(line);
  if (!read || !('timeS' in read)) return;
  if (durationS <= 0) page.remove(line);
  else page.replace(line, read.timeS.span, timeLike(page.line(line).slice(...read.timeS.span), durationS));
}

/** Sets the depth a change of depth ends at. */
export function setDepth(page: ScriptPage, step: number, depthM: number, system: UnitSystem): void {
  const leg = page.leg(page.lineOfStep(step));
  if (leg?.depth.value) page.replace(leg.lineIndex, leg.depth.span, depthWords(depthM, system));
}

/** Turns a change of depth into a wait of the same length. */
export function holdDepth(page: ScriptPage, step: number, durationS: number): void {
  const line = page.lineOfStep(step);
  const read = page.read(line);
  if (read.as === 'step') page.replace(line, read.body, `stay ${writeTime(Math.max(1, Math.round(durationS)))}`);
}

const WORD_BEFORE = /(?:at|in|over|within)\s*$/i;

/** Sets how fast a change of depth is, whether it gave a rate, a time or neither. */
export function setRate(page: ScriptPage, step: number, rateMMin: number, system: UnitSystem): void {
  const leg = page.leg(page.lineOfStep(step));
  if (!leg) return;
  const words = rateWords(rateMMin, system);
  if (!leg.speed) {
    const end = leg.depth.span[1];
    page.replace(leg.lineIndex, [end, end], ` at ${words}`);
    return;
  }
  const [from, to] = leg.speed.span;
  const word = WORD_BEFORE.exec(page.line(leg.lineIndex).slice(0, from))?.[0] ?? '';
  page.replace(leg.lineIndex, [from - word.length, to], `at ${words}`);
}

/** Ends a wait or a change of depth so many seconds after it began, where it then was. */
export function cutLeg(
  page: ScriptPage,
  { step, fromM, toM, startS, endS }: Leg,
  afterS: number,
  system: UnitSystem,
): void {
  if (fromM === toM) {
    setWait(page, step, Math.max(1, Math.round(afterS)));
    return;
  }
  const leg = page.leg(page.lineOfStep(step));
  if (!leg) return;
  const depthM = fromM + ((toM - fromM) * afterS) / (endS - startS);
  if (leg.speed?.value?.by === 'time')
    page.replace(leg.lineIndex, leg.speed.span, writeTime(Math.max(1, Math.round(afterS))));
  page.replace(leg.lineIndex, leg.depth.span, depthWords(depthM, system));
}

/** Breaks a climb at a depth with a wait there; both parts go as fast as the whole did. */
export function breakClimb(
  page: ScriptPage,
  step: number,
  { depthM, waitS, rateMMin }: { depthM: number; waitS: number; rateMMin: number },
  system: UnitSystem,
): void {
  const leg = page.leg(page.lineOfStep(step));
  if (!leg) return;
  const { speed, lineIndex } = leg;
  let pace = '';
  if (speed?.value?.by === 'rate') pace = ` at ${page.line(lineIndex).slice(...speed.span)}`;
  else if (speed) {
    pace = ` at ${atMost(rateMMin, 2)} m/min`;
    const [from, to] = speed.span;
    const word = WORD_BEFORE.exec(page.line(lineIndex).slice(0, from))?.[0] ?? '';
    page.replace(lineIndex, [from - word.length, to], pace.trim());
  }
  page.insert(lineIndex, `stay ${writeTime(waitS)}`);
  page.insert(lineIndex, `ascend to ${depthWords(depthM, system)}${pace}`);
}

/** Puts the dives of a script in another order: which dive, from 0, comes first, second and so on. */
export function reorderDives(script: string, order: readonly number[]): string | undefined {
  const page = new ScriptPage(script);
  const blocks: string[][] = [[]];
  const between: string[] = [];
  const first = page.firstStepLine();
  for (let i = first; i < page.length; i += 1) {
    if (page.step(i)?.kind === 'interval') {
      between.push(page.line(i));
      blocks.push([]);
    } else blocks.at(-1)!.push(page.line(i));
  }
  const after = blocks.slice(order.length);
  const head = Array.from({ length: first }, (_, i) => page.line(i));
  const day = order.flatMap((dive, place) => [
    ...blocks[dive]!,
    ...(between[place] === undefined ? [] : [between[place]]),
  ]);
  const rest = after.flatMap((lines, i) => [...lines, ...between.slice(order.length + i, order.length + i + 1)]);
  return [...head, ...day, ...rest].join('\n');
}

/** The script as changed, where it still reads; a change that leaves nothing to do in a step takes the step out. */
export function finished(page: ScriptPage): string | undefined {
  page.straighten();
  const text = page.editedOrAsGiven();
  return text === page.asGiven ? undefined : text;
}
