import { describe, expect, it } from 'vitest';
import { MOST_CHARACTERS, MOST_LINES } from '@/lib/dive/script';
import { errorIn, errorsOf } from '../read';

describe('a mistake is shown where it is, with a way to mend it', () => {
  const AROUND = (line: string) => `descend to 30 m at 18 m/min\n${line}\nascend to surface at 9 m/min`;

  it.each([
    ['desend to 40 m at 18 m/min', 'desend', 'Did you mean “descend”?'],
    ['surfce interval 60 min', 'surfce', 'Did you mean “surface interval”?'],
    ['stya 20 min', 'stya', 'Did you mean “stay”?'],
    ['descend to 40 at 18 m/min', '40', 'Write 40 m or 130 ft.'],
    ['descend to 40 m at 18', '18', 'Write 18 m/min or 59 ft/min.'],
    ['descend to 40 m at 2 min', '2 min', 'Write “in 2 min” for a time, or “at 9 m/min” for a rate.'],
    ['descend to 40 m in 18 m/min', '18 m/min', 'Write “at 18 m/min”.'],
    ['ascent to 20 m at 9 m/min', 'ascent', 'Did you mean “ascend”?'],
    ['descent: 40 m', 'descent', 'Did you mean “descend”?'],
    [
      'descend at 18 m/min',
      'descend at 18 m/min',
      'Write a depth after it, such as “descend to 30 m” or “descend to 100 ft”.',
    ],
    ['descend to 40 m at 18 m/min at 9 m/min', 'at 9 m/min', 'Give one rate or time.'],
    ['descend to 400 m at 18 m/min', '400 m', 'Write at most 350 m.'],
    ['descend to 40 m at 300 m/min', '300 m/min', 'Write at most 200 m/min.'],
    ['descend to 40 m in 1 s', '1 s', 'Give it more time: at most 200 m/min.'],
    ['descend to 20 m at 18 m/min', '20 m', 'Write “ascend” to go there, or another depth.'],
    ['ascend to 40 m at 18 m/min', '40 m', 'Write “descend” to go there, or another depth.'],
    ['descend to 30 m at 18 m/min', '30 m', 'Write “stay” and a time to wait there, or leave this line out.'],
    ['stay', 'stay', 'Write “stay 20 min”.'],
    ['stay 20', '20', 'Write 20 min or 20 s.'],
    ['stay 0 min', '0 min', 'Write a time of at least a second.'],
    ['stay -3 min', '-3 min', 'Write 3 min.'],
    ['stay 8 days', '8 days', 'Write at most 168 h.'],
    ['stay 20 min  please # now', 'please', 'Write a time such as 20 min, 2 min 50 s or 2:50.'],
    [
      'stay at 30 m for 3 min',
      'at 30 m',
      'Write “stay 3 min”: it is where the step before ended. Go there first, in a step of its own.',
    ],
    ['switch to 150%', '150%', 'Write at most 100%.'],
    ['switch to 50/60', '50/60', 'Write oxygen first, then helium, such as 18/45.'],
    ['switch to 32', '32', 'Write 32% for its oxygen.'],
    ['switch to 0.32', '0.32', 'Write 32% for its oxygen.'],
    ['switch to trimix 18', 'trimix 18', 'Write oxygen and helium, such as 18/45.'],
    ['switch to 50% at 21 m', 'at 21 m', 'Change depth in a step of its own, then switch there.'],
    ['interval 60 min', 'interval', 'Put “ascend to surface at 9 m/min” before it.'],
    ['water: salt', 'water', 'Move this line above line 1.'],
    ['gas: 50%', 'gas', 'Move this line above line 1, or write “switch to …” to change it here.'],
  ])('%s', (line, at, mend) => {
    expect(errorIn(AROUND(line))).toMatchObject({ line: 2, at, mend });
  });

  it.each([
    ['water: slat', 'slat', 'Did you mean “salt”?'],
    ['water: lava', 'lava', 'Write reference, fresh or salt.'],
    ['water:', 'water', 'Write “water: reference”.'],
    ['wter: salt', 'wter', 'Did you mean “water”?'],
    ['altitude: 9000 m', '9000 m', 'Write at most 6000 m.'],
    ['altitude: 1,500 m', '1,500 m', 'Write 1500 m or 1.5 m.'],
    ['gradient factors: 85/30', '85/30', 'Write 30/85.'],
    ['gradient factors: 85', '85', 'Write low/high in percent, such as 85/85.'],
    ['gradient factors: 0.3/0.85', '0.3/0.85', 'Write gradient factors in percent, such as 30/85.'],
    ['gradient factors: 85/120', '85/120', 'Write at most 100.'],
    ['gradient factors: 85/100.1', '85/100.1', 'Write at most 100.'],
    ['gradient factors: 0.99/85', '0.99/85', 'Write gradient factors in percent, such as 30/85.'],
    ['arrived from: 0 m', '0 m', 'Write an altitude and a time, such as 0 m, 2 h ago.'],
    ['arrived from: 0 m, 2 weeks ago', '2 weeks', 'Write s, min, h or days.'],
    ['arrived from: 0 m, 2:30 ago', '2:30', 'Write 2 h 30 min, or 2 min 30 s.'],
    ['model: linear', 'linear', 'Write ZH-L16A, ZH-L16B or ZH-L16C.'],
    ['respiratory quotient: 2', '2', 'Write at most 1.2.'],
    ['carry: 50% from 21 m, 120% from 6 m', '120%', 'Write at most 100%.'],
    ['carry: 50% from 21 m, oxygen from 6', '6', 'Write 6 m or 20 ft.'],
    ['carry: 50% from 21 m, 50%', '50%', 'Keep one of the two.'],
    ['plan ascent: 90 m/min', '90 m/min', 'Write at most 60 m/min.'],
    ['stop step: 0.5 m', '0.5 m', 'Write 1 m or more.'],
    ['stop rounding: 10 min', '10 min', 'Write at most 5 min.'],
    ['stop rounding: 0 min', '0 min', 'Write a time such as 1 min or 1 s.'],
    ['stop rounding: 2', '2', 'Write 2 min or 2 s.'],
    ['last stop: 3', '3', 'Write 3 m or 10 ft.'],
    ['plan ascent: 9', '9', 'Write 9 m/min or 30 ft/min.'],
    ['plan descent: 90 m/min', '90 m/min', 'Write at most 60 m/min.'],
  ])('%s', (line, at, mend) => {
    const error = errorIn(`# a remark\n${line}`);
    expect(error).toMatchObject({ line: 2, mend });
    expect(error!.at.trim()).toBe(at);
  });

  it.each([
    [
      'descend to 0.0000001 m at 200 m/min',
      'The diver is at the surface, and a change of depth as small as this is over in no time.',
    ],
    ['descend to 30 m in 5 s', 'That is 360 m/min, faster than this model takes.'],
    ['descend to 30 m\nascend to 40 m', 'The diver is at 30 m, not as deep as this ascent ends.'],
    ['descend to 30 m\ndescend to 20 m', 'The diver is at 30 m, deeper than this descent goes.'],
    ['descend to 30 m\ndescend to 30 m', 'The diver is at 30 m already.'],
    ['ascend to surface', 'The diver is at the surface already.'],
    ['descend to 9 m\ninterval 5 min', 'The diver is at 9 m, and an interval is at the surface.'],
    ['descend to 9 m\nstay 5 min', 'The script ends with the diver at 9 m.'],
  ])('%s: %s', (text, message) => expect(errorsOf(text).map((error) => error.message)).toContain(message));

  it('names the gradient factor that is too little or too much', () => {
    expect(errorIn('gradient factors: 0.99/85')!.message).toBe('“0.99” is less than 1%.');
    expect(errorIn('gradient factors: 85/120')!.message).toBe('“120” is more than 100%.');
  });

  it('picks a line apart no further than its sixth part', () => {
    const parts = Array.from({ length: 8 }, (_, i) => `at ${i + 1} m`);
    const told = errorsOf(`stay 5 min ${parts.join(' ')}`).find(({ mend }) => mend === 'Write one step on a line.');
    expect(told!.message).toBe('“at 6 m at 7 m at 8 m” does not fit in this step.');
  });

  it('says on which line a setting was given before', () => {
    expect(errorIn('water: salt\naltitude: 0 m\nwater: fresh')).toMatchObject({
      line: 3,
      message: '“water” is already set on line 1.',
      mend: 'Keep one of the two lines.',
    });
    expect(errorIn('adapted to: 0 m\narrived from: 0 m, 2 h ago')).toMatchObject({
      line: 2,
      message: '“arrived from” and “adapted to” on line 1 say the same thing two ways.',
    });
    expect(errorIn('carry: 50% from 21 m\ncarry: 50% from 18 m')).toMatchObject({
      line: 2,
      message: '50% is carried twice.',
    });
  });

  it('wants the diver back at the surface', () => {
    expect(errorIn('descend to 100 ft at 60 ft/min\nstay 5 min # then up')).toMatchObject({
      line: 2,
      at: 'min',
      message: 'The script ends with the diver at 100 ft.',
      mend: 'Add “ascend to surface at 30 ft/min” at the end.',
    });
  });

  it('collects every mistake, in order, and does not guess depths after a line it could not read', () => {
    const lines = errorsOf(
      'gas: 200%\ndesend to 30 m at 18 m/min\nascend to 5 m at 9 m/min\nstay 3\nascend to 5 m at 9 m/min',
    ).map(({ line }) => line);
    expect(lines).toEqual([1, 2, 4, 5, 5]);
  });

  it('adds up the whole script', () => {
    expect(errorsOf('interval 6 days\ninterval 1 day')).toEqual([]);
    expect(errorIn('interval 6 days\ninterval 2 days\ninterval 1 day')).toMatchObject({
      line: 2,
      mend: 'Shorten it to 7 days in all.',
    });
    expect(errorsOf('interval 6 days\ninterval 2 days\ninterval 1 day')).toHaveLength(1);
  });

  it('refuses a script too long to read', () => {
    expect(errorsOf('\n'.repeat(MOST_LINES))).toHaveLength(1);
    expect(errorsOf('\n'.repeat(MOST_LINES - 1))).toEqual([]);
    expect(errorsOf('#'.repeat(MOST_CHARACTERS + 1))).toHaveLength(1);
    expect(errorIn(`stay ${' '.repeat(2000)}3 min`)!.mend).toBe(
      'Break it into several lines, or put # before a remark.',
    );
  });
});
