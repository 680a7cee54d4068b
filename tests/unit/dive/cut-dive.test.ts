import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutDive } from '@/lib/dive/edit/cut-dive';
import { legsOf } from '@/lib/dive/legs';
import { diveOf } from '../read';

const SCRIPT = `gas: 32%
gradient factors: 40/85
carry: 50% from 21 m
descend to 30 m at 18 m/min
stay 20 min
ascend to 21 m at 9 m/min
switch to 50%
ascend to 6 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
interval 60 min
descend to 12 m at 12 m/min
stay 10 min
ascend to surface at 6 m/min
`;

function dive(text = SCRIPT) {
  return diveOf(text);
}

describe('a dive cut short', () => {
  it('is the same as far as the moment and ends there, wherever it is cut', () => {
    const whole = legsOf(dive());
    fc.assert(
      fc.property(fc.double({ min: 1, max: whole.endS, noNaN: true }), (atS) => {
        const cut = legsOf(cutDive(dive(), atS));
        expect(cut.endS).toBeCloseTo(atS, 2);
        for (const [i, leg] of cut.legs.slice(0, -1).entries()) {
          expect(leg.endS).toBeCloseTo(whole.legs[i]!.endS, 3);
          expect(leg.toM).toBeCloseTo(whole.legs[i]!.toM, 3);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('ends in the middle of a climb at the depth the diver is at', () => {
    // The descent takes 100 s; 10 s later the way up has not begun, 30 s into it the diver is 4.5 m up.
    const { legs } = legsOf(cutDive(dive(), 100 + 1200 + 30));
    expect(legs.at(-1)!.toM).toBeCloseTo(25.5, 9);
  });
});
