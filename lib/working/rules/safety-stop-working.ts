import { SAME_DEPTH_M } from '../../ascent/ceiling';
import type { RuleEvent } from '../../rules/event';
import { SAFETY_STOP_MEANINGS, SAFETY_STOP_STATES } from '../../rules/safety-stop-state';
import { fromDive, newChain, quantity, type Chain } from '../chain';
import { spellsOf, type Spell } from '../model/countdown';
import { countdownSteps, leftBefore, ruleSeconds, spellTable, SPELLS_SHOWN } from '../model/countdown-steps';
import { firstUnderWater, penaltySizes, thisDive } from '../dive-events';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import { sumSteps } from '../steps/sum-steps';
import type { UnitInstant } from './unit-instant';
import type { Named, Working } from '../working';

const WORDS: Readonly<Record<Spell['kind'], string>> = {
  counts: 'runs down',
  waits: 'stands still',
  grows: 'grows again',
  added: 'is made longer',
};

/** Why so much of the safety stop is left: what it began with, and what became of its time since. */
export function safetyStopWorking(instant: UnitInstant): Working {
  const { watch, sample } = instant;
  const { timeline, tracks, rules } = watch;
  const { lastsS, dueBelowM } = rules.safetyStop;
  const leftS = tracks.safetyStopLeftS[sample]!;
  const events = thisDive(watch, sample, 'safety-stop-lengthened');
  const sizes = penaltySizes(events, rules.longerSafetyStop);
  const beganAt = startOver(instant, dueBelowM + SAME_DEPTH_M);
  const all = spellsOf({
    timeline,
    looked: tracks.looked,
    leftS: tracks.safetyStopLeftS,
    fromSample: beganAt,
    toSample: sample,
    added: sizes,
    addedFirst: true,
  });
  const shown = all.slice(-SPELLS_SHOWN);
  const chain = newChain();
  const known = new Map<RuleEvent, Named>();
  const addedBy = (event: RuleEvent) => {
    const made = known.get(event) ?? addedStep(chain, instant, events, event);
    known.set(event, made);
    return made;
  };
  const earlier = events.filter(({ timeS }) => timeS <= timeline.timeS[beganAt]!);
  const begin = lastsS + earlier.reduce((sum, event) => sum + sizes.get(event)!, 0);
  const asSet = ruleSeconds('t_lasts', lastsS, 'how long the safety stop lasts by itself', [10, 1800]);
  const setRight = Math.abs(tracks.safetyStopLeftS[beganAt]! - begin) < 1e-6;
  const start =
    shown.length < all.length || !setRight
      ? leftBefore(shown.length < all.length ? all.at(-SPELLS_SHOWN - 1)!.leftS : tracks.safetyStopLeftS[beganAt]!)
      : wholeStep(chain, asSet, earlier.map(addedBy), begin);
  const whole =
    start.symbol === 't_left_0'
      ? fromDive('t_whole', {
          ...quantity(wholeBefore(lastsS, sizes, shown), 's'),
          meaning: 'the whole stop before the stretches worked through here',
        })
      : start;
  countdownSteps(
    chain,
    { spells: shown, start, whole, source: SOURCES.safetyStop, title: 'what is left of the safety stop', addedBy },
    leftS,
  );
  const state = SAFETY_STOP_STATES[tracks.safetyStop[sample]!]!;
  return {
    reading: 'safety-stop',
    title: 'Safety stop',
    answer: { ...quantity(leftS, 's'), text: SAFETY_STOP_MEANINGS[state] },
    steps: chain.steps,
    ...(all.length > 0 ? { table: spellTable(shown, WORDS) } : {}),
    cautions: [REMARKS.rule, ...(start.symbol === 't_left_0' ? [REMARKS.earlierStretches] : [])],
  };
}

/** The last sample at which the whole stop was due: the last one deep enough, or where a penalty made it due. */
function startOver({ watch, sample }: UnitInstant, belowM: number): number {
  const { timeline, tracks } = watch;
  const first = firstUnderWater(watch, sample);
  for (let i = sample; i >= first; i -= 1) if (timeline.depthM[i]! > belowM) return i;
  for (let i = sample; i >= first; i -= 1)
    if (SAFETY_STOP_STATES[tracks.safetyStop[i]!] === 'none') return Math.min(i + 1, sample);
  return first;
}

function wholeBefore(lastsS: number, sizes: ReadonlyMap<RuleEvent, number>, shown: readonly Spell[]): number {
  const later = new Set(shown.map(({ event }) => event));
  return [...sizes].reduce((sum, [event, size]) => (later.has(event) ? sum : sum + size), lastsS);
}

function wholeStep(chain: Chain, asSet: Named, added: readonly Named[], wholeS: number): Named {
  return sumSteps(
    chain,
    [asSet, ...added],
    {
      id: 'whole',
      symbol: 't_whole',
      title: 'the whole safety stop',
      why: added.length === 0 ? 'As the rule has it.' : 'As the rule has it, with what fast rises have added.',
      unit: 's',
    },
    wholeS,
  );
}

/** One breach of the rate limit lengthens the stop, each more than the one before, up to a most. */
function addedStep(chain: Chain, { watch }: UnitInstant, events: readonly RuleEvent[], event: RuleEvent): Named {
  const { addsS, mostS } = watch.rules.longerSafetyStop;
  const sizes = penaltySizes(events, watch.rules.longerSafetyStop);
  const n = events.indexOf(event) + 1;
  const beforeS = events.slice(0, n - 1).reduce((sum, one) => sum + sizes.get(one)!, 0);
  return chain.add({
    id: `step:added-${n}`,
    title: 'what this fast rise adds to the safety stop',
    why: 'The second breach of a dive adds twice as much as the first, and so on, up to a most for the dive.',
    expression: `min(t_adds * n_${n}, t_most - t_before_${n})`,
    symbol: `t_added_${n}`,
    values: [
      ruleSeconds('t_adds', addsS, 'what the first breach of a dive adds', [10, 600]),
      fromDive(`n_${n}`, { ...quantity(event.numbers['breach']!, ''), meaning: 'which breach of the dive this is' }),
      ruleSeconds('t_most', mostS, 'the most that a dive’s breaches add', [10, 3600]),
      fromDive(`t_before_${n}`, { ...quantity(beforeS, 's'), meaning: 'what earlier breaches have added' }),
    ],
    result: quantity(sizes.get(event)!, 's'),
    source: SOURCES.penalty,
  });
}
