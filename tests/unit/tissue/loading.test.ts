import { describe, expect, it } from 'vitest';
import { haldane, schreiner } from '@/lib/tissue/loading';

const K_TEN_MIN = Math.LN2 / 10;

describe('Haldane’s solution', () => {
  it.each([
    [0, 1],
    [10, 2],
    [20, 2.5],
    [30, 2.75],
    [60, 3 - 2 / 64],
  ])(
    'after %i min in a compartment of 10 min, between 1 and 3 bar, is %f bar: half the gap goes in each half-time',
    (minutes, bar) => {
      expect(haldane(1, 3, K_TEN_MIN, minutes)).toBeCloseTo(bar, 12);
    },
  );

  it('runs down as it runs up', () => {
    expect(haldane(3, 1, K_TEN_MIN, 10)).toBeCloseTo(2, 12);
  });
});

describe('Schreiner’s solution', () => {
  it('without a rate is Haldane’s', () => {
    expect(schreiner(1, 3, 0, K_TEN_MIN, 17)).toBeCloseTo(haldane(1, 3, K_TEN_MIN, 17), 12);
  });

  it('trails a steady rise by the rate times the time constant in the end', () => {
    const ratePerMin = 0.2;
    const minutes = 300;
    const breathedBar = 1 + ratePerMin * minutes;
    expect(breathedBar - schreiner(1, 1, ratePerMin, K_TEN_MIN, minutes)).toBeCloseTo(ratePerMin / K_TEN_MIN, 6);
  });

  it('is what many short steps of Haldane’s at the middle pressure come to', () => {
    const steps = 20_000;
    let stepped = 0.8;
    for (let i = 0; i < steps; i += 1)
      stepped = haldane(stepped, 0.8 + (2.4 * (i + 0.5)) / steps, K_TEN_MIN, 3 / steps);
    expect(schreiner(0.8, 0.8, 0.8, K_TEN_MIN, 3)).toBeCloseTo(stepped, 8);
  });
});
