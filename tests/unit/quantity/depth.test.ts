import { describe, expect, it } from 'vitest';
import { parseDepth, printDepth, printStopDepth, sayDepth } from '@/lib/quantity/depth';

const read = (text: string) => {
  const parsed = parseDepth(text);
  return parsed.ok ? parsed.value : parsed;
};

describe('reading a depth', () => {
  it('takes metres and feet however they are spelt', () => {
    for (const text of ['30 m', '30m', ' 30  M ', '30 metres', '30 meters', '30 Metre']) expect(read(text)).toBe(30);
    for (const text of ['100 ft', '100FT', '100 feet']) expect(read(text)).toBe(30.48);
  });

  it('turns a foot into exactly 0.3048 m (international yard and pound agreement, 1959)', () => {
    expect(read('1 ft')).toBe(0.3048);
    expect(read('130 ft')).toBe(39.624);
  });

  it('takes a decimal comma where it cannot mark thousands', () => {
    expect(read('39,6 m')).toBe(39.6);
    expect(read('0,125 m')).toBe(0.125);
    expect(read('1234,567 m')).toBe(1234.567);
  });

  it('refuses a comma before three digits and offers both meanings', () => {
    expect(read('1,200 m')).toMatchObject({
      ok: false,
      what: '“1,200” could be 1200 or 1.2.',
      mend: 'Write 1200 m or 1.2 m.',
    });
    expect(read('1,200.5 ft')).toMatchObject({ ok: false, mend: 'Write 1200.5 ft, with no mark for thousands.' });
    expect(read('1.200.000 m')).toMatchObject({ ok: false, mend: 'Write 1200000 m, with no mark for thousands.' });
  });

  it('refuses a space inside the number', () => {
    expect(read('1 200 m')).toMatchObject({ ok: false, mend: 'Write 1200 m.' });
  });

  it('asks which unit a bare number is in', () => {
    expect(read('30')).toMatchObject({ ok: false, what: '30 what?', mend: 'Write 30 m or 100 ft.' });
  });

  it('takes the minus signs and spaces of a word processor', () => {
    expect(read('30\u00a0m')).toBe(30);
    expect(read('\u22125 m')).toMatchObject({ ok: false, what: 'Depth is never negative.', mend: 'Write 5 m.' });
  });

  it('refuses what is no depth', () => {
    for (const text of [
      '',
      'm',
      'deep',
      '30 min',
      '30 m/min',
      '1e3 m',
      'Infinity m',
      '9'.repeat(400) + ' m',
      '30 m 5',
    ]) {
      expect(read(text), text).toMatchObject({ ok: false });
    }
  });
});

describe('printing a depth', () => {
  it('shows tenths of a metre or whole feet', () => {
    expect(printDepth(30, 'metric')).toBe('30.0 m');
    expect(printDepth(30, 'imperial')).toBe('98 ft');
    expect(printDepth(-0.01, 'metric')).toBe('0.0 m');
    expect(printDepth(NaN, 'metric')).toBe('– m');
  });

  it('leaves out a needless zero in a sentence', () => {
    expect(sayDepth(30, 'metric')).toBe('30 m');
    expect(sayDepth(4.5, 'metric')).toBe('4.5 m');
    expect(sayDepth(100, 'metric')).toBe('100 m');
  });

  it('names stops on the scale of 3 m or 10 ft', () => {
    expect([3, 6, 9, 21].map((m) => printStopDepth(m, 'imperial'))).toEqual(['10 ft', '20 ft', '30 ft', '70 ft']);
    expect(printStopDepth(6, 'metric')).toBe('6 m');
    expect(printStopDepth(5, 'imperial')).toBe('17 ft'); // 16.4 ft: never told shallower than it is
  });
});
