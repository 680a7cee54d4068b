import { describe, expect, it } from 'vitest';
import { reserveFor } from '@/lib/exposure/reserve';
import { turnPressure } from '@/lib/exposure/turn-pressure';
import { scripted } from './scripted';

const SHORT = ['descend to 30 m at 30 m/min', 'stay 5 min', 'ascend to surface at 9 m/min'];
const LONG = ['descend to 30 m at 30 m/min', 'stay 30 min', 'ascend to surface at 9 m/min'];

describe('the reserve for two divers', () => {
  it('is a minute at depth and the ascent, twice, twice as fast as usual', () => {
    const reserve = reserveFor(scripted('cylinder: back, 12 L, 200 bar, air', ...SHORT));
    expect(reserve.schedule.stops).toEqual([]);
    // 4 · 20 L/min · (1 min · 4.01325 bar + 30/9 min · 2.51325 bar)
    const litres = 80 * (4.01325 + (30 / 9) * 2.51325);
    expect(reserve.needs).toEqual([
      {
        gas: { o2: 0.21, he: 0 },
        litres: expect.closeTo(litres, 6),
        idealBar: expect.closeTo(litres / 12, 6),
        realBar: expect.any(Number),
        enough: true,
      },
    ]);
    expect(reserve).toMatchObject({ depthM: 30, sharingMin: 1, divers: 2, stressFactor: 2 });
  });

  it('counts the stops the model asks for, from the end of the sharing', () => {
    const reserve = reserveFor(scripted('cylinder: back, 12 L, 200 bar, air', ...LONG));
    expect(reserve.schedule.stops.length).toBeGreaterThan(0);
    const stops = reserve.parts.filter(({ fromM, toM }) => fromM === toM).slice(1);
    expect(stops.map(({ toM, minutes }) => [toM, minutes])).toEqual(
      reserve.schedule.stops.map(({ depthM, minutes }) => [depthM, minutes]),
    );
    const later = reserveFor(scripted('cylinder: back, 12 L, 200 bar, air', ...LONG), { sharingMin: 6 });
    expect(later.schedule.timeToSurfaceMin).toBeGreaterThan(reserve.schedule.timeToSurfaceMin);
  });

  it('goes by the breathing of each phase, and by what is asked for instead', () => {
    const dive = scripted('consumption: 10 L/min', 'consumption going up: 5 L/min', 'stress factor: 3', ...SHORT);
    expect(reserveFor(dive).needs[0]!.litres).toBeCloseTo(6 * (10 * 4.01325 + 5 * (30 / 9) * 2.51325), 6);
    expect(reserveFor(dive, { stressFactor: 1, divers: 1 }).needs[0]!.litres).toBeCloseTo(
      10 * 4.01325 + 5 * (30 / 9) * 2.51325,
      6,
    );
  });

  it('is told by gas, each from its own cylinders down to the pressure of where it is last breathed', () => {
    const dive = scripted(
      'gas: 18/45',
      'carry: 50% from 21 m',
      'gradient factors: 30/80',
      'cylinder: back, 24 L, 200 bar; left, 11 L, 200 bar, 50%',
      'descend to 50 m at 18 m/min',
      'stay 20 min',
      'ascend to surface at 9 m/min',
    );
    const [bottom, rich] = reserveFor(dive).needs;
    expect(bottom).toMatchObject({ gas: { o2: 0.18, he: 0.45 } });
    expect(bottom!.idealBar).toBeCloseTo(bottom!.litres / 24 + 2.1, 9);
    expect(rich).toMatchObject({ gas: { o2: 0.5, he: 0 } });
    expect(rich!.idealBar).toBeCloseTo(rich!.litres / 11, 9);
  });

  it('says when the cylinders do not hold it, or none does', () => {
    expect(reserveFor(scripted('cylinder: small, 3 L, 100 bar, air', ...LONG)).needs[0]!.enough).toBe(false);
    expect(reserveFor(scripted(...LONG)).needs[0]).toMatchObject({ idealBar: null, realBar: null, enough: false });
  });

  it('has no end where the ascent has none', () => {
    // On air at 10 m the tissues settle above what a limit of 1% lets surface.
    const dive = scripted(
      'gas: air',
      'gradient factors: 1/1',
      'last stop: 10 m',
      'descend to 40 m at 18 m/min',
      'stay 60 min',
      'ascend to surface at 9 m/min',
    );
    const reserve = reserveFor(dive);
    expect(reserve.schedule.timeToSurfaceMin).toBe(Infinity);
    expect(reserve.needs[0]!.litres).toBe(Infinity);
    expect(reserve.needs[0]!.enough).toBe(false);
  });
});

describe('the turn pressure', () => {
  it('shares what is above the reserve by the rule chosen', () => {
    expect(turnPressure('all usable', 200, 60)).toMatchObject({ turnBar: 60, usableBar: 140, coversReserve: true });
    expect(turnPressure('halves', 200, 60).turnBar).toBe(130);
    expect(turnPressure('thirds', 210, 60).turnBar).toBe(140);
  });

  it('never lets thirds eat into the reserve', () => {
    const { turnBar } = turnPressure('thirds', 210, 110);
    expect(turnBar).toBe(160);
    // Back where the way out began, the reserve is all there.
    expect(turnBar - (210 - turnBar)).toBe(110);
  });

  it('is covered by a cylinder that holds the reserve and not a bar more', () => {
    expect(turnPressure('all usable', 80, 80)).toMatchObject({ turnBar: 80, usableBar: 0, coversReserve: true });
  });

  it('is the start itself when the cylinder does not even hold the reserve', () => {
    expect(turnPressure('halves', 50, 80)).toEqual({ rule: 'halves', turnBar: 50, usableBar: 0, coversReserve: false });
  });
});
