import type { Dive } from '../dive/dive';
import { legsOf } from '../dive/legs';
import type { Gas } from '../physics/gas';
import { phasesOf, type Phase } from './consumption';

const ACTIONS = { descent: 'descend', bottom: 'stay', ascent: 'ascend', stops: 'stop' } as const satisfies Record<
  Phase,
  string
>;
type RunTimeAction = (typeof ACTIONS)[Phase];

/** One line of a run-time table. */
export interface RunTimeRow {
  readonly action: RunTimeAction;
  readonly fromM: number;
  readonly toM: number;
  readonly minutes: number;
  /** Minutes since this dive began, when the line begins and when it is over. */
  readonly startMin: number;
  readonly endMin: number;
  readonly gas: Gas;
  /** Whether the gas is taken up here. */
  readonly switched: boolean;
}

/** Rates closer than this are one, m/min. */
export const SAME_RATE_M_MIN = 1e-6;

/**
 * A dive as the lines of a slate: what to do, where, until when and on which gas. Stretches that say the same are one
 * line. A stay is a stop once the diver has come up from the deepest point.
 * @param diveNumber which dive of the day, from 0
 */
export function runTimeTable(dive: Dive, diveNumber = 0): RunTimeRow[] {
  const { legs, gases } = legsOf(dive);
  const own = legs.filter((leg) => leg.diveNumber === diveNumber && !leg.interval && leg.endS > leg.startS);
  const phases = phasesOf(own);
  const diveStartS = own[0]?.startS ?? 0;
  const rows: RunTimeRow[] = [];
  own.forEach((leg, i) => {
    const row: RunTimeRow = {
      action: ACTIONS[phases[i]!],
      fromM: leg.fromM,
      toM: leg.toM,
      minutes: (leg.endS - leg.startS) / 60,
      startMin: (leg.startS - diveStartS) / 60,
      endMin: (leg.endS - diveStartS) / 60,
      gas: gases[leg.gas]!,
      switched: i > 0 && own[i - 1]!.gas !== leg.gas,
    };
    const last = rows.at(-1);
    if (!last || row.switched || last.action !== row.action || Math.abs(rateOf(last) - rateOf(row)) > SAME_RATE_M_MIN)
      rows.push(row);
    else rows[rows.length - 1] = { ...last, toM: row.toM, minutes: row.endMin - last.startMin, endMin: row.endMin };
  });
  return rows;
}

function rateOf({ fromM, toM, minutes }: RunTimeRow): number {
  return (toM - fromM) / minutes;
}
