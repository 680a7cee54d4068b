import { describe, expect, it } from 'vitest';
import { saySupplyEvent, type OutOfGas } from '@/lib/exposure/supply-events';
import { partNeeds } from '@/lib/exposure/gas-need';

const AIR = { o2: 0.21, he: 0 };
const oneDive = { legs: [] };
const event: OutOfGas = {
  kind: 'out-of-gas',
  timeS: 600,
  depthM: 20,
  cylinder: 'back',
  gas: AIR,
  idealS: 600.5,
  realS: 600,
  next: null,
};
const said = (changed: Partial<OutOfGas>) => saySupplyEvent({ ...event, ...changed }, oneDive, 'metric');

describe('a cylinder that is empty', () => {
  const EMPTY = 'At 10:00 the cylinder “back” is empty: you can’t draw any more from it at 20 m, and';

  it('is told once where both gas laws say so within a second', () =>
    expect(said({})).toBe(`${EMPTY} no other air is left.`));

  it('is told by the law that counts less gas, and what the other one says', () => {
    expect(said({ idealS: 601.5 })).toBe(
      `${EMPTY} no other air is left. That is as a real gas; as an ideal gas it would last until 10:01.`,
    );
    expect(said({ idealS: 600, realS: 725, next: 'pony' })).toBe(
      `${EMPTY} you go on from “pony”. That is as an ideal gas; as a real gas it would last until 12:05.`,
    );
    expect(said({ idealS: null })).toContain('That is as a real gas; as an ideal gas it would last the dive.');
    expect(said({ idealS: 600, realS: null })).toContain(
      'That is as an ideal gas; as a real gas it would last the dive.',
    );
  });
});

it('each part of a way takes the gas of its own phase, at the pressure half way along', () => {
  const rates = { descent: 10, bottom: 1, ascent: 20, stops: 30 };
  const site = { surfaceBar: 1, barPerMetre: 0.1 };
  const part = (fromM: number, toM: number) => ({ fromM, toM, minutes: 2, gas: AIR });
  const needs = partNeeds([part(10, 30), part(30, 10), part(10, 10)], rates, site, 1.5);
  // times · L/min · bar · min.
  expect(needs.map(({ litres }) => litres)).toEqual(
    [1.5 * 10 * 3 * 2, 1.5 * 20 * 3 * 2, 1.5 * 30 * 2 * 2].map((litres) => expect.closeTo(litres, 9)),
  );
});
