import { describe, expect, it } from 'vitest';
import boyle from '@/content/published/boyle.json';
import { figuresOf } from '@/lib/ascent/figures';
import { legsOf } from '@/lib/dive/legs';
import { computeTimeline, type Timeline } from '@/lib/dive/timeline';
import { heldBreathRatio, heldBreaths, metreByMetre, mmHgOf } from '@/lib/rules/body/lungs';
import { lostWashout, withClimbsAtMost } from '@/lib/rules/body/lost-washout';
import { breachesOf, slowedWashout } from '@/lib/rules/body/slowed-washout';
import { COMPARTMENTS } from '@/lib/tissue/coefficients';
import { at, diveOf, down, rest, stay, up, watched } from './made-dives';

/** 9 min in all to 40 m, then up at a rate. */
const nineMinutesAt40M = (mMin: number) => diveOf([down(40, 120), stay(420), up(0, (40 / mMin) * 60)]);

describe('lost washout, the model’s own', () => {
  it('nine minutes at 40 m leave no ceiling at 9 m/min and one of 0.4 to 0.5 m at 30 m/min', () => {
    const [at9] = lostWashout(nineMinutesAt40M(9));
    const [at30] = lostWashout(nineMinutesAt40M(30));
    expect(at9!.asDived.ceilingM).toBe(0);
    expect(at9!.lost).toBe(0);
    expect(at30!.asDived.ceilingM).toBeGreaterThan(0.4);
    expect(at30!.asDived.ceilingM).toBeLessThan(0.5);
    expect(at30!.asTaught.ceilingM).toBe(0);
    expect(at30!.lost).toBeGreaterThan(0.05);
  });

  it('is told for each dive of a series', () => {
    const twice = diveOf([down(30, 60), stay(600), up(0, 60), rest(3600), down(20, 60), stay(600), up(0, 200)]);
    const [fast, slow] = lostWashout(twice);
    expect([fast!.diveNumber, slow!.diveNumber]).toEqual([0, 1]);
    expect(fast!.asTaught.timeS).toBeCloseTo(660 + 200, 9);
    expect(fast!.lost).toBeGreaterThan(0.02);
  });

  it('is told of a dive that comes up from less than a metre at last', () => {
    const lingering = diveOf([down(30, 60), stay(600), up(0.5, 60), stay(120), up(0, 30)]);
    const [only] = lostWashout(lingering);
    expect(only!.asDived.timeS).toBeCloseTo(870, 9);
  });

  it('slows only the climbs that are too fast', () => {
    const dive = diveOf([down(30, 60), up(21, 30), up(12, 90), up(0, 80)]);
    expect(withClimbsAtMost(dive, 9).steps).toEqual([down(30, 60), up(21, 60), up(12, 90), up(0, 80)]);
  });
});

describe('slowed washout, a what-if', () => {
  const watch = watched([down(30, 100), stay(1200), up(0, 60), rest(7200)]);
  const tension = (timeline: { nitrogenBar: Float64Array }, timeS: number, compartment: number) =>
    timeline.nitrogenBar[at(watch, timeS) * COMPARTMENTS + compartment - 1]!;

  it('changes nothing before the first breach, and is the model itself where there was none', () => {
    const [breachS] = breachesOf(watch);
    const slowed = slowedWashout(watch.timeline, [breachS!], { on: true, times: 2, forMin: 30 });
    const upTo = (at(watch, breachS!) + 1) * COMPARTMENTS;
    expect(slowed.nitrogenBar.slice(0, upTo)).toEqual(watch.timeline.nitrogenBar.slice(0, upTo));
    expect(slowedWashout(watch.timeline, [], { on: true, times: 2, forMin: 30 })).toBe(watch.timeline);
  });

  it('empties a compartment at the surface with its half-time multiplied, and then as usual again', () => {
    const slowed = slowedWashout(watch.timeline, [1360], { on: true, times: 3, forMin: 18.5 * 3 });
    const restBar = (1.01325 - 0.0627) * 0.79;
    // Compartment 4 has a nitrogen half-time of 18.5 min: three times that halves the excess.
    const excess = (timeS: number) => tension(slowed, timeS, 4) - restBar;
    expect(excess(1360 + 3330) / excess(1360)).toBeCloseTo(0.5, 6);
    expect(excess(1360 + 3330 + 1110) / excess(1360 + 3330)).toBeCloseTo(0.5, 6);
  });

  it('leaves uptake alone', () => {
    const deep = watched([down(30, 100), stay(1200)]);
    const slowed = slowedWashout(deep.timeline, [300], { on: true, times: 5, forMin: 60 });
    slowed.nitrogenBar.forEach((bar, index) =>
      expect(Math.abs(bar - deep.timeline.nitrogenBar[index]!)).toBeLessThan(1e-9),
    );
  });

  it('leaves the model’s own tensions as they were', () => {
    const before = watch.timeline.nitrogenBar.slice(-COMPARTMENTS);
    slowedWashout(watch.timeline, [1360], { on: true, times: 3, forMin: 60 });
    expect(watch.timeline.nitrogenBar.slice(-COMPARTMENTS)).toEqual(before);
  });

  it('slows helium as well', () => {
    const dive = diveOf([down(50, 120), stay(900), up(0, 120), rest(3600)], { gas: { o2: 0.18, he: 0.45 } });
    const mixed = computeTimeline(dive, 1);
    const slowed = slowedWashout(mixed, [1140], { on: true, times: 2, forMin: 30 });
    expect(slowed.heliumBar.at(-1)).toBeGreaterThan(mixed.heliumBar.at(-1)!);
    const ceilingM = (timeline: Timeline) => figuresOf(timeline, dive.settings).ceilingM.at(-1)!;
    expect(ceilingM(slowed)).toBeGreaterThanOrEqual(ceilingM(mixed));
  });
});

describe('a held breath', () => {
  // Boyle's law as worked in diving texts: 1 bar at the surface and 0.1 bar to the metre.
  it.each(boyle.metres)('from $fromM m to $toM m grows by a factor of $factor', ({ fromM, toM, factor }) => {
    expect(heldBreathRatio(1 + fromM / 10, 1 + toM / 10)).toBeCloseTo(factor, 4);
  });

  const site = { surfaceBar: 1, barPerMetre: 0.1 };

  it('is told for each climb, however many steps tell it', () => {
    const { legs } = legsOf(
      diveOf([down(30, 60), up(20, 60), up(10, 60), stay(60), up(0, 60), rest(60), down(10, 60), up(0, 60)]),
    );
    const climbs = heldBreaths({ ...site, legs });
    expect(climbs.map(({ fromM, toM }) => [fromM, toM])).toEqual([
      [30, 10],
      [10, 0],
      [10, 0],
    ]);
    expect(climbs.map(({ ratio }) => ratio)).toEqual([2, 2, 2]);
    expect(climbs[0]).toMatchObject({ startS: 60, endS: 180, excessBar: 2 });
  });

  it('grows most in the shallowest metres', () => {
    const metres = metreByMetre({ fromM: 12.5, toM: 0 }, site);
    expect(metres).toHaveLength(13);
    expect(metres[0]).toMatchObject({ fromM: 12.5, toM: 12 });
    const whole = metres.slice(1).map(({ ratio }) => ratio);
    expect(whole).toEqual([...whole].sort((one, other) => one - other));
    expect(metres.reduce((product, { ratio }) => product * ratio, 1)).toBeCloseTo(2.25, 12);
  });

  it('of 1 m is about as far above the water as 70 to 80 mmHg, which physiology texts call enough to tear a lung', () => {
    const { legs } = legsOf(diveOf([down(1, 10), up(0, 10)]));
    const mmHg = mmHgOf(heldBreaths({ ...site, legs })[0]!.excessBar);
    expect(mmHg).toBeGreaterThan(70);
    expect(mmHg).toBeLessThan(80);
  });
});
