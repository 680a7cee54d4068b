import { fromDive, fromSetting, quantity, type Chain } from '../chain';
import type { Spell } from './countdown';
import type { RuleEvent } from '../../rules/event';
import type { Named, WorkingTable } from '../working';

/** So many spells are worked through, the latest ones. */
export const SPELLS_SHOWN = 12;

interface Countdown {
  readonly spells: readonly Spell[];
  /** What is left where the first spell begins. */
  readonly start: Named;
  /** The most the time may grow to. */
  readonly whole: Named;
  readonly source: string;
  /** The title of what is left at the end. */
  readonly title: string;
  /** What one event adds, as a step. */
  addedBy(event: RuleEvent): Named;
}

/**
 * Carries what is left of a stop through its spells: seconds that count come off, seconds outside come on where the rule
 * has it so, and penalties are added. Spells in which nothing changes have no step.
 */
export function countdownSteps(
  chain: Chain,
  { spells, start, whole: asBegun, source, title, addedBy }: Countdown,
  finalS: number,
): void {
  const changing = spells.filter(({ kind }) => kind !== 'waits');
  let left = start;
  let whole = asBegun;
  changing.forEach(({ kind, fromS, toS, leftS, event }, index) => {
    const n = index + 1;
    const common = {
      id: `step:left-${n}`,
      title: 'left after this',
      symbol: `t_left_${n}`,
      result: quantity(leftS, 's'),
      source,
      group: 'history',
    } as const;
    if (kind === 'added') {
      const added = addedBy(event!);
      if (spells.some((spell) => spell.kind === 'grows')) whole = longerWhole(chain, n, whole, added, source);
      left = chain.add({
        ...common,
        why: 'The unit adds to the time after a fast rise.',
        expression: `${left.symbol} + ${added.symbol}`,
        values: [left, added],
      });
      return;
    }
    const from = fromDive(`t_from_${n}`, {
      ...quantity(fromS, 's'),
      meaning: kind === 'counts' ? 'when the time began to run down' : 'when it began to grow again',
    });
    const to = fromDive(`t_to_${n}`, {
      ...quantity(toS, 's'),
      meaning: kind === 'counts' ? 'when it last ran down' : 'when it last grew',
    });
    left =
      kind === 'counts'
        ? chain.add({
            ...common,
            why: 'The seconds in which the time runs down come off it, as far as there are any left.',
            expression: `max(0, ${left.symbol} - (${to.symbol} - ${from.symbol}))`,
            values: [left, to, from],
          })
        : chain.add({
            ...common,
            why: 'The seconds spent outside come on again, up to the whole stop.',
            expression: `min(${whole.symbol}, ${left.symbol} + (${to.symbol} - ${from.symbol}))`,
            values: [...new Map([whole, left, to, from].map((value) => [value.symbol, value])).values()],
          });
  });
  chain.add({
    id: 'step:left',
    title,
    why: changing.length === 0 ? 'None of it has run down yet.' : 'What is left after all of them.',
    expression: left.symbol,
    symbol: 't_left',
    values: [left],
    result: quantity(finalS, 's'),
    source,
  });
}

/** The whole stop, to which time may grow again, with what has been added. */
function longerWhole(chain: Chain, n: number, whole: Named, added: Named, source: string): Named {
  return chain.add({
    id: `step:whole-${n}`,
    title: 'the whole stop with what has been added',
    why: 'It may grow again up to this.',
    expression: `${whole.symbol} + ${added.symbol}`,
    symbol: `t_whole_${n}`,
    values: [whole, added],
    result: quantity(whole.value.value + added.value.value, 's'),
    source,
    group: 'history',
  });
}

/** The spells one after another, with those in which the time stands still. */
export function spellTable(spells: readonly Spell[], words: Readonly<Record<Spell['kind'], string>>): WorkingTable {
  return {
    caption: 'What became of the time, spell by spell',
    columns: [
      { title: 'from', unit: 's' },
      { title: 'to', unit: 's' },
      { title: 'the time', unit: '' },
      { title: 'left then', unit: 's' },
    ],
    rows: spells.map(({ kind, fromS, toS, leftS }) => [fromS, toS, words[kind], leftS]),
  };
}

/** What a stop stood at before the spells worked through. */
export function leftBefore(leftS: number): Named {
  return fromDive('t_left_0', { ...quantity(leftS, 's'), meaning: 'left before the stretches worked through here' });
}

/** A rule's number of seconds. */
export function ruleSeconds(symbol: string, valueS: number, meaning: string, within: readonly [number, number]): Named {
  return fromSetting(symbol, { ...quantity(valueS, 's'), meaning, within });
}
