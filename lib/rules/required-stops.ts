import { firstStopM, SAME_DEPTH_M } from '../ascent/ceiling';
import { printStopDepth, sayDepth } from '../quantity/depth';
import { eventKind } from './event';
import { rule } from './rule';
import { sayTime } from './say';
import { amount, onOff } from './settings/setting';

const settings = {
  on: onOff(true),
  /** How far above the ceiling passes unremarked, m: the finest step a depth is shown in. */
  slackM: amount(0.1, 0, 1),
  /** How long one may be above the ceiling before the stop counts as left out, s. */
  graceS: amount(60, 0, 600),
};

const required = eventKind({
  kind: 'stop-required',
  rule: 'requiredStops',
  meaning:
    'The no-stop time has run out: the model has a ceiling, and you need to stop on the way up until it has cleared.',
  say: ({ stopM }: { stopM: number; ceilingM: number }, system) =>
    `the no-stop time has run out and a ceiling is there. On the way up, stop at ${printStopDepth(stopM, system)} until it has cleared.`,
});
const deeper = eventKind({
  kind: 'required-stop-deeper',
  rule: 'requiredStops',
  meaning: 'The ceiling has sunk past a stop depth: the first stop is deeper now.',
  say: ({ stopM }: { stopM: number; ceilingM: number }, system) =>
    `the first stop has moved down to ${printStopDepth(stopM, system)}.`,
});
const cleared = eventKind({
  kind: 'required-stops-done',
  rule: 'requiredStops',
  meaning: 'The ceiling has risen to the surface: nothing is owed any more.',
  say: () => 'the ceiling has reached the surface. No stop is required any more.',
});
const above = eventKind({
  kind: 'above-ceiling',
  rule: 'requiredStops',
  meaning: 'You are shallower than the unit’s ceiling; the grace time runs.',
  say: ({ depthM, ceilingM, graceS }: { depthM: number; ceilingM: number; graceS: number }, system) =>
    depthM > 0
      ? `you are at ${sayDepth(depthM, system)}, above the ceiling at ${sayDepth(ceilingM, system)}. The unit gives you ${sayTime(graceS)} to go back down.`
      : `you are at the surface with a stop still owed. The unit counts it as left out in ${sayTime(graceS)}.`,
});
const back = eventKind({
  kind: 'below-ceiling-again',
  rule: 'requiredStops',
  meaning: 'You are below the ceiling again.',
  say: ({ depthM, aboveS }: { depthM: number; aboveS: number }, system) =>
    `you are below the ceiling again, at ${sayDepth(depthM, system)}, after ${sayTime(aboveS)} above it.`,
});
const graceOver = eventKind({
  kind: 'grace-over',
  rule: 'requiredStops',
  meaning:
    'You have been above the ceiling for longer than the grace time; the stop counts as left out unless you make it.',
  say: ({ graceS }: { graceS: number }) =>
    `you have been above the ceiling for ${sayTime(graceS)}: the unit’s grace time is over.`,
});

interface State {
  /** Depth of the first stop told last, m; 0 while none is required. */
  toldM: number;
  /** How long above the ceiling, s; negative while below it. */
  aboveS: number;
}

/** Shows the model's ceiling as stops that must be made, and insists on them. */
export const requiredStops = rule({
  id: 'requiredStops',
  title: 'Required stops',
  reason:
    'A ceiling is the model’s limit: above it a compartment holds more gas than the chosen limits let pass. The stops come from the model; the alarm and its grace time are the unit’s way to insist on them.',
  standing: 'common practice',
  settings,
  events: [required, deeper, cleared, above, back, graceOver],
  changesLessons: [4, 5, 6, 7, 8, 10, 11, 12, 13, 14, 15, 16],
  begin: (): State => ({ toldM: 0, aboveS: -1 }),
  step(state, now, own, unit) {
    const modelM = unit.figures.ceilingM[now.sample]!;
    const ceilingM = Math.max(modelM, unit.imposedCeilingM);
    if (now.diveStarts || now.atSurface) state.toldM = modelM > 0 ? state.toldM : 0;
    else {
      const stopM = firstStopM(modelM, unit.figures.limits.plan);
      if (stopM > state.toldM) {
        unit.tell(state.toldM === 0 ? required : deeper, now.timeS, { stopM, ceilingM: modelM });
        state.toldM = stopM;
      } else if (modelM <= 0 && state.toldM > 0) {
        unit.tell(cleared, now.timeS, {});
        state.toldM = 0;
      }
    }
    if (now.depthM < ceilingM - own.slackM - SAME_DEPTH_M) {
      if (state.aboveS < 0) {
        state.aboveS = 0;
        unit.tell(above, now.timeS, { depthM: now.depthM, ceilingM, graceS: own.graceS });
      } else state.aboveS += now.elapsedS;
      if (state.aboveS >= own.graceS && !unit.graceOver) {
        unit.graceOver = true;
        unit.tell(graceOver, now.timeS, { graceS: own.graceS });
      }
    } else {
      if (state.aboveS >= 0 && !now.atSurface) unit.tell(back, now.timeS, { depthM: now.depthM, aboveS: state.aboveS });
      state.aboveS = -1;
      unit.graceOver = false;
    }
    unit.alarm('above-ceiling', state.aboveS >= 0);
    unit.alarm('grace-over', unit.graceOver);
  },
});
