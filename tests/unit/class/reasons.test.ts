import { describe, expect, it } from 'vitest';
import { isRight } from '@/lib/class/reasons';
import { choiceTruth, numberTruth } from './asks';

describe('an answer of a class', () => {
  it('by a number is right as far from the true one as is allowed, and no farther', () => {
    const right = [8.9, 9, 11, 13, 13.1].map((value) => isRight({ by: 'number', value }, numberTruth));
    expect(right).toEqual([false, true, true, true, false]);
  });

  it('by a choice is right where it is the one, and neither where none of them is', () => {
    expect([0, 1].map((option) => isRight({ by: 'choice', option }, choiceTruth))).toEqual([false, true]);
    expect(isRight({ by: 'choice', option: 1 }, { by: 'choice' })).toBeUndefined();
  });
});
