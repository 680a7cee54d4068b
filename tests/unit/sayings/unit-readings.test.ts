import { describe, expect, it } from 'vitest';
import { shownAt } from '@/lib/rules/unit/shown';
import { stopStateShown, unitSayings } from '@/lib/sayings/unit-readings';
import { down, stay, watched } from '../rules/made-dives';

const shown = shownAt(watched([down(30, 100), stay(600)]), 300);

describe('what a unit says of its lock', () => {
  it.each([
    [null, 'not locked'],
    [47 * 3600 + 60, '47 h 01 min'],
    // A minute that is not over is still to wait.
    [47 * 3600 + 1, '47 h 01 min'],
    [59, '1 min'],
  ])('with %s s to go is “%s”', (lockedForS, said) => {
    expect(unitSayings({ ...shown, lockedForS }, 'metric').locked.text).toBe(said);
  });
});

describe('what a unit says of the rate', () => {
  it.each([
    [null, 'easy', 0, 'not shown', 'steady; no breach on this dive', 'plain'],
    [0.04, 'easy', 0, 'steady', 'steady; no breach on this dive', 'plain'],
    [-0.04, 'easy', 1, 'steady', 'steady; one breach on this dive', 'plain'],
    [6, 'easy', 0, 'up 6 m/min', 'up, easy; no breach on this dive', 'plain'],
    [12, 'too fast', 2, 'up 12 m/min, too fast', 'up, too fast; 2 breaches on this dive', 'rule'],
    [20, 'far too fast', 1, 'up 20 m/min, far too fast', 'up, far too fast; one breach on this dive', 'rule'],
    [-18, 'easy', 0, 'down 18 m/min', 'down; no breach on this dive', 'plain'],
  ] as const)('of %s m/min, %s, after %i breaches', (rateMMin, rateLevel, breaches, text, note, tone) => {
    expect(unitSayings({ ...shown, rateMMin, rateLevel, breaches }, 'metric').rate).toMatchObject({ text, note, tone });
  });
});

describe('what a unit says of stops', () => {
  const owing = {
    ...shown,
    noStopMin: 0,
    ceilingM: 3.41,
    requiredStop: { depthM: 6, minutes: 2 },
    requiredStops: [{ depthM: 6, minutes: 2 }],
    timeToSurfaceMin: 9.1,
  };
  const saidOf = (said: Partial<typeof shown>) => unitSayings({ ...shown, ...said }, 'metric');

  it('none in a dive that owes nothing, and nothing at the surface', () => {
    const said = unitSayings(shown, 'metric');
    expect(said.mode.text).toBe('dive');
    expect(said.gas.text).toBe('air');
    expect(said.ceiling).toMatchObject({ text: 'none', tone: 'plain' });
    expect(said['required-stop']).toMatchObject({ text: 'none', tone: 'plain' });
    expect(said['imposed-stop'].text).toBe('none');
    const above = saidOf({ mode: 'surface', gas: null, noStopMin: null, timeToSurfaceMin: null, safetyStop: null });
    for (const reading of ['ceiling', 'required-stop', 'imposed-stop', 'no-stop', 'gas', 'time-to-surface'] as const)
      expect(above[reading].text).toBe('not shown');
  });

  it('the ceiling, the stop and the time up, none of them told too small', () => {
    const said = unitSayings(owing, 'metric');
    expect(said.ceiling).toMatchObject({ text: '3.5 m', tone: 'stop' });
    expect(said['required-stop']).toMatchObject({ value: '6', text: '2 min at 6 m', tone: 'stop' });
    expect(said['time-to-surface'].text).toBe('10 min');
    expect(stopStateShown(owing)).toBe('owed');
  });

  it('no time left while the way up itself needs a stop', () => {
    const filling = { noStopMin: 3, requiredStop: { depthM: 3, minutes: 1 } };
    expect(saidOf(filling)['no-stop'].text).toBe('none');
    expect(stopStateShown({ ...shown, ...filling })).toBe('filling');
    expect(stopStateShown({ ...shown, ceilingM: 0.4 })).toBe('clearing');
    expect(stopStateShown({ ...owing, mode: 'surface' })).toBeUndefined();
  });

  it('more than is told where the time is beyond its cap', () => {
    expect(saidOf({ noStopMin: 99, noStopOverCap: true })['no-stop'].value).toBe('>99');
    expect(saidOf({ noStopMin: 99, noStopOverCap: false })['no-stop'].value).toBe('99');
  });

  it('a stop that a rule adds, as the rule’s', () => {
    expect(saidOf({ imposedStop: { depthM: 6, minutes: 1.51 } })['imposed-stop']).toMatchObject({
      value: '1:31',
      text: '1:31 left at 6 m',
      note: 'at 6 m, a rule’s demand',
      tone: 'rule',
    });
  });

  it('the safety stop with what its state means', () => {
    expect(saidOf({ safetyStop: { state: 'counting', leftS: 100.5, idealM: 5 } })['safety-stop']).toMatchObject({
      text: 'counting, 1:41 left',
      note: expect.stringMatching(/^counting\. [A-Z]/),
    });
    expect(saidOf({ safetyStop: null })['safety-stop']).toMatchObject({
      text: 'none',
      note: 'The dive has not been deep enough for one.',
    });
  });

  it('no reason for having no safety stop where another stop stands in its place, or the dive is over', () => {
    const imposedStop = { depthM: 6, minutes: 2 };
    for (const said of [owing, { ceilingM: 0.4 }, { imposedStop }, { mode: 'surface' as const }])
      expect(saidOf({ ...said, safetyStop: null })['safety-stop'].note).toBe('');
  });

  it('its alarms one after the other, and hours to wait in full', () => {
    const alarms = [{ text: 'Slow down.' }, { text: 'Stop.' }] as unknown as typeof shown.alarms;
    expect(saidOf({ alarms }).alarms.text).toBe('Slow down. Stop.');
    expect(saidOf({ alarms: [] }).alarms.text).toBe('none');
    expect(saidOf({ noFlyH: 23.94, desaturationH: 32.5 })['no-fly']).toMatchObject({
      text: '23 h 57 min',
      note: 'guideline or model, the longer',
    });
    expect(saidOf({ desaturationH: 32.5 }).desaturation.text).toBe('32 h 30 min');
  });
});
