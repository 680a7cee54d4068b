import { describe, expect, it } from 'vitest';
import { alveolarInertBar, lungOffsetBar } from '@/lib/tissue/alveolar';
import { COMPARTMENTS, compartments } from '@/lib/tissue/coefficients';
import { tissuesAfter, tissuesSettledOnAir } from '@/lib/tissue/tissues';

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
    expect(withB).toHaveLength(COMPARTMENTS);
    expect(COMPARTMENTS).toBe(16);
  });

  it('of one variant are made once, and handed out again', () =>
    expect(compartments('C', '1b')).toBe(compartments('C', '1b')));

  it('decay to half in a half-time, of either gas', () => {
    const { nitrogenK, nitrogenHalfTimeMin, heliumK, heliumHalfTimeMin } = compartments('C', '1b');
    nitrogenK.forEach((k, c) => expect(Math.exp(-k * nitrogenHalfTimeMin[c]!)).toBeCloseTo(0.5, 12));
    heliumK.forEach((k, c) => expect(Math.exp(-k * heliumHalfTimeMin[c]!)).toBeCloseTo(0.5, 12));
  });

  it('let helium through 2.65 times as fast as nitrogen, as Graham’s law has it of their masses', () => {
    // √(28.0134/4.0026) = 2.646 (IUPAC standard atomic weights).
    const { nitrogenK, heliumK } = compartments('C', '1b');
    nitrogenK.forEach((k, c) => expect(Math.abs(heliumK[c]! / k - Math.sqrt(28.0134 / 4.0026))).toBeLessThan(0.02));
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

  it('hold half of the helium breathed after its half-time, and half of the nitrogen after nitrogen’s', () => {
    const { heliumHalfTimeMin, nitrogenHalfTimeMin } = compartments('C', '1b');
    const breathed = { nitrogenBar: 0, heliumBar: 2 };
    const after = (minutes: number) => tissuesAfter(settled, compartments('C', '1b'), breathed, minutes);
    expect(after(heliumHalfTimeMin[6]!).heliumBar[6]).toBeCloseTo(1, 12);
    expect(after(nitrogenHalfTimeMin[6]!).nitrogenBar[6]).toBeCloseTo(settled.nitrogenBar[6]! / 2, 12);
  });
});
