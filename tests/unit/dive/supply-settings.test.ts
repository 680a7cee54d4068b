import { describe, expect, it } from 'vitest';
import { settingsSchema } from '@/lib/dive/dive';
import { parseScript, writeScript } from '@/lib/dive/script';
import { diveOf } from '../read';

const AIR = { o2: 0.21, he: 0 };

function supplyOf(text: string) {
  const dive = diveOf(text);
  expect(settingsSchema.safeParse(dive.settings).error).toBeUndefined();
  return dive.settings.supply;
}

function errorOf(text: string) {
  const parsed = parseScript(text);
  if (parsed.ok) throw new Error('it reads');
  const [{ line, column, endColumn, message, mend }] = parsed.errors as [(typeof parsed.errors)[number]];
  return { at: text.split('\n')[line - 1]!.slice(column - 1, endColumn - 1), message, mend };
}

describe('cylinders in a script', () => {
  it('are none unless written', () => {
    expect(supplyOf('water: salt')).toBeUndefined();
  });

  it('have a name, a water volume, a pressure and a gas', () => {
    expect(supplyOf('cylinder: back, 12 L, 200 bar, air')).toEqual({
      cylinders: [{ name: 'back', waterL: 12, workingBar: 200, startBar: 200, gas: AIR }],
      consumption: {},
    });
  });

  it('hold the gas the dive begins on unless told', () => {
    expect(supplyOf('cylinder: back, 12 L, 200 bar\ngas: 32%')!.cylinders[0]!.gas).toEqual({ o2: 0.32, he: 0 });
  });

  it('may be several, on one line or more, and several on one valve', () => {
    const both = [
      { name: 'back', waterL: 24, workingBar: 232, startBar: 210, gas: { o2: 0.18, he: 0.45 } },
      { name: 'left stage', waterL: 11.1, workingBar: 200, startBar: 200, gas: { o2: 0.5, he: 0 } },
    ];
    expect(
      supplyOf('cylinder: back, 2 x 12 L at 232 bar, 210 bar, 18/45; left stage, 11,1 L, 200 bar, 50%')!.cylinders,
    ).toEqual(both);
    expect(
      supplyOf('cylinder: back, 2×12 L at 232 bar, 210 bar, 18/45\ncylinder: left stage, 11.1 L, 200 bar, 50%')!
        .cylinders,
    ).toEqual(both);
  });

  it('in cubic feet are told by the gas they hold at their working pressure', () => {
    // 80 ft³ · 28.3168 L/ft³ · 14.696 psi / 3000 psi = 11.10 L of water, by Boyle's law.
    const [cylinder] = supplyOf('cylinder: back, 80 cu ft at 3000 psi, 2800 psi, air')!.cylinders;
    expect(cylinder!.waterL).toBeCloseTo(11.097, 3);
    expect(cylinder!.startBar).toBeCloseTo(193.05, 2);
    expect(cylinder!.workingBar).toBeCloseTo(206.84, 2);
  });

  it.each([
    ['cylinder: back', 'back', 'Write its name, volume, pressure and gas, such as back, 12 L, 200 bar, air.'],
    ['cylinder: back, 12, 200 bar, air', '12', 'Write 12 L or 0.4 cu ft.'],
    ['cylinder: back, 12 L, 200, air', '200', 'Write 200 bar or 2901 psi.'],
    ['cylinder: back, 12 L, 200 bar, airr', 'airr', 'Write air, oxygen, 32% or 18/45 (oxygen and helium in percent).'],
    [
      'cylinder: back, 12 L, 200 bar, air;',
      'cylinder',
      'Write its name, volume, pressure and gas, such as back, 12 L, 200 bar, air.',
    ],
    [
      'cylinder: back, 12 L at 200 bar, 232 bar',
      '232 bar',
      'Write at most the pressure after “at”, or another one there.',
    ],
    ['cylinder: back, 80 cu ft, 3000 psi', '80 cu ft', 'Add its working pressure, such as 80 cu ft at 3000 psi.'],
    ['cylinder: back, 12 L at 232, 200 bar', '232', 'Write 232 bar or 3365 psi.'],
    ['cylinder: back, 0 L, 200 bar', '0 L', 'Write 0.1 L of water or more.'],
    ['cylinder: back, 200 L, 200 bar', '200 L', 'Write at most 100 L of water.'],
    ['cylinder: back, 12 L, 900 bar', '900 bar', 'Write at most 450 bar.'],
    ['cylinder: back, 12 L, 0 bar', '0 bar', 'Write 1 bar or more.'],
    ['cylinder: a, 12 L, 200 bar; a, 7 L, 200 bar', 'a, 7 L, 200 bar', 'Give each a name of its own.'],
    ['cylinder: a, 12 L, 200 bar\ncylinder: a, 7 L, 200 bar', 'a, 7 L, 200 bar', 'Give each a name of its own.'],
  ])('%s points at what is wrong and how to mend it', (text, at, mend) => {
    if (at === 'cylinder') expect(errorOf(text).mend).toBe(mend);
    else expect(errorOf(text)).toMatchObject({ at, mend });
  });
});

describe('breathing in a script', () => {
  it('is one rate, or one for each phase', () => {
    expect(
      supplyOf(
        'consumption: 18 L/min\nconsumption going down: 20 L/min\nconsumption going up: 17 L/min\nconsumption at stops: 15 L/min',
      )!.consumption,
    ).toEqual({
      bottomLMin: 18,
      descentLMin: 20,
      ascentLMin: 17,
      stopsLMin: 15,
    });
    expect(supplyOf('consumption stops: 15 L/min')!.consumption).toEqual({ stopsLMin: 15 });
    expect(supplyOf('stress factor: 2,5')!.stressFactor).toBe(2.5);
  });

  it('takes cubic feet', () => {
    expect(supplyOf('consumption: 0.5 cu ft/min')!.consumption.bottomLMin).toBeCloseTo(14.158, 3);
    expect(supplyOf('consumption: 0.5 cubic feet per minute')!.consumption.bottomLMin).toBeCloseTo(14.158, 3);
  });

  it.each([
    ['consumption: 20', '20', 'Write 20 L/min or 0.71 cu ft/min.'],
    ['consumption: 20 L', 'L', 'Write L/min or cu ft/min.'],
    ['consumption: 0 L/min', '0 L/min', 'Write a rate such as 20 L/min or 0.7 cu ft/min.'],
    ['consumption: 900 L/min', '900 L/min', 'Write at most 200 L/min.'],
    ['stress factor: 0.5', '0.5', 'Write 1 or more.'],
  ])('%s points at what is wrong and how to mend it', (text, at, mend) => {
    const error = errorOf(text);
    expect(error.mend).toBe(mend);
    expect(text).toContain(at);
  });
});

it('a supply written as a script and read again is the same', () => {
  const text = `water: reference
altitude: 0 m
gradient factors: 85/85
gas: 18/45
cylinder: back, 24 L at 232 bar, 210 bar, 18/45; stage, 11.1 L, 200 bar, 50%
consumption: 18 L/min
consumption at stops: 15 L/min
stress factor: 2.5
`;
  expect(writeScript({ ...diveOf(text), lines: [] })).toBe(text);
});
