import { describe, expect, it } from 'vitest';
import { fastestWithin, parseRate, printRate, printRateLimit } from '@/lib/quantity/rate';

const read = (text: string) => {
  const parsed = parseRate(text);
  return parsed.ok ? parsed.value : parsed;
};

describe('reading a rate', () => {
  it.each([
    ['9 m/min', 9],
    ['9m/min', 9],
    ['9 m / min', 9],
    ['9 metres per minute', 9],
    ['60 ft/min', 18.288],
    ['1 ft/s', 18.288],
    ['0.3 m/s', 18],
    ['0,3 m/sec', 18],
  ])('takes %s', (text, metresPerMinute) => {
    expect(read(text)).toBe(metresPerMinute);
  });

  it('asks which unit a bare number is in', () => {
    expect(read('9')).toMatchObject({ ok: false, what: '9 what?', mend: 'Write 9 m/min or 30 ft/min.' });
  });

  it('refuses what is no rate', () => {
    for (const text of ['0 m/min', '-9 m/min', '9 m', '9 min', '9 m/m', '9 m/min/min', '9 per min', '/min', 'fast']) {
      expect(read(text), text).toMatchObject({ ok: false });
    }
  });
});

it('prints a rate in either system', () => {
  expect(printRate(9, 'metric')).toBe('9 m/min');
  expect(printRate(9.54, 'metric')).toBe('9.5 m/min');
  expect(printRate(9, 'imperial')).toBe('30 ft/min');
});

it('calls a limit in feet what the trade does, and takes whoever keeps either figure to keep it', () => {
  // Common practice, without a single source: 9 m/min is taught as 30 ft/min, 18 m/min as 60 ft/min.
  expect([9, 18, 10, 12].map((mMin) => printRateLimit(mMin, 'imperial'))).toEqual([
    '30 ft/min',
    '60 ft/min',
    '33 ft/min',
    '40 ft/min',
  ]);
  expect(printRateLimit(9, 'metric')).toBe('9 m/min');
  expect(fastestWithin(9)).toBeCloseTo(9.144, 12);
  expect(fastestWithin(9.144)).toBeCloseTo(9.144, 12);
  expect(fastestWithin(10.3)).toBeCloseTo(10.3632, 12);
});
