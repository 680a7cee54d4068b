import type { RuleEvent } from '../../rules/event';
import { fromDive, newChain, quantity, type Chain } from '../chain';
import { spellsOf, type Spell } from '../model/countdown';
import { countdownSteps, leftBefore, ruleSeconds, spellTable, SPELLS_SHOWN } from '../model/countdown-steps';
import { firstUnderWater, penaltySizes, thisDive } from '../dive-events';
import { REMARKS } from '../remarks';
import { SOURCES } from '../sources';
import type { UnitInstant } from './unit-instant';
import type { Named, Working } from '../working';

const WORDS: Readonly<Record<Spell['kind'], string>> = {
  counts: 'runs down',
  waits: 'stands still',
  grows: 'grows',
  added: 'is asked for',
};

/** Why a unit demands a stop after a fast rise, and why so much of it is left. */
export function imposedStopWorking(instant: UnitInstant): Working {
  const { watch, sample } = instant;
  const { timeline, tracks, rules } = watch;
  const { lastsS, mostS } = rules.imposedStop;
  const leftS = tracks.imposedStopLeftS[sample]!;
  const events = thisDive(watch, sample, 'stop-imposed');
  const sizes = penaltySizes(events, { addsS: lastsS, mostS });
  const first = firstUnderWater(watch, sample);
  const all = spellsOf({
    timeline,
    looked: tracks.looked,
    leftS: tracks.imposedStopLeftS,
    fromSample: first,
    toSample: sample,
    added: sizes,
    addedFirst: false,
  });
  const begun = all.slice(
    Math.max(
      0,
      all.findIndex(({ kind }) => kind === 'added'),
    ),
  );
  const shown = begun.slice(-SPELLS_SHOWN);
  const chain = newChain();
  const start = leftBefore(shown.length < begun.length ? begun.at(-SPELLS_SHOWN - 1)!.leftS : 0);
  const addedBy = (event: RuleEvent) => askedStep(chain, instant, { events, sizes, event });
  countdownSteps(
    chain,
    { spells: shown, start, whole: start, source: SOURCES.penalty, title: 'what is left of the imposed stop', addedBy },
    leftS,
  );
  return {
    reading: 'imposed-stop',
    title: 'Imposed stop',
    answer: {
      ...quantity(leftS, 's'),
      text: 'The unit demands this stop after a fast rise, whatever the tissues hold. The model does not ask for it.',
      at: quantity(tracks.imposedStopM[sample]!, 'm'),
    },
    steps: chain.steps,
    table: spellTable(shown, WORDS),
    cautions: [REMARKS.rule, ...(shown.length < begun.length ? [REMARKS.earlierStretches] : [])],
  };
}

interface Asked {
  readonly events: readonly RuleEvent[];
  readonly sizes: ReadonlyMap<RuleEvent, number>;
  readonly event: RuleEvent;
}

function askedStep(chain: Chain, { watch }: UnitInstant, { events, sizes, event }: Asked): Named {
  const { lastsS, mostS } = watch.rules.imposedStop;
  const n = events.indexOf(event) + 1;
  const beforeS = events.slice(0, n - 1).reduce((sum, one) => sum + sizes.get(one)!, 0);
  return chain.add({
    id: `step:asked-${n}`,
    title: 'what this fast rise asks for',
    why: 'The first breach of the rate limit asks for so much, the second for twice as much more, up to a most for the dive.',
    expression: `min(t_lasts * n_${n}, t_most - t_before_${n})`,
    symbol: `t_asked_${n}`,
    values: [
      ruleSeconds('t_lasts', lastsS, 'what the first breach of a dive asks for', [30, 1200]),
      fromDive(`n_${n}`, { ...quantity(event.numbers['breach']!, ''), meaning: 'which breach of the dive this is' }),
      ruleSeconds('t_most', mostS, 'the most that a dive’s breaches ask for', [30, 3600]),
      fromDive(`t_before_${n}`, { ...quantity(beforeS, 's'), meaning: 'what earlier breaches have asked for' }),
    ],
    result: quantity(sizes.get(event)!, 's'),
    source: SOURCES.penalty,
  });
}
