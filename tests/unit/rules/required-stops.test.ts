import { describe, expect, it } from 'vitest';
import { shownAt } from '@/lib/rules/unit/shown';
import { at, down, rest, stay, told, up, watched, type RulesInput } from './made-dives';

/** 30 m for long enough to owe stops at 6 and 3 m. */
const overstayed = [down(30, 100), stay(1900)];
const straightUp = [...overstayed, up(0, 200), rest(4000)];
const kinds = (steps: Parameters<typeof watched>[0], rules: RulesInput = {}) =>
  [...told(watched(steps, rules), 'requiredStops'), ...told(watched(steps, rules), 'lockOut')].map((line) =>
    line.replace(/^\S+ /, ''),
  );

describe('the required stops', () => {
  it('are told when the no-stop time runs out, at the very sample the model has a ceiling', () => {
    const watch = watched(overstayed);
    const first = watch.figures.ceilingM.findIndex((ceilingM) => ceilingM > 0);
    const event = watch.events.find(({ kind }) => kind === 'stop-required')!;
    expect(event.timeS).toBe(watch.timeline.timeS[first]);
    expect(event.text).toBe(
      'At 13:09 the no-stop time has run out and a ceiling is there. On the way up, stop at 3 m until it has cleared.',
    );
    expect(watch.figures.noStopMin[first - 1]).toBeLessThan(1 / 30);
  });

  it('are told again when the first stop moves down a step', () => {
    const watch = watched(overstayed);
    const event = watch.events.find(({ kind }) => kind === 'required-stop-deeper')!;
    expect(watch.figures.ceilingM[at(watch, event.timeS)]).toBeGreaterThan(3);
    expect(watch.figures.ceilingM[at(watch, event.timeS) - 1]).toBeLessThanOrEqual(3);
    expect(event.numbers).toMatchObject({ stopM: 6 });
  });

  it('are shown with their depths and minutes, and the time to the surface', () => {
    const watch = watched(overstayed);
    const shown = shownAt(watch, at(watch, 2000));
    expect(shown.requiredStop).toEqual(shown.requiredStops[0]);
    expect(shown.requiredStops.map(({ depthM }) => depthM)).toEqual([6, 3]);
    const stopsMin = shown.requiredStops.reduce((sum, { minutes }) => sum + minutes, 0);
    expect(shown.timeToSurfaceMin).toBeCloseTo(30 / 9 + stopsMin, 9);
    expect(shown.noStopMin).toBe(0);
    expect(shown.ceilingM).toBe(watch.figures.ceilingM[at(watch, 2000)]);
  });

  it('are over when the ceiling has risen to the surface', () => {
    const watch = watched([...overstayed, up(6, 160), stay(300), up(3, 20), stay(1500)]);
    const event = watch.events.find(({ kind }) => kind === 'required-stops-done')!;
    expect(watch.figures.ceilingM[at(watch, event.timeS)]).toBe(0);
    expect(watch.figures.ceilingM[at(watch, event.timeS) - 1]).toBeGreaterThan(0);
  });

  it('alarm above the ceiling, and say when you are below it again', () => {
    const watch = watched([...overstayed, up(3, 180), stay(20), down(6, 20), stay(60)]);
    const [above, back] = watch.events.filter(({ rule }) => rule === 'requiredStops').slice(2);
    expect([above!.kind, back!.kind]).toEqual(['above-ceiling', 'below-ceiling-again']);
    expect(shownAt(watch, at(watch, 2190)).alarms).toEqual([
      { kind: 'above-ceiling', text: 'You are above the ceiling. Go back down to 6 m.' },
    ]);
    expect(shownAt(watch, at(watch, 2190), 'imperial').alarms[0]!.text).toBe(
      'You are above the ceiling. Go back down to 20 ft.',
    );
    expect(shownAt(watch, at(watch, 2240)).alarms).toEqual([]);
  });

  it('never alarm at a stop the schedule sends you to', () => {
    const watch = watched([...overstayed, up(6, 160), stay(300), up(3, 20), stay(1500), up(0, 20)]);
    expect(told(watch).filter((line) => /above-ceiling|grace/.test(line))).toEqual([]);
  });

  it('give their grace time once, and begin it anew below the ceiling', () => {
    const tooLong = [...overstayed, up(2, 190), stay(90)];
    const twiceShort = [...overstayed, up(2, 190), stay(30), down(7, 20), stay(30), up(2, 40), stay(30)];
    expect(kinds(tooLong)).toContain('grace-over');
    expect(kinds(twiceShort)).not.toContain('grace-over');
    expect(kinds(twiceShort).filter((kind) => kind === 'above-ceiling')).toHaveLength(2);
  });

  it('tell you at the surface to follow your training, not to go back down', () => {
    const watch = watched(straightUp);
    expect(shownAt(watch, at(watch, 2210)).alarms.map(({ text }) => text)).toEqual([
      'You are at the surface with a stop still owed. Follow your training for an omitted stop.',
    ]);
  });

  it('are not shown when switched off, while the model’s ceiling still is', () => {
    const watch = watched(straightUp, { requiredStops: { on: false } });
    expect(shownAt(watch, at(watch, 2000))).toMatchObject({
      requiredStop: null,
      requiredStops: [],
      timeToSurfaceMin: null,
      noStopMin: 0,
    });
    expect(shownAt(watch, at(watch, 2000)).ceilingM).toBeGreaterThan(4);
    expect(told(watch).filter((line) => /above-ceiling|locked/.test(line))).toEqual([]);
  });
});

describe('the lock-out', () => {
  it.each([24, 48] as const)('after a stop left out lasts %s h when set so', (hours) => {
    const watch = watched([...overstayed, up(0, 200), rest(50 * 3600)], { lockOut: { hours } });
    const [locked, over] = watch.events.filter(({ rule }) => rule === 'lockOut');
    expect([locked!.kind, over!.kind]).toEqual(['locked-out', 'lock-over']);
    expect(over!.timeS - locked!.timeS).toBe(hours * 3600);
  });

  it('begins when the grace time is over and you are at the surface', () => {
    const watch = watched(straightUp);
    const above = watch.events.find(({ kind }) => kind === 'above-ceiling')!;
    const locked = watch.events.find(({ kind }) => kind === 'locked-out')!;
    expect(locked.timeS).toBe(above.timeS + 60);
  });

  it('begins at once at the surface where the grace time ran out under water', () => {
    const watch = watched([...overstayed, up(1, 200), stay(100), up(0, 20), rest(600)]);
    expect(told(watch, 'lockOut')).toEqual(['2320 locked-out']);
  });

  it('leaves depth and time only', () => {
    const watch = watched([...straightUp, down(12, 60), stay(600)]);
    const shown = shownAt(watch, at(watch, 6500));
    expect(shown).toEqual({
      mode: 'locked out',
      depthM: 12,
      diveTimeS: 300,
      maxDepthM: 12,
      surfaceTimeS: null,
      gas: null,
      rateMMin: null,
      rateLevel: null,
      breaches: null,
      noStopMin: null,
      noStopOverCap: false,
      ceilingM: null,
      requiredStop: null,
      requiredStops: [],
      timeToSurfaceMin: null,
      imposedStop: null,
      safetyStop: null,
      tightenedHigh: null,
      alarms: [],
      noFlyH: null,
      desaturationH: null,
      lockedForS: expect.any(Number),
    });
  });

  it('tells nothing of the dives made while it lasts', () => {
    const watch = watched([...straightUp, down(40, 60), stay(2400), up(0, 60), rest(600)]);
    expect(watch.events.filter(({ timeS }) => timeS > 2300)).toEqual([]);
  });

  it('does not come of a stop that was made late', () => {
    const watch = watched([
      ...overstayed,
      up(2, 190),
      stay(90),
      down(6, 20),
      stay(600),
      up(3, 20),
      stay(1500),
      up(0, 20),
      rest(600),
    ]);
    expect(kinds([...overstayed, up(2, 190), stay(90)])).toContain('grace-over');
    expect(told(watch, 'lockOut')).toEqual([]);
  });

  it('does not come of a safety stop left out', () => {
    const watch = watched([down(25, 100), stay(300), up(0, 180), rest(3600)]);
    expect(told(watch)).toContain('580 safety-stop-skipped');
    expect(told(watch, 'lockOut')).toEqual([]);
  });
});
