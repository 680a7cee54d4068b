import { LONGEST_WAIT_MIN } from '../../rules/surface/surface-interval';
import { fromSetting, quantity, type Chain } from '../chain';
import { SOURCES } from '../sources';
import type { Named } from '../working';

interface Names {
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  readonly minutes: number;
}

/** A wait in hours; without end where a week is not enough. */
export function withinAWeek(chain: Chain, wait: Named, { id, symbol, title, minutes }: Names): Named {
  return chain.add({
    id: `step:${id}`,
    title,
    why: 'Told in hours; without end if a week is not enough.',
    expression: `${wait.symbol} < t_week ? ${wait.symbol} / min_h : Infinity`,
    symbol,
    values: [
      wait,
      fromSetting('t_week', { ...quantity(LONGEST_WAIT_MIN, 'min'), meaning: 'a week, as far as is looked ahead' }),
      fromSetting('min_h', { ...quantity(60, ''), meaning: 'minutes in an hour' }),
    ],
    result: quantity(minutes < LONGEST_WAIT_MIN ? minutes / 60 : Infinity, 'h'),
    source: SOURCES.arithmetic,
  });
}
