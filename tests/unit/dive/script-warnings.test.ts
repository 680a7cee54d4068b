import { describe, expect, it } from 'vitest';
import { parseScript } from '@/lib/dive/script';

describe('warnings of a script', () => {
  const warningsOf = (text: string) =>
    parseScript(text).warnings.map(({ line, message, mend }) => ({ line, message, mend }));
  const dive = (gas: string, depth: string) =>
    `gas: ${gas}\ndescend to ${depth} at 18 m/min\nstay 5 min\nascend to surface at 9 m/min`;

  it('are given for each step beyond the maximum operating depth', () => {
    // By hand: 0.32 × (1.01325 + 4.0) = 1.604 bar; while working, 1.42 bar is reached at 34.2 m.
    expect(warningsOf(dive('32%', '40 m'))).toEqual([
      {
        line: 2,
        message: 'On 32% at 40 m the oxygen pressure is 1.60 bar; the usual limit working is 1.4 bar.',
        mend: 'Keep 32% above 34 m, or breathe a gas with less oxygen.',
      },
      {
        line: 3,
        message: 'On 32% at 40 m the oxygen pressure is 1.60 bar; the usual limit working is 1.4 bar.',
        mend: 'Keep 32% above 34 m, or breathe a gas with less oxygen.',
      },
    ]);
  });

  it('speak feet to a script in feet', () => {
    expect(warningsOf(dive('32%', '130 ft'))[0]!.mend).toBe(
      'Keep 32% above 112 ft, or breathe a gas with less oxygen.',
    );
  });

  it('allow 1.6 bar on the way up, and oxygen at 6 m as practice does', () => {
    const stop =
      'descend to 30 m at 18 m/min\nstay 5 min\nascend to 6 m at 9 m/min\nswitch to oxygen\nstay 5 min\nascend to surface at 9 m/min';
    expect(warningsOf(stop)).toEqual([]);
    expect(warningsOf(stop.replace('6 m', '9 m')).map(({ line }) => line)).toEqual([5, 6]);
  });

  it('are given for a gas with too little oxygen', () => {
    expect(warningsOf(dive('10/70', '60 m'))).toEqual([
      {
        line: 2,
        message:
          'On 10/70 at the surface the oxygen pressure is 0.10 bar, under the floor that is customary: consciousness goes without warning.',
        mend: 'Keep 10/70 below 6 m, or breathe a gas with more oxygen.',
      },
      expect.objectContaining({ line: 4 }),
    ]);
    expect(warningsOf(dive('0/100', '60 m')).map(({ message }) => message)).toContain('There is no oxygen in 0/100.');
  });

  it('are not given for the air of a high lake, which the diver breathes anyway', () => {
    expect(warningsOf(`altitude: 4000 m\n${dive('air', '10 m')}`)).toEqual([]);
  });

  it('are given for a gas carried too deep', () => {
    expect(warningsOf('carry: 50% from 21 m, oxygen from 9 m')).toEqual([
      {
        line: 1,
        message: 'On oxygen at 9 m the oxygen pressure is 1.91 bar; the usual limit at rest is 1.6 bar.',
        mend: 'Keep oxygen above 6 m, or breathe a gas with less oxygen.',
      },
    ]);
  });

  it('follow the gas back to the first one after an interval', () => {
    const day = `${dive('32%', '30 m')}\nswitch to 50%\ninterval 60 min\n${dive('', '30 m').split('\n').slice(1).join('\n')}`;
    expect(warningsOf(day)).toEqual([]);
  });
});
