import { describe, expect, it } from 'vitest';
import { addPoint } from '@/app/stage/figures/profile-edits';
import { legsOf } from '@/lib/dive/legs';
import { parseScript } from '@/lib/dive/script';

const SCRIPT = 'descend to 20 m at 18 m/min\nstay 20 min\nascend to surface at 9 m/min\n';

function withPoint(depthM: number) {
  const before = parseScript(SCRIPT);
  if (!before.ok) throw new Error('the script is sound');
  const after = parseScript(addPoint(SCRIPT, before.dive, legsOf(before.dive).legs[1]!, 600, depthM));
  if (!after.ok) throw new Error('the script with the point is sound');
  return after.dive.steps;
}

describe('a point put into a stay', () => {
  it('deeper is gone down to at 18 m/min', () =>
    expect(withPoint(29)[2]).toMatchObject({ kind: 'descend', toM: 29, durationS: 30 }));

  it('shallower is gone up to at 9 m/min', () =>
    expect(withPoint(11)[2]).toMatchObject({ kind: 'ascend', toM: 11, durationS: 60 }));

  it('cuts the stay there, and the rest of it is spent at the new depth', () => {
    const [down, first, , rest] = withPoint(29);
    expect([first, rest]).toMatchObject([{ kind: 'stay' }, { kind: 'stay' }]);
    const arrivalS = down!.kind === 'descend' ? down!.durationS : NaN;
    expect(first).toMatchObject({ durationS: Math.round(600 - arrivalS) });
    expect([first, rest].reduce((sum, step) => sum + (step?.kind === 'stay' ? step.durationS : NaN), 0)).toBeCloseTo(
      1200,
      -1,
    );
  });
});
