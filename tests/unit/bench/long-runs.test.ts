import { describe, expect, it } from 'vitest';
import { benchUnitSchema, DEFAULT_BENCH } from '@/lib/bench/bench-settings';
import { parseRun } from '@/lib/bench/chamber-run';
import { expectedOf } from '@/lib/bench/expected';
import { tookOf } from '@/lib/bench/live-run';

const unit = benchUnitSchema.parse({ id: 'unit-1', name: 'Unit 1' });

function runOf(script: string) {
  const read = parseRun(script);
  if (!read.ok) throw new Error('the run does not read');
  return read.run;
}

describe('a run that lasts very long', () => {
  const SHORT = runOf('descend to 10 m at 10 m/min\nstay 1 min # check: ten\nascend to surface at 10 m/min\n');

  it('because the clock was set forward by a year counts as a day, and forward or back by any time as a time', () => {
    const yearS = 365 * 86_400;
    expect(tookOf(SHORT, [0, 60, yearS])).toEqual([60, 86_400, undefined]);
    expect(tookOf(SHORT, [yearS, 0, 60])).toEqual([1, 60, undefined]);
    for (const took of tookOf(SHORT, [0, 1e300, -1e300]))
      expect(took === undefined || (took >= 1 && took <= 86_400)).toBe(true);
  });

  it('is worked out in samples a machine can hold', () => {
    const [expected] = expectedOf(
      runOf('descend to 10 m at 10 m/min\nstay 6 days # check: ten\nascend to surface at 10 m/min\n'),
      DEFAULT_BENCH,
      unit,
    );
    expect(expected).toMatchObject({ timeS: 60 + 6 * 86_400, noStopMin: null, stopM: { from: 3, to: 3 } });
    expect(expectedOf(SHORT, DEFAULT_BENCH, unit, [60, 86_400, 60])[0]).toMatchObject({ timeS: 60 + 86_400 });
  });
});
