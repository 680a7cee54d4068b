import type { Figures } from '../ascent/figures';
import type { Standing } from '../ascent/standings';
import { stopChanges, type StopChange } from '../ascent/stop-changes';
import type { Timeline } from '../dive/timeline';
import { printStopDepth, sayDepth } from '../quantity/depth';
import { eventKind } from './event';
import { ROUNDING_M, rule, type Moment } from './rule';
import { sayTime } from './say';
import { amount, onOff } from './settings/setting';
import type { Unit } from './unit/unit';

const settings = {
  on: onOff(true),
  /** How far above the ceiling passes unremarked, m: the finest step a depth is shown in. */
  slackM: amount(0.1, 0, 1),
  /** How long one may be above the ceiling before the stop counts as left out, s. */
  graceS: amount(60, 0, 600),
};

const owed = eventKind({
  kind: 'stop-owed',
  rule: 'requiredStops',
  meaning: 'A stop is owed: the model has a ceiling, and the way up at the plan’s rate needs a stop.',
  say: ({ stopM }: { stopM: number }, system) =>
    `a stop is owed: there is a ceiling, and coming up you need to stop at ${printStopDepth(stopM, system)}.`,
});
const moved = eventKind({
  kind: 'first-stop-moved',
  rule: 'requiredStops',
  meaning: 'The first stop owed has moved to another depth.',
  say: ({ stopM, beforeM }: { stopM: number; beforeM: number }, system) =>
    `the first stop has moved ${stopM > beforeM ? 'down' : 'up'} to ${printStopDepth(stopM, system)}.`,
});
const clearing = eventKind({
  kind: 'ceiling-clears',
  rule: 'requiredStops',
  meaning: 'There is a ceiling, but coming up at the plan’s rate it is gone before you reach it: no stop is needed.',
  say: () => 'there is a ceiling, but coming up at the plan’s rate you would find it gone. No stop is needed.',
});
const filling = eventKind({
  kind: 'way-up-fills',
  rule: 'requiredStops',
  meaning: 'There is no ceiling yet, but the way up itself takes up enough gas to need a stop.',
  say: ({ stopM }: { stopM: number }, system) =>
    `there is no ceiling yet, but the way up takes up enough gas to need a stop at ${printStopDepth(stopM, system)}.`,
});
const free = eventKind({
  kind: 'nothing-owed',
  rule: 'requiredStops',
  meaning: 'There is no ceiling any more and the way up needs no stop: nothing is owed.',
  say: () => 'there is no ceiling any more, and the way up needs no stop. Nothing is owed.',
});
const above = eventKind({
  kind: 'above-ceiling',
  rule: 'requiredStops',
  meaning: 'You are shallower than the unit’s ceiling; the grace time runs.',
  say: ({ depthM, ceilingM, graceS }: { depthM: number; ceilingM: number; graceS: number }, system) =>
    depthM > 0
      ? `you are at ${sayDepth(depthM, system)}, above the ceiling at ${sayDepth(ceilingM, system, 'up')}. The unit gives you ${sayTime(graceS)} to go back down.`
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

/** Sums of seconds that differ by less than this are the same. */
const ROUNDING_S = 1e-6;

/** A spell under one set of limits, in which the changes of how the diver stands are told. */
interface Spell {
  readonly figures: Figures;
  readonly fromS: number;
  /** How far the dive has been seen, s. */
  toS: number;
  readonly before: Spell | undefined;
}

interface State {
  spell: Spell | undefined;
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
  events: [owed, moved, clearing, filling, free, above, back, graceOver],
  changesLessons: [4, 5, 6, 7, 8, 11, 12, 13, 14, 15, 16, 17, 18, 20, 21],
  begin: (): State => ({ spell: undefined, aboveS: -1 }),
  step(state, now, own, unit) {
    const modelM = unit.figures.ceilingM[now.sample]!;
    const ceilingM = Math.max(modelM, unit.imposedCeilingM);
    noteSpell(state, now, unit);
    if (now.depthM < ceilingM - own.slackM - ROUNDING_M) {
      if (state.aboveS < 0) {
        state.aboveS = 0;
        unit.tell(above, now.timeS, { depthM: now.depthM, ceilingM, graceS: own.graceS });
      } else state.aboveS += now.elapsedS;
      if (state.aboveS >= own.graceS - ROUNDING_S && !unit.graceOver) {
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

/** Has the changes of state told once somebody asks: they are dear to find. */
function noteSpell(state: State, { timeS }: Moment, unit: Unit): void {
  const { figures, timeline } = unit;
  if (state.spell?.figures === figures) {
    state.spell.toS = timeS;
    return;
  }
  const spell: Spell = { figures, fromS: timeS, toS: timeS, before: state.spell };
  state.spell = spell;
  unit.tellLater(requiredStops.id, (tell) => tellChanges(spell, timeline, tell));
}

/** Tells each change of a spell at its own instant; what other limits than before change, at its start. */
function tellChanges(spell: Spell, timeline: Timeline, tell: Unit['tell']): void {
  const { fromS, toS, before } = spell;
  const changes = stopChanges(timeline, spell.figures);
  let told: Standing = before ? standingAt(stopChanges(timeline, before.figures), before.toS) : NOTHING_TOLD;
  const tellOne = (now: StopChange, timeS: number): void => {
    tellChange(told, now, timeS, tell);
    told = now;
  };
  tellOne(standingAt(changes, fromS), fromS);
  for (const change of changes) if (change.timeS > fromS && change.timeS <= toS) tellOne(change, change.timeS);
}

const NOTHING_TOLD: Standing = { state: 'free', stopM: 0 };

function standingAt(changes: readonly StopChange[], timeS: number): StopChange {
  return changes.findLast((change) => change.timeS <= timeS) ?? changes[0]!;
}

function tellChange(told: Standing, { state: entered, stopM }: StopChange, timeS: number, tell: Unit['tell']): void {
  if (entered !== told.state) {
    if (entered === 'owed') tell(owed, timeS, { stopM });
    else if (entered === 'filling') tell(filling, timeS, { stopM });
    else tell(entered === 'clearing' ? clearing : free, timeS, {});
  } else if (entered === 'owed' && stopM !== told.stopM) tell(moved, timeS, { stopM, beforeM: told.stopM });
}
