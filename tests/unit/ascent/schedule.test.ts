import { describe, expect, it } from 'vitest';
import { ascentPlanner, type AscentStart } from '@/lib/ascent/plan/schedule';
import { ALL_NITROGEN, PLAIN_SITE, plainLoad } from './plain-model';

const PLAN = { ascentMMin: 60, stopStepM: 3, lastStopM: 3, stopRoundingMin: 1 };
const settings = { plan: PLAN, gradientFactors: { low: 1, high: 1 }, carried: [], gas: ALL_NITROGEN };
const start = (depthM: number, nitrogenBar: number): AscentStart => ({
  ...plainLoad(nitrogenBar),
  depthM,
  gas: ALL_NITROGEN,
  anchorM: 0,
});
const depthsAndTimes = (stops: readonly { depthM: number; minutes: number }[]) =>
  stops.map(({ depthM, minutes }) => [depthM, minutes]);

describe('a schedule where twice the ambient pressure is tolerated', () => {
  it('from 30 m, saturated, stops as worked by hand', () => {
    // Ceiling at 2 bar, so the first stop is 12 m. From each stop the next depth must be tolerated on arrival:
    // 12 m: 2.2 + 1.8·2^(−t/10) ≤ 3.8 after 1.7 min, so 2; 9 m: 5.2, so 6; 6 m: 6.2, so 7; 3 m: 8.3, so 9.
    // Climbs are made to take no time.
    const instantly = { ...settings, plan: { ...PLAN, ascentMMin: 1e9 } };
    const { stops, timeToSurfaceMin } = ascentPlanner(instantly, PLAIN_SITE)(start(30, 4));
    expect(depthsAndTimes(stops)).toEqual([
      [12, 2],
      [9, 6],
      [6, 7],
      [3, 9],
    ]);
    expect(timeToSurfaceMin).toBeCloseTo(24, 6);
  });

  it('needs no stop while the surface is tolerated', () => {
    const { stops, parts, timeToSurfaceMin } = ascentPlanner(settings, PLAIN_SITE)(start(9, 1.9));
    expect(stops).toEqual([]);
    expect(parts).toHaveLength(3);
    expect(timeToSurfaceMin).toBeCloseTo(9 / 60, 12);
  });

  it('is empty at the surface', () =>
    expect(ascentPlanner(settings, PLAIN_SITE)(start(0, 1))).toEqual({
      stops: [],
      parts: [],
      timeToSurfaceMin: 0,
      anchorM: 0,
    }));

  it('begins with the way down where the diver is above the ceiling', () => {
    const { parts, stops } = ascentPlanner(settings, PLAIN_SITE)(start(5, 4));
    expect(parts[0]).toMatchObject({ fromM: 5, toM: 12 });
    expect(stops[0]!.depthM).toBe(12);
  });

  it('comes back from the surface for an omitted stop', () => {
    const { parts, stops } = ascentPlanner(settings, PLAIN_SITE)(start(0, 2.5));
    expect(parts[0]).toMatchObject({ fromM: 0, toM: 3 });
    expect(depthsAndTimes(stops)).toEqual([[3, 8]]);
  });

  it('goes down to the nearest stop when the next can’t be reached from between two', () => {
    const { parts } = ascentPlanner(settings, PLAIN_SITE)(start(10.5, 4));
    expect(parts[0]).toMatchObject({ fromM: 10.5, toM: 12 });
  });

  it('with the last stop at 6 m climbs from there to the surface', () => {
    const { stops } = ascentPlanner({ ...settings, plan: { ...PLAN, lastStopM: 6 } }, PLAIN_SITE)(start(30, 4));
    expect(stops.map(({ depthM }) => depthM)).toEqual([12, 9, 6]);
  });

  it('holds a stop for whole units, two minutes long if the plan says so, also of who came to it this moment', () => {
    const { stops } = ascentPlanner({ ...settings, plan: { ...PLAN, stopRoundingMin: 2 } }, PLAIN_SITE)(start(12, 4));
    expect(stops[0]!.depthM).toBe(12);
    for (const { minutes } of stops) expect(minutes % 2).toBe(0);
  });

  it('never ends where the gas breathed at a stop is too rich in nitrogen for ever', () => {
    const dense = {
      ...PLAIN_SITE,
      compartments: { ...PLAIN_SITE.compartments, nitrogenB: new Float64Array(16).fill(0.9) },
    };
    const { timeToSurfaceMin, stops } = ascentPlanner(settings, dense)({ ...start(6, 1.6), ...PLAIN_SITE });
    expect(timeToSurfaceMin).toBe(Infinity);
    expect(stops).toEqual([]);
  });
});

describe('a schedule with gases carried', () => {
  const oxygen = { o2: 1, he: 0 };
  const half = { o2: 0.5, he: 0 };
  const carried = [
    { gas: oxygen, fromM: 6 },
    { gas: half, fromM: 21 },
  ];
  const planAscent = ascentPlanner({ ...settings, carried }, PLAIN_SITE);

  it('switches to each at its depth, in the middle of a climb if need be', () => {
    const { parts, stops } = planAscent(start(30, 4));
    expect(parts.filter(({ gas }) => gas === ALL_NITROGEN).at(-1)!.toM).toBe(21);
    expect(stops.find(({ depthM }) => depthM === 9)!.gas).toBe(half);
    expect(stops.find(({ depthM }) => depthM === 6)!.gas).toBe(oxygen);
    expect(
      ascentPlanner(
        { ...settings, carried: [{ gas: half, fromM: 20 }] },
        PLAIN_SITE,
      )(start(30, 4)).parts.some(({ toM }) => toM === 20),
    ).toBe(true);
  });

  it('climbs on past the depth of a gas that is no richer, without a halt', () => {
    const poorer = [...carried, { gas: { o2: 0.4, he: 0 }, fromM: 10 }];
    const { parts } = ascentPlanner({ ...settings, carried: poorer }, PLAIN_SITE)(start(30, 4));
    expect(parts).toEqual(planAscent(start(30, 4)).parts);
  });

  it('is quicker than without', () => {
    expect(planAscent(start(30, 4)).timeToSurfaceMin).toBeLessThan(
      ascentPlanner(settings, PLAIN_SITE)(start(30, 4)).timeToSurfaceMin,
    );
  });

  it('starts from the anchor reached, or from its own ceiling at low where that is deeper', () => {
    const shaped = ascentPlanner({ ...settings, gradientFactors: { low: 0.5, high: 1 } }, PLAIN_SITE);
    expect(shaped({ ...start(20, 2.2), anchorM: 15 }).anchorM).toBe(15);
    // 2.2 bar: at half of the way to twice the pressure, p + p/2 = 2.2 at 1.4667 bar.
    expect(shaped({ ...start(20, 2.2), anchorM: 0 }).anchorM).toBeCloseTo(4.6667, 4);
    expect(shaped({ ...start(20, 1.9), anchorM: 15 }).anchorM).toBe(0);
  });
});
