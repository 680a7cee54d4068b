import { describe, expect, it } from 'vitest';
import type { Step } from '@/lib/dive/dive';
import { shownAt } from '@/lib/rules/unit/shown';
import { tightenedFactors } from '@/lib/rules/tighter-limits';
import { at, down, rest, stay, told, up, watched, type RulesInput } from './made-dives';

const allOff = { longerSafetyStop: { on: false }, imposedStop: { on: false }, tighterLimits: { on: false } };
const only = (rules: RulesInput): RulesInput => ({ ...allOff, ...rules });
/** A short dive to 20 m with one fast rise of 10 m in 20 s, from 300 s on; no stop is near. */
const oneRise: Step[] = [down(20, 100), stay(200), up(10, 20), stay(60)];
const twoRises: Step[] = [down(30, 100), stay(200), up(20, 20), stay(60), up(10, 20), stay(60)];
const breachS = 307;

describe('a longer safety stop', () => {
  const on = only({ longerSafetyStop: { on: true } });

  it('is asked for at the breach, by as much as it is set to', () => {
    const watch = watched(oneRise, on);
    expect(told(watch, 'longerSafetyStop')).toEqual([`${breachS} safety-stop-lengthened`]);
    expect(watch.tracks.safetyStopLeftS[at(watch, breachS - 1)]).toBe(180);
    expect(watch.tracks.safetyStopLeftS[at(watch, breachS)]).toBe(240);
    expect(watch.events.find(({ rule }) => rule === 'longerSafetyStop')!.text).toBe(
      'At 5:07 you rose 3.5 m in 7 s. The unit makes the safety stop 1 min longer.',
    );
  });

  it('grows with each repeat: the second breach adds twice as much', () => {
    const watch = watched(twoRises, on);
    expect(watch.tracks.safetyStopLeftS.at(-1)).toBe(180 + 60 + 120);
  });

  it('stops growing at what it is set to add at most', () => {
    const watch = watched(twoRises, only({ longerSafetyStop: { on: true, mostS: 100 } }));
    expect(watch.tracks.safetyStopLeftS.at(-1)).toBe(280);
  });

  it('is due even on a dive too shallow for a safety stop', () => {
    const watch = watched([down(9, 100), stay(100), up(4, 10), stay(400)], on);
    expect(told(watch, 'safetyStop').map((line) => line.replace(/^\S+ /, ''))).toEqual([
      'safety-stop-counting',
      'safety-stop-done',
    ]);
  });

  it('starts over at its longer length', () => {
    const watch = watched([...oneRise, up(5, 40), stay(60), down(12, 60), stay(30)], on);
    expect(watch.tracks.safetyStopLeftS.at(-1)).toBe(240);
  });

  it('is forgotten by the next dive, whose own breach is answered in full', () => {
    const surfaced: Step[] = [...oneRise, up(0, 100), rest(3600)];
    const easy = watched([...surfaced, down(20, 100), stay(200)], on);
    expect(easy.tracks.safetyStopLeftS.at(-1)).toBe(180);
    const again = watched([...surfaced, ...oneRise], only({ longerSafetyStop: { on: true, mostS: 60 } }));
    expect(again.tracks.safetyStopLeftS.at(-1)).toBe(240);
  });

  it('stays advice: nothing is owed, and the model is asked nothing', () => {
    const watch = watched([...oneRise, up(0, 100), rest(600)], on);
    expect(told(watch, 'requiredStops')).toEqual([]);
    expect(told(watch, 'lockOut')).toEqual([]);
    expect(Math.max(...watch.figures.ceilingM)).toBe(0);
  });
});

describe('an imposed stop', () => {
  const on = only({ imposedStop: { on: true } });

  it('is demanded though the model allows a direct ascent, and says so', () => {
    const watch = watched(oneRise, on);
    const [event] = watch.events.filter(({ rule }) => rule === 'imposedStop');
    expect(event!.text).toBe(
      'At 5:07 you rose 3.5 m in 7 s. The unit adds a required stop at 6 m for 2 min, though the model allows you to go straight up.',
    );
    expect(watch.figures.ceilingM[at(watch, breachS)]).toBe(0);
    const shown = shownAt(watch, at(watch, breachS));
    expect(shown.imposedStop).toEqual({ depthM: 6, minutes: 2 });
    expect(shown).toMatchObject({ requiredStop: null, ceilingM: null, safetyStop: null });
    expect(shown.timeToSurfaceMin).toBeCloseTo(shown.depthM / 9 + 2, 9);
  });

  it.each([
    [up(15, 10), 6],
    [up(4.5, 31), 3],
  ])('is at 6 m, or at 3 m for one already shallower', (rise, stopM) => {
    const steps = [down(20, 100), stay(200), rise, stay(30)];
    const slowToSay = rise.kind === 'ascend' && rise.toM < 6 ? { rateWatch: { slowDownAfterS: 27 } } : {};
    const watch = watched(steps, { ...on, ...slowToSay });
    expect(watch.tracks.imposedStopM.at(-1)).toBe(stopM);
  });

  it('is not made up for a diver who is already above 3 m', () => {
    const watch = watched([down(9, 100), stay(100), up(1, 16), stay(30)], { ...on, rateWatch: { slowDownAfterS: 14 } });
    expect(told(watch, 'rateWatch')).toContain('216 slow-down');
    expect(told(watch, 'imposedStop')).toEqual([]);
  });

  it('counts near its depth only', () => {
    const watch = watched([...oneRise, stay(60), up(6, 40), stay(180)], on);
    // 7.5 m is reached at 465 s.
    expect(told(watch, 'imposedStop')).toEqual([`${breachS} stop-imposed`, '585 imposed-stop-done']);
    expect(watch.tracks.imposedStopLeftS[at(watch, 440)]).toBe(120);
  });

  it('grows with each repeat', () => {
    const watch = watched(twoRises, on);
    expect(watch.tracks.imposedStopLeftS.at(-1)).toBe(120 + 240);
  });

  it('alarms and locks like any required stop when left out', () => {
    const watch = watched([...oneRise, up(0, 100), rest(600)], on);
    expect(told(watch, 'requiredStops').map((line) => line.replace(/^\S+ /, ''))).toEqual([
      'above-ceiling',
      'grace-over',
    ]);
    expect(told(watch, 'lockOut')).toHaveLength(1);
    expect(Math.max(...watch.figures.ceilingM)).toBe(0);
  });

  it('is given up at the surface where no lock follows', () => {
    const watch = watched([...oneRise, up(0, 100), rest(600)], { ...on, lockOut: { on: false } });
    expect(told(watch, 'imposedStop').at(-1)).toMatch(/imposed-stop-missed$/);
    expect(watch.tracks.imposedStopM.at(-1)).toBe(0);
  });

  it('is made together with a stop of the model at the same depth', () => {
    const steps = [down(40, 100), stay(1500), up(20, 60), stay(10)];
    const with_ = watched(steps, on);
    const without = watched(steps, allOff);
    const sample = at(with_, 1670);
    const model = shownAt(without, sample);
    const atSix = model.requiredStops.find(({ depthM }) => depthM === 6)!;
    expect(atSix.minutes).toBeGreaterThan(2);
    expect(shownAt(with_, sample).timeToSurfaceMin).toBe(model.timeToSurfaceMin);
  });
});

describe('tighter limits', () => {
  const on = only({ tighterLimits: { on: true } });

  it('take a tenth off the high gradient factor from the breach on', () => {
    const watch = watched(oneRise, on);
    expect(told(watch, 'tighterLimits')).toEqual([`${breachS} limits-tightened`]);
    const before = shownAt(watch, at(watch, breachS - 1));
    const after = shownAt(watch, at(watch, breachS));
    expect([before.tightenedHigh, after.tightenedHigh]).toEqual([null, 0.75]);
    expect(after.noStopMin).toBeLessThan(watch.figures.noStopMin[at(watch, breachS)]!);
  });

  it('draw in further with each repeat', () => {
    const watch = watched(twoRises, on);
    expect(watch.drawnIn.map(({ limits }) => limits.gradientFactors.high)).toEqual([0.85, 0.75, 0.65]);
    expect(watch.tracks.tightness.at(-1)).toBe(2);
  });

  it('are told no more often than they are drawn in at most', () => {
    const watch = watched(twoRises, only({ tighterLimits: { on: true, mostTimes: 1 } }));
    expect(told(watch, 'tighterLimits')).toHaveLength(1);
    expect(watch.tracks.tightness.at(-1)).toBe(1);
  });

  it('hold for the rest of the dive and the next one, and then let go', () => {
    const easy = [down(12, 100), stay(300), up(0, 100), rest(3600)];
    const watch = watched([...oneRise, up(0, 100), rest(3600), ...easy, down(12, 100), stay(10)], on);
    const startsS = watch.dives.map(({ startS }) => startS);
    expect(startsS.map((timeS) => watch.tracks.tightness[at(watch, timeS + 60)])).toEqual([0, 1, 0]);
    expect(told(watch, 'tighterLimits').at(-1)).toBe(`${startsS[2]} limits-restored`);
  });

  it.each([
    [{ low: 0.85, high: 0.85 }, 1, { low: 0.75, high: 0.75 }],
    [{ low: 0.3, high: 0.85 }, 2, { low: 0.3, high: 0.65 }],
    [{ low: 0.3, high: 0.85 }, 9, { low: 0.3, high: 0.5 }],
    [{ low: 0.4, high: 0.45 }, 3, { low: 0.4, high: 0.45 }],
  ])('make of %j, %s times, %j', (factors, times, expected) => {
    expect(tightenedFactors(factors, { by: 0.1, floor: 0.5 }, times)).toEqual(expected);
  });

  it('leave the model as it is', () => {
    const watch = watched(twoRises, on);
    const plain = watched(twoRises, allOff);
    expect(watch.timeline.nitrogenBar).toEqual(plain.timeline.nitrogenBar);
    expect(watch.figures.ceilingM).toEqual(plain.figures.ceilingM);
  });
});
