import { describe, expect, it } from 'vitest';
import { printClock, printHours, printMinutes, writeTime } from '@/lib/quantity/duration';
import { parseTime } from '@/lib/quantity/time';

const read = (text: string) => {
  const parsed = parseTime(text);
  return parsed.ok ? parsed.value : parsed;
};

describe('reading a time', () => {
  it.each([
    ['20 min', 1200],
    ['20min', 1200],
    ['20 Mins', 1200],
    ['1 minute', 60],
    ['170 s', 170],
    ['45 sec', 45],
    ['2 min 50 s', 170],
    ['2min50s', 170],
    ['2:50', 170],
    ['0:05', 5],
    ['72:05', 4325],
    ['1:02:50', 3770],
    ['1 h 30 min', 5400],
    ['1 h, 30 min and 5 s', 5405],
    ['1.5 h', 5400],
    ['1,5 h', 5400],
    ['2 days', 172800],
    ['1 day 2 hours', 93600],
    ['2.05 min', 123],
    ['0 min', 0],
  ])('takes %s', (text, seconds) => {
    expect(read(text)).toBe(seconds);
  });

  it('asks which unit a bare number is in', () => {
    expect(read('20')).toMatchObject({ ok: false, what: '20 what?', mend: 'Write 20 min or 20 s.' });
    expect(read('2 min 50')).toMatchObject({ ok: false, what: '50 what?', at: [6, 8] });
  });

  it('does not take metres for minutes', () => {
    expect(read('20 m')).toMatchObject({ ok: false, what: '“20 m” is a length, not a time.', mend: 'Write 20 min.' });
  });

  it('points at the part it cannot read', () => {
    expect(read('3 min please')).toMatchObject({ ok: false, at: [6, 12] });
    expect(read('  3 lightyears')).toMatchObject({
      ok: false,
      what: '“lightyears” is not a unit of time.',
      at: [2, 14],
    });
  });

  it('refuses times of the clock that are none', () => {
    expect(read('2:75')).toMatchObject({ ok: false, what: '“2:75” has more than 59 after the colon.' });
    expect(read('2:5')).toMatchObject({ ok: false, mend: 'Write two digits after each colon, such as 2:05.' });
    expect(read('1:99:00')).toMatchObject({ ok: false });
  });

  it('refuses parts out of order, given twice or negative', () => {
    for (const text of ['50 s 2 min', '2 min 3 min', '-3 min', '1 h -3 min', '1,200 s', '', '   ']) {
      expect(read(text), text).toMatchObject({ ok: false });
    }
  });
});

describe('writing a time', () => {
  it('writes it out so that it reads back as the same', () => {
    const written: [number, string][] = [
      [1200, '20 min'],
      [100, '1 min 40 s'],
      [59, '59 s'],
      [5400, '90 min'],
      [45000, '12 h 30 min'],
      [86400, '24 h'],
      [166.666666667, '166.666666667 s'],
      [1e-7, '0.0000001 s'],
      [0, '0 s'],
    ];
    for (const [seconds, words] of written) {
      expect(writeTime(seconds)).toBe(words);
      expect(read(words)).toBe(seconds);
    }
  });
});

describe('printing a time', () => {
  it('shows whole seconds gone by on a clock', () => {
    expect([0, 9.99, 170, 4325].map(printClock)).toEqual(['0:00', '0:09', '2:50', '72:05']);
    expect(printClock(59.9999999999)).toBe('1:00');
    expect(printClock(-5)).toBe('−0:05');
    expect(printClock(Infinity)).toBe('–');
  });

  it('rounds minutes the way that is asked', () => {
    expect(printMinutes(719, 'down')).toBe('11 min');
    expect(printMinutes(661, 'up')).toBe('12 min');
    expect(printMinutes(660, 'up')).toBe('11 min');
    expect(printMinutes(700)).toBe('12 min');
  });

  it('shows long waits in hours', () => {
    expect([2700, 3900, 93600].map((timeS) => printHours(timeS))).toEqual(['45 min', '1 h 05 min', '26 h']);
    expect(printHours(3599)).toBe('1 h');
    expect(printHours(3601, 'up')).toBe('1 h 01 min');
  });
});
