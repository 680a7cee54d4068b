import { describe, expect, it } from 'vitest';
import { eventText } from '@/lib/rules/all';
import { shownAt } from '@/lib/rules/unit/shown';
import type { Watch } from '@/lib/rules/watch';
import { unitSayings } from '@/lib/sayings/unit-readings';
import { at, down, rest, stay, told, up, watched, type RulesInput } from './made-dives';

/** 30 m for long enough to owe stops at 6 and 3 m. */
const overstayed = [down(30, 100), stay(1900)];
const straightUp = [...overstayed, up(0, 200), rest(4000)];
const kinds = (steps: Parameters<typeof watched>[0], rules: RulesInput = {}) =>
  [...told(watched(steps, rules), 'requiredStops'), ...told(watched(steps, rules), 'lockOut')].map((line) =>
    line.replace(/^\S+ /, ''),
  );

/** The first sample at or after an instant. */
const sampleFrom = (watch: Watch, timeS: number) => watch.timeline.timeS.findIndex((sampleS) => sampleS >= timeS);

describe('the required stops', () => {
  it('tell the ceiling at the instant the no-stop time runs out, between two samples', () => {
    const watch = watched(overstayed);
    const first = watch.figures.ceilingM.findIndex((ceilingM) => ceilingM > 0);
    const event = watch.events.find(({ kind }) => kind === 'ceiling-clears')!;
    const left = watch.figures.noStopMin[first - 1]!;
    expect(event.timeS).toBeCloseTo(watch.timeline.timeS[first - 1]! + left * 60, 6);
    // Told by the first second that shows it.
    expect(watch.timeline.timeS[first]).toBe(13 * 60 + 9);
    expect(event.text).toBe(
      'At 13:09 there is a ceiling, but coming up at the plan’s rate you would find it gone. No stop is needed.',
    );
  });

  it('are told as owed, and told again when the first moves down a step, each as the schedule has it', () => {
    const watch = watched(overstayed);
    const event = (wanted: string) => watch.events.find(({ kind }) => kind === wanted)!;
    const stopsAround = (timeS: number) => {
      const after = sampleFrom(watch, timeS);
      return [after - 1, after].map((sample) => shownAt(watch, sample).requiredStop?.depthM ?? 0);
    };
    expect(stopsAround(event('stop-owed').timeS)).toEqual([0, event('stop-owed').numbers['stopM']]);
    expect(stopsAround(event('first-stop-moved').timeS)).toEqual([3, 6]);
    expect(event('first-stop-moved').text).toContain('the first stop has moved down to 6 m.');
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
    const event = watch.events.find(({ kind }) => kind === 'nothing-owed')!;
    expect(watch.figures.ceilingM[sampleFrom(watch, event.timeS)]).toBe(0);
    expect(watch.figures.ceilingM[sampleFrom(watch, event.timeS) - 1]).toBeGreaterThan(0);
  });

  it('alarm above the ceiling, and say when you are below it again', () => {
    const watch = watched([...overstayed, up(3, 180), stay(20), down(6, 20), stay(60)]);
    const [above, back] = watch.events.filter(({ kind }) => kind.endsWith('above-ceiling') || kind.startsWith('below'));
    expect([above!.kind, back!.kind]).toEqual(['above-ceiling', 'below-ceiling-again']);
    expect(shownAt(watch, at(watch, 2190)).alarms).toEqual([
      { kind: 'above-ceiling', text: 'You are above the ceiling. Go back down to 6 m.' },
    ]);
    expect(shownAt(watch, at(watch, 2190), 'imperial').alarms[0]!.text).toBe(
      'You are above the ceiling. Go back down to 20 ft.',
    );
    expect(shownAt(watch, at(watch, 2240)).alarms).toEqual([]);
  });

  it('name the ceiling passed as it is shown at that instant, never a shallower one', () => {
    for (const steps of [[up(3, 180)], [up(4, 97)], [up(2, 131)]]) {
      const watch = watched([...overstayed, ...steps]);
      const event = watch.events.find(({ kind }) => kind === 'above-ceiling')!;
      for (const units of ['metric', 'imperial'] as const) {
        const { ceiling } = unitSayings(shownAt(watch, at(watch, event.timeS), units), units);
        expect(eventText(event, units).replace(/\.0 m/, ' m')).toContain(
          `above the ceiling at ${ceiling.text.replace(/\.0 m/, ' m')}.`,
        );
      }
    }
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
