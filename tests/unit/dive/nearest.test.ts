import { expect, it } from 'vitest';
import { nearest } from '@/lib/dive/script/nearest';

it.each([
  ['a letter wrong', 'desgend', 'descend'],
  ['a letter missing', 'desend', 'descend'],
  ['a letter too many', 'desscend', 'descend'],
  ['two neighbours swapped, which is one slip', 'tsay', 'stay'],
  ['two slips in seven letters', 'dezzend', 'descend'],
])('with %s a word is still known', (_, typed, meant) =>
  expect(nearest(typed, ['ascend', 'descend', 'stay', 'switch'])).toBe(meant),
);

it('no more than a third of the letters may be wrong', () => {
  expect(nearest('sta', ['stay'])).toBe('stay');
  expect(nearest('st', ['stay'])).toBeUndefined();
  expect(nearest('abcdef', ['abcdxy'])).toBe('abcdxy');
  expect(nearest('abcdef', ['abcxyz'])).toBeUndefined();
  expect(nearest('', ['no', 'yes'])).toBeUndefined();
});

it('of two the one with fewer slips is meant, and of two with as many the first', () => {
  expect(nearest('salty water', ['salt water', 'fresh water'])).toBe('salt water');
  expect(nearest('abcdef', ['abcdex', 'abcdef'])).toBe('abcdef');
  expect(nearest('abcdef', ['abcdxf', 'abcdex'])).toBe('abcdxf');
});
