import { describe, expect, it } from 'vitest';
import type { Step } from '@/lib/dive/dive';
import { SAFETY_STOP_STATES } from '@/lib/rules/safety-stop-state';
import { shownAt } from '@/lib/rules/unit/shown';
import { ruleSettingsSchema } from '@/lib/rules/settings/rule-settings';
import { at, down, rest, stay, told, up, watched, type RulesInput } from './made-dives';

/** 18 m reached after 2 min, left after 10 min; 5 m reached at 700 s. */
const toFiveM: Step[] = [down(18, 120), stay(480), up(5, 100)];
const stops = (steps: Step[], rules: RulesInput = {}) => told(watched(steps, rules), 'safetyStop');
const leftS = (steps: Step[], timeS: number, rules: RulesInput = {}) => {
  const watch = watched(steps, rules);
  return watch.tracks.safetyStopLeftS[at(watch, timeS)];
};

describe('the safety stop', () => {
  it('is not due on a dive that never goes below 10 m', () => {
    expect(stops([down(10, 60), stay(1800), up(5, 60), stay(60), up(0, 60)])).toEqual([]);
  });

  it('falls due below 10 m and runs down in the band from 3 to 6 m', () => {
    // 10 m is passed at 66.7 s; 6.1 m, where a reading is 6 m, at 691.5 s.
    expect(stops([...toFiveM, stay(400)])).toEqual([
      '67 safety-stop-due',
      '692 safety-stop-counting',
      '872 safety-stop-done',
    ]);
  });

  it.each([
    [6, true],
    [6.096, true],
    [6.3, false],
    [5, true],
    [3, true],
    [2.8, false],
  ])('at %s m counts: %s', (depthM, counts) => {
    const steps = [down(18, 120), stay(480), up(depthM, 100), stay(400)];
    expect(stops(steps).some((line) => line.endsWith('safety-stop-done'))).toBe(counts);
  });

  it('stands still while you are out of the band', () => {
    const steps = [...toFiveM, stay(60), down(8, 20), stay(120), up(5, 20), stay(30)];
    const inBandBefore = leftS(steps, 760);
    expect(leftS(steps, 900)).toBeLessThan(inBandBefore!);
    expect(leftS(steps, 800)).toBe(leftS(steps, 890));
    expect(stops(steps)).toEqual([
      '67 safety-stop-due',
      '692 safety-stop-counting',
      '768 safety-stop-paused',
      '913 safety-stop-counting',
    ]);
  });

  it('grows again outside the band if it is set to, but not beyond the whole', () => {
    const steps = [...toFiveM, stay(60), down(8, 20), stay(240), up(5, 20), stay(30)];
    const rules = { safetyStop: { outside: 'extends' as const } };
    const before = leftS(steps, 767, rules)!;
    expect(leftS(steps, 777, rules)).toBe(before + 10);
    expect(leftS(steps, 1010, rules)).toBe(180);
  });

  it('starts over after a return below 10 m', () => {
    const steps = [...toFiveM, stay(120), down(12, 60), stay(60), up(5, 60), stay(300)];
    expect(stops(steps)).toEqual([
      '67 safety-stop-due',
      '692 safety-stop-counting',
      '830 safety-stop-paused',
      '863 safety-stop-restarted',
      '991 safety-stop-counting',
      '1171 safety-stop-done',
    ]);
    expect(leftS(steps, 880)).toBe(180);
  });

  it('is skipped by surfacing before it is over, and nothing is owed', () => {
    const steps = [...toFiveM, stay(60), up(0, 60), rest(600)];
    const watch = watched(steps);
    expect(told(watch, 'safetyStop').at(-1)).toBe('820 safety-stop-skipped');
    expect(watch.events.find(({ kind }) => kind === 'safety-stop-skipped')!.text).toContain('asks for nothing');
    expect(shownAt(watch, at(watch, 900))).toMatchObject({ mode: 'surface', alarms: [], lockedForS: null });
  });

  it('is due again on the next dive', () => {
    const steps = [...toFiveM, stay(300), up(0, 60), rest(3600), down(18, 120), stay(60)];
    expect(stops(steps).filter((line) => line.endsWith('safety-stop-due'))).toHaveLength(2);
  });

  it('waits for a required stop, which comes first', () => {
    const steps = [down(30, 100), stay(1900), up(5, 170), stay(2400)];
    const watch = watched(steps);
    const clearedS = watch.events.find(({ kind }) => kind === 'nothing-owed')!.timeS;
    expect(watch.events.find(({ kind }) => kind === 'safety-stop-counting')!.timeS).toBe(Math.ceil(clearedS));
    expect(shownAt(watch, at(watch, 2200))).toMatchObject({ safetyStop: null, requiredStop: { depthM: 6 } });
    expect(shownAt(watch, at(watch, Math.ceil(clearedS) + 10))).toMatchObject({
      safetyStop: { state: 'counting' },
      requiredStop: null,
    });
  });

  it('shows its state, what is left and its band', () => {
    const watch = watched([...toFiveM, stay(400)]);
    expect(shownAt(watch, at(watch, 300)).safetyStop).toEqual({ state: 'due', leftS: 180, idealM: 5 });
    expect(shownAt(watch, at(watch, 772)).safetyStop).toMatchObject({ state: 'counting', leftS: 100 });
    expect(shownAt(watch, at(watch, 900)).safetyStop).toMatchObject({ state: 'done', leftS: 0 });
  });

  it.each<[object, string]>([
    [{ bandFromM: 6, bandToM: 3 }, 'a band upside down'],
    [{ dueBelowM: 5 }, 'a stop due inside its band'],
    [{ lasts: 3 }, 'an unknown setting'],
  ])('refuses %j: %s', (safetyStop) => {
    expect(ruleSettingsSchema.safeParse({ safetyStop }).success).toBe(false);
  });

  it('can be switched off', () => {
    const watch = watched([...toFiveM, stay(400)], { safetyStop: { on: false } });
    expect(told(watch, 'safetyStop')).toEqual([]);
    expect(watch.tracks.safetyStop.every((state) => SAFETY_STOP_STATES[state] === 'none')).toBe(true);
  });
});
