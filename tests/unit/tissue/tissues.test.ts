import { describe, expect, it } from 'vitest';
import { alveolarInertBar, lungOffsetBar } from '@/lib/tissue/alveolar';
import { compartments } from '@/lib/tissue/coefficients';
import { copyTissues, tissuesAfter, tissuesSettledOnAir } from '@/lib/tissue/tissues';

describe('the pressure of nitrogen in the lungs', () => {
  it('at sea level on air is (1.01325 − 0.0627) · 0.79 bar', () =>
    expect(alveolarInertBar(1.01325, 0.79)).toBeCloseTo(0.7509345, 12));
  it('at a respiratory quotient of 0.8 is higher by a quarter of the carbon dioxide', () => {
    expect(lungOffsetBar(0.8)).toBeCloseTo(0.0627 - 0.25 * 0.0534, 12);
    expect(lungOffsetBar(1)).toBe(0.0627);
  });
});

describe('the compartments', () => {
  it('begin with 1b or with 1, and share the other fifteen', () => {
    const withB = compartments('C', '1b').nitrogenHalfTimeMin;
    const with1 = compartments('C', '1').nitrogenHalfTimeMin;
    expect(withB[0]).toBe(5);
    expect(with1[0]).toBe(4);
    expect([...withB.slice(1)]).toEqual([...with1.slice(1)]);
    expect(withB).toHaveLength(16);
  });

  it('decay to half in a half-time', () => {
    const { nitrogenK, nitrogenHalfTimeMin } = compartments('C', '1b');
    nitrogenK.forEach((k, c) => expect(Math.exp(-k * nitrogenHalfTimeMin[c]!)).toBeCloseTo(0.5, 12));
  });
});

describe('tissues settled on air', () => {
  const settled = tissuesSettledOnAir(1.01325, 1);

  it('hold what the lungs give, and no helium', () => {
    expect([...settled.nitrogenBar].every((bar) => bar === alveolarInertBar(1.01325, 0.79))).toBe(true);
    expect([...settled.heliumBar]).toEqual(new Array(16).fill(0));
  });

  it('stand still while nothing changes', () => {
    const later = tissuesAfter(
      settled,
      compartments('C', '1b'),
      { nitrogenBar: settled.nitrogenBar[0]!, heliumBar: 0 },
      500,
    );
    expect([...later.nitrogenBar]).toEqual([...settled.nitrogenBar]);
  });

  it('are not altered by a copy that is', () => {
    const copy = copyTissues(settled);
    copy.nitrogenBar[0] = 5;
    expect(settled.nitrogenBar[0]).not.toBe(5);
  });
});
