import { describe, expect, it } from 'vitest';
import { figuresAt } from '@/lib/ascent/figures';
import { sampleAt } from '@/lib/dive/timeline';
import { shownAt } from '@/lib/rules/unit/shown';
import { modelSayings, standingOf } from '@/lib/sayings/model-readings';
import { needsStopHeard, sayLeader, sayWhere, sayWhereShortly, type Heard } from '@/lib/sayings/where';
import { down, rest, stay, up, watched } from '../rules/made-dives';

const watch = watched([
  down(30, 100),
  stay(1700),
  up(5, 150),
  stay(1200),
  up(0, 60),
  rest(3600),
  down(12, 60),
  stay(600),
]);
const { timeline, figures } = watch;

function heardAt(timeS: number, covered: readonly string[] = []): Heard {
  const sample = sampleAt(timeline, timeS);
  const now = figuresAt(timeline, figures, sample);
  return { model: { timeline, sample, now }, unit: shownAt(watch, sample), leader: now.leadingCompartment, covered };
}

describe('where the diver is', () => {
  it.each([
    [
      300,
      'Dive 1, 5:00. 30.0 m on air. Rate: steady. Nothing is owed; you may stay 8 min here before you need a stop. Time to surface: 4 min. Compartment 1 leads.',
      'Dive 1, 5:00, 30.0 m, no-stop time 8 min',
    ],
    [
      1500,
      'Dive 1, 25:00. 30.0 m on air. Rate: steady. You need to stop at 3 m for 7 min. Time to surface: 11 min. Compartment 2 leads.',
      'Dive 1, 25:00, 30.0 m, stop 7 min at 3 m',
    ],
    [
      3400,
      'After dive 1, 3 min. 0.0 m on air. Rate: steady. Nothing is owed, however long you stay here. Time to surface: 0 min. Compartment 6 leads.',
      'After dive 1, 3 min, 0.0 m, no-stop time more than 99 min',
    ],
  ])('is said in full and in few words at %i s', (timeS, full, short) => {
    expect(sayWhere(heardAt(timeS), 'metric')).toBe(full);
    expect(sayWhereShortly(heardAt(timeS), 'metric')).toBe(short);
  });

  it('leaves out what is covered, and all from which it could be told', () => {
    expect(sayWhere(heardAt(300, ['ceiling']), 'metric')).toBe('Dive 1, 5:00. 30.0 m on air. Rate: steady.');
    expect(sayWhere(heardAt(300, ['depth', 'time', 'rate']), 'metric')).toBe(
      'Nothing is owed; you may stay 8 min here before you need a stop. Time to surface: 4 min. Compartment 1 leads.',
    );
    expect(sayWhereShortly(heardAt(300, ['no-stop']), 'metric')).toBe('Dive 1, 5:00, 30.0 m');
    expect(sayWhereShortly(heardAt(300, ['depth']), 'metric')).toBe('Dive 1, 5:00, no-stop time 8 min');
  });

  it('hides the leader with the supersaturation that tells it, and says none where none leads', () => {
    expect(sayLeader(heardAt(300))).toBe('Compartment 1 leads.');
    expect(sayLeader({ ...heardAt(300), leader: 0 })).toBe('');
    expect(sayLeader(heardAt(300, ['supersaturation']))).toBe('');
    expect(sayLeader(heardAt(300, ['gas']))).toBe('Compartment 1 leads.');
  });

  it('adds the alarms of the unit while nothing is covered', () => {
    const sounding = (covered: readonly string[]) => {
      const heard = heardAt(300, covered);
      return sayWhere(
        { ...heard, unit: { ...heard.unit, alarms: [{ id: 'x', text: 'Slow down.' } as never] } },
        'metric',
      );
    };
    expect(sounding([])).toMatch(/leads\. Slow down\.$/);
    expect(sounding(['gas'])).not.toContain('Slow down');
  });

  it('is told from the state: a stop is needed while one is owed or the way up will ask for one', () => {
    expect([300, 1500, 3400].map((timeS) => needsStopHeard(heardAt(timeS)))).toEqual([false, true, false]);
  });
});

describe('what the model says at an instant', () => {
  const saidAt = (timeS: number) => modelSayings(heardAt(timeS).model, 'metric');

  it('in a dive that owes nothing', () => {
    const said = saidAt(300);
    expect(said.time).toMatchObject({ name: 'Time', text: '5:00', note: 'in dive 1' });
    expect(said['no-stop']).toMatchObject({
      text: '8 min',
      note: 'compartment 1; 10 min with credit for the way up',
      leader: 1,
    });
    expect(said['credited-no-stop']).toMatchObject({ text: '10 min', leader: 0, note: '', tone: 'plain' });
    expect(said.ceiling).toMatchObject({ text: 'none', note: 'you may surface', leader: 0, tone: 'plain' });
    expect(said['required-stop']).toMatchObject({ text: 'none', note: 'straight up is tolerated', tone: 'plain' });
    expect(said['time-to-surface']).toMatchObject({ text: '4 min', note: 'no stops on the way' });
    expect(said.supersaturation).toMatchObject({ text: '−51%', note: 'now, compartment 1', leader: 1 });
    expect(said['surfacing-supersaturation']).toMatchObject({
      name: 'On surfacing',
      text: '39%',
      note: 'if up this instant, compartment 1',
    });
  });

  it('in a dive that owes a stop', () => {
    const said = saidAt(1500);
    expect(said['no-stop']).toMatchObject({ text: '0 min', note: 'over, by compartment 2' });
    expect(said.ceiling).toMatchObject({ text: '3.5 m', note: 'set by compartment 2', leader: 2, tone: 'stop' });
    expect(said['required-stop']).toMatchObject({ value: '3', unit: 'm', text: '7 min at 3 m', tone: 'stop' });
    expect(said['time-to-surface']).toMatchObject({ text: '11 min', note: 'one stop on the way' });
    expect(said['surfacing-supersaturation'].leader).toBe(3);
  });

  it('counts several stops, and says where none would be long enough', () => {
    const { model } = heardAt(1500);
    const stop = { depthM: 6, minutes: 1, gas: { o2: 0.21, he: 0 } };
    const withStops = (schedule: Partial<typeof model.now.schedule>) => ({
      ...model,
      now: { ...model.now, schedule: { ...model.now.schedule, ...schedule } },
    });
    expect(modelSayings(withStops({ stops: [stop, stop] }), 'metric')['time-to-surface'].note).toBe(
      '2 stops on the way',
    );
    const part = { fromM: 30, toM: 9, minutes: 3, gas: { o2: 0.21, he: 0 } };
    const endless = withStops({ stops: [], parts: [part], timeToSurfaceMin: Infinity });
    expect(modelSayings(endless, 'metric')['time-to-surface']).toMatchObject({
      text: 'never',
      note: 'no stop there is ever long enough',
    });
    expect(standingOf(endless)).toMatchObject({ state: 'owed', stop: { depthM: 9, minutes: Infinity } });
  });

  it('tells no time left while the way up itself needs a stop', () => {
    const { model } = heardAt(300);
    const stops = [{ depthM: 3, minutes: 1, gas: { o2: 0.21, he: 0 } }];
    const filling = { ...model, now: { ...model.now, schedule: { ...model.now.schedule, stops } } };
    expect(modelSayings(filling, 'metric')['no-stop']).toMatchObject({ value: 'none', text: 'none' });
    expect(sayWhereShortly({ model: filling, covered: [] }, 'metric')).toBe('Dive 1, 5:00, 30.0 m, stop 1 min at 3 m');
  });

  it('between dives and in the second', () => {
    expect(saidAt(3400).time).toMatchObject({ text: '3:10', note: 'after dive 1' });
    expect(saidAt(7400).time).toMatchObject({ text: '9:50', note: 'in dive 2' });
    expect(saidAt(7400).depth).toMatchObject({ text: '12.0 m', note: 'on air' });
  });
});
