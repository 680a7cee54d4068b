import { expect, it } from 'vitest';
import { legsOf } from '@/lib/dive/legs';
import { wayUpOf } from '@/lib/dive/way-up';
import { diveOf, down, rest, stay, up } from '../rules/made-dives';

const steps = [
  down(20, 60),
  stay(300),
  up(10, 60),
  down(20, 60),
  stay(60),
  up(0, 120),
  rest(3600),
  down(9, 60),
  up(0, 60),
];
const legs = legsOf(diveOf([...steps, rest(600)]));

it('the way up of each dive of a day leaves its deepest point for the last time, and ends at the surface', () => {
  expect(wayUpOf(legs, 0)).toEqual({ startS: 540, endS: 660 });
  expect(wayUpOf(legs, 1)).toEqual({ startS: 4320, endS: 4380 });
});

it('there is none where the surface was never left', () => {
  expect(wayUpOf(legs, 2)).toBeUndefined();
  expect(wayUpOf(legsOf(diveOf([stay(60)])), 0)).toBeUndefined();
});

it('a dive of less than a metre has one', () =>
  expect(wayUpOf(legsOf(diveOf([down(0.5, 60), up(0, 30)])), 0)).toEqual({ startS: 60, endS: 90 }));
