import { describe, expect, it } from 'vitest';
import { judgeAmount, judgeCondition } from '@/lib/lesson/questions/judge';
import { parseExpression } from '@/lib/lesson/expression/parse-expression';
import { withValues } from '@/lib/lesson/expression/world';
import { THIRTY, TWO_DIVES, worldFor } from '../made-lessons';

const world = worldFor(THIRTY, { two: TWO_DIVES });

function value(source: string): number {
  const amount = judgeAmount(source, world);
  if (!amount.ok) throw new Error(`${source}: ${amount.what}`);
  return amount.value.value;
}

function refusal(source: string): string {
  const amount = judgeAmount(source, world);
  return amount.ok ? `came to ${amount.value.value}` : `${amount.what} ${amount.mend}`;
}

describe('the language of goals and answers', () => {
  it.each([
    ['2 + 3 * 4', 14],
    ['(2 + 3) * 4', 20],
    ['2 − 3 × 4', -10],
    ['-2 + 5', 3],
    ['10 - 4 - 3', 3],
    ['12 / 3 / 2', 2],
    ['max(1, 2, 3) + min(4, 5)', 7],
    ['abs(-2.5)', 2.5],
    ['floor(2.999999999999)', 3],
    ['ceil(2.000000000001)', 2],
    ['round(2.5)', 3],
  ])('%s is %d', (source, expected) => {
    expect(value(source)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['noStopMin at 5 s > 99 min', true],
    ['noStopMin at 5 s <= 99 min', false],
    ['noStopMin at 5 s == noStopMin at 5 s', true],
    ['noStopMin at 5 s != 99 min', true],
  ])('%s is %s: a time without end is longer than any other', (source, so) => {
    expect(judgeCondition(source, world)).toEqual({ ok: true, value: so });
  });

  it.each([
    ['100 ft', 30.48],
    ['90 s', 1.5],
    ['1 h 10 min', 70],
    ['2 h', 120],
    ['30 ft/min', 9.144],
    ['50 % * 30 m', 15],
    ['9 m/min * 2 min', 18],
    ['(30 m) / (18 m/min)', 5 / 3],
    ['(30 m) / (10 m)', 3],
  ])('%s is %d in the unit of expressions', (source, expected) => {
    expect(value(source)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['maxDepthM == 30', true],
    ['maxDepthM == 30 m', true],
    ['maxDepthM < 100 ft', true],
    ['not maxDepthM > 30', true],
    ['maxDepthM > 30 or bottomMin > 10', true],
    ['maxDepthM > 30 and bottomMin > 10', false],
    ['(maxDepthM > 30 or bottomMin > 10) and not diveCount == 2', true],
    ['maxDepthM ≥ 30 and maxDepthM ≠ 31', true],
  ])('%s is %s', (source, expected) => {
    expect(judgeCondition(source, world)).toEqual({ ok: true, value: expected });
  });

  it('takes a moment in any of its forms', () => {
    // The descent ends at 1:40, the bottom is left at 21:40, and 30 m are 2:46.67, 3:00 and 0:33.3 from the surface.
    expect(value('depthM at arrival')).toBeCloseTo(30, 9);
    expect(value('depthM at 50 s')).toBeCloseTo(15, 9);
    expect(value('depthM at 1 min after leaving')).toBeCloseTo(21, 9);
    expect(value('depthM at 50 s before arrival')).toBeCloseTo(15, 9);
    expect(value('depthM at surfacing')).toBe(0);
    expect(value('ceilingM at first ceiling-clears')).toBeGreaterThan(0);
    expect(value('depthM at (1 min + 40 s)')).toBeCloseTo(30, 9);
  });

  it('asks another script, another dive of the day and another unit', () => {
    expect(value('maxDepthM of two')).toBe(12);
    expect(value('maxDepthM in dive 1 of two')).toBe(18);
    expect(
      value('(noStopMin at arrival in dive 1 of two on "Rental unit") - (noStopMin at arrival in dive 1 of two)'),
    ).toBeGreaterThan(10);
  });

  it('knows values that are given to it', () => {
    const inside = withValues(world, {
      depth: { value: 18, dimension: 'depth' },
      wait: { value: 2, dimension: 'time' },
    });
    expect(judgeAmount('depth + 3 m', inside)).toEqual({ ok: true, value: { value: 21, dimension: 'depth' } });
    expect(judgeAmount('depthM at wait after arrival', inside)).toMatchObject({ ok: true });
  });

  it.each([
    ['', 'The expression ends too early. Write a number or a fact here.'],
    ['2 +', 'The expression ends too early. Write a number or a fact here.'],
    ['(2 + 3', 'The expression ends too early. Close the parenthesis with ).'],
    ['maxDepthM = 30', 'A single = says nothing here. Write == to compare.'],
    ['1 < 2 < 3', 'Two comparisons in a row are not understood. Write a <= b and b <= c.'],
    ['maxDepthM >= 30', 'This is a condition where a number is needed. Take the comparison out.'],
    ['maxDepth', '“maxDepth” is not a fact that is known here. Did you mean maxDepthM?'],
    ['noStopMin', 'noStopMin changes over the dive, and no moment is given. Write when, such as noStopMin at leaving.'],
    ['maxDepthM at 3 min', 'maxDepthM has one value for a whole dive, not for a moment. Write maxDepthM without at.'],
    ['noStopMin at 30 m', 'This is a depth where a time is needed. Write a value in min.'],
    ['maxDepthM + bottomMin', 'This adds a depth and a time. Use values of one kind.'],
    [
      'maxDepthM * bottomMin',
      'No unit is known here for a depth times a time. Multiply and divide by plain numbers, or divide like by like.',
    ],
    ['bottomMin / 0', 'This divides by nothing. Ask for something this dive has.'],
    ['tensionBar(17) at arrival', 'This is not the number of a compartment. Write a whole number from 1 to 16.'],
    ['tensionBar at arrival', 'tensionBar takes one value in parentheses. Write tensionBar(5).'],
    ['highest stopM', 'stopM is not worked out for every moment. Ask for it at a moment, such as stopM at leaving.'],
    ['count(stop-owd)', '“stop-owd” is not an event that is known here. Did you mean stop-owed?'],
    ['maxDepthM of three', 'There is no script called “three”. Write one of main, two.'],
    [
      'maxDepthM on "Rental unit"',
      'The script has no unit called “Rental unit”. Add a line such as setup: Rental unit to the script.',
    ],
    ['maxDepthM in dive 3 of two', 'This script has no dive 3. Ask for something this dive has.'],
    ['noStopMin at 50 min', 'The script ends at 28:00, before 50:00. Ask for something this dive has.'],
    ['depthM at 5 min at 6 min', '“at” is said twice of one fact. Keep one of the two.'],
    ['maxDepthM & 3', '“&” is not known here. Write and, or.'],
    ['process.exit()', '“.” does not belong here. Expressions have numbers, facts and + - * / ( ) only.'],
    ['constructor', '“constructor” is not a fact that is known here. Take one from the table of facts.'],
    ['maxDepthM of __proto__', '“_” is not known here. Expressions have numbers, facts and + - * / ( ) only.'],
  ])('refuses “%s” and says how to mend it', (source, expected) => {
    expect(refusal(source)).toBe(expected);
  });

  it('points at the place that is wrong', () => {
    const parsed = parseExpression('bottomMin >= 12 and = 3');
    expect(parsed).toMatchObject({ ok: false, at: [20, 21] });
  });

  it('is bounded: nothing too long, too deep or too large is read', () => {
    expect(refusal('1 + '.repeat(200) + '1')).toContain('too long');
    expect(refusal(`${'('.repeat(60)}1${')'.repeat(60)}`)).toContain('too many parentheses');
    expect(refusal('- '.repeat(190) + '1')).toMatch(/too long|came to/);
  });

  it('finds a mistake also where it would not be reached', () => {
    expect(judgeCondition('maxDepthM > 100 and nonsense > 3', world)).toMatchObject({ ok: false, cause: 'wording' });
  });

  it('tells a mistake of wording from a value this dive does not have', () => {
    expect(judgeCondition('maxDepthM at 3 min > 2', world)).toMatchObject({ ok: false, cause: 'wording' });
    expect(judgeCondition('noStopMin at 50 min > 2', world)).toMatchObject({ ok: false, cause: 'no value' });
  });
});
