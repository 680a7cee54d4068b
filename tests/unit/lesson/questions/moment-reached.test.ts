import { describe, expect, it } from 'vitest';
import { momentReached } from '@/lib/lesson/questions/moment-reached';

const moments = [{ atS: 60 }, { atS: 100 }];

describe('the moment a playing dive comes to', () => {
  it.each([
    ['from far off', 52, 61, 0],
    ['from a hair before it', 59.99, 63.99, 0],
    ['on the very second', 59, 60, 0],
    ['the first of two in one look', 10, 500, 0],
    ['the second, from waiting at the first', 60, 101, 1],
    ['none, between two', 60.01, 99.9, -1],
    ['none, after the last', 100, 300, -1],
  ])('is found %s', (_, beforeS, nowS, index) => {
    expect(momentReached(moments, beforeS, nowS)).toBe(index);
  });
});
