import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { computeTimeline } from '@/lib/dive/timeline';
import { AIR } from '@/lib/physics/gas';
import { printClock } from '@/lib/quantity/duration';
import { DEFAULT_RULES, EVENT_KINDS, eventText, RULES } from '@/lib/rules/all';
import { SAFETY_STOP_MEANINGS, SAFETY_STOP_STATES } from '@/lib/rules/safety-stop-state';
import { shownAt } from '@/lib/rules/unit/shown';
import { STOP_KINDS } from '@/lib/rules/stop-kinds';
import { watchDive } from '@/lib/rules/watch';
import { at, diveOf, down, rest, setupOf, stay, told, up, watched } from '../made-dives';

const series = [
  down(30, 120),
  stay(900),
  up(5, 200),
  stay(180),
  up(0, 40),
  rest(3600),
  down(20, 120),
  stay(600),
  up(0, 150),
  rest(3600),
];

describe('what a unit shows', () => {
  it('under water is the model’s figures and the dive’s own', () => {
    const watch = watched(series);
    expect(shownAt(watch, at(watch, 300))).toMatchObject({
      mode: 'dive',
      depthM: 30,
      maxDepthM: 30,
      diveTimeS: 300,
      surfaceTimeS: null,
      gas: AIR,
      rateMMin: 0,
      rateLevel: 'easy',
      noStopMin: watch.figures.noStopMin[at(watch, 300)],
      noStopOverCap: false,
      ceilingM: null,
      noFlyH: null,
      desaturationH: null,
    });
  });

  it('hides a no-stop time longer than 99 min, and says that it is long', () => {
    const watch = watched([down(5, 60), stay(600)]);
    expect(shownAt(watch, at(watch, 100))).toMatchObject({ noStopMin: null, noStopOverCap: true });
  });

  it('counts each dive’s time and greatest depth by itself', () => {
    const watch = watched(series);
    expect(shownAt(watch, at(watch, 5100))).toMatchObject({ mode: 'dive', diveTimeS: 60, maxDepthM: 10 });
  });

  it('at the surface counts since surfacing, the hours to flying and to desaturation', () => {
    const watch = watched(series);
    const shown = shownAt(watch, at(watch, 1440 + 1800));
    expect(shown).toMatchObject({
      mode: 'surface',
      diveTimeS: 1440,
      surfaceTimeS: 1800,
      noStopMin: null,
      ceilingM: null,
      noFlyH: 24 - 0.5,
    });
    expect(shown.desaturationH).toBeGreaterThan(1);
  });

  it('before the first dive knows of nothing to wait for', () => {
    expect(shownAt(watched(series), 0)).toMatchObject({
      mode: 'surface',
      surfaceTimeS: null,
      noFlyH: null,
      desaturationH: null,
    });
  });

  it('in gauge mode is depth and time', () => {
    const watch = watched([down(40, 120), stay(2400), up(0, 60), rest(600)], {}, { mode: 'gauge' });
    const shown = shownAt(watch, at(watch, 2000));
    expect(shown).toMatchObject({ mode: 'gauge', depthM: 40, maxDepthM: 40, diveTimeS: 2000 });
    const {
      mode: _mode,
      depthM: _depthM,
      maxDepthM: _max,
      diveTimeS: _time,
      surfaceTimeS: _surface,
      ...others
    } = shown;
    for (const value of Object.values(others)) expect([null, false, []]).toContainEqual(value);
    expect(watch.events).toEqual([]);
  });

  it('names alarms in the units a person reads', () => {
    const watch = watched([down(30, 60), stay(60), up(0, 60)]);
    expect(shownAt(watch, at(watch, 150), 'imperial').alarms).toEqual([{ kind: 'slow-down', text: 'Slow down.' }]);
  });
});

describe('a watch', () => {
  const dive = diveOf(series);
  const everyS = 20;
  const timeline = computeTimeline(dive, everyS);
  const truth = { timeline, figures: figuresOf(timeline, dive.settings) };

  it('of a unit set right takes over the truth, and works out its own otherwise', () => {
    expect(watchDive(dive, setupOf(), DEFAULT_RULES, everyS, { truth }).timeline).toBe(timeline);
    expect(watchDive(dive, setupOf({ depthScale: 1.1 }), DEFAULT_RULES, everyS, { truth }).timeline).not.toBe(timeline);
    expect(watchDive(dive, setupOf({ freshBeforeDives: [1] }), DEFAULT_RULES, everyS, { truth }).timeline).not.toBe(
      timeline,
    );
  });

  it('writes over the memory of a watch it may reuse, and never over a truth it was lent', () => {
    const before = truth.timeline.nitrogenBar.slice();
    const borrowed = watchDive(dive, setupOf(), DEFAULT_RULES, everyS, { truth });
    const own = watchDive(dive, setupOf({ altitudeM: 2000 }), DEFAULT_RULES, everyS, { reuse: borrowed });
    expect(truth.timeline.nitrogenBar).toEqual(before);
    const again = watchDive(dive, setupOf({ altitudeM: 500 }), DEFAULT_RULES, everyS, { reuse: own });
    const anew = watchDive(dive, setupOf({ altitudeM: 500 }), DEFAULT_RULES, everyS);
    expect(again.tracks).toEqual(anew.tracks);
    expect(again.events).toEqual(anew.events);
    expect(again.figures).toEqual(anew.figures);
  });

  it('of a unit without memory tells it, and starts the count of hours and dives anew', () => {
    const twice = [...series.slice(0, -1), rest(7200)];
    const fresh = watched(twice, {}, { freshBeforeDives: [1] });
    const knowing = watched(twice);
    expect(told(fresh, 'setup')).toEqual(['5040 memory-lost']);
    const late = at(fresh, 10000);
    expect(knowing.tracks.divesKnown[late]).toBe(2);
    expect(fresh.tracks.divesKnown[late]).toBe(1);
    expect(shownAt(fresh, late).noFlyH).toBeLessThan(shownAt(knowing, late).noFlyH!);
    expect(shownAt(fresh, at(fresh, 5400)).noStopMin).toBeGreaterThan(shownAt(knowing, at(knowing, 5400)).noStopMin!);
  });

  it('forgets a lock with everything else', () => {
    const locked = [down(30, 100), stay(2400), up(0, 200), rest(3600), down(10, 60), stay(60)];
    const watch = watched(locked, {}, { freshBeforeDives: [1] });
    expect(told(watch, 'lockOut')).toHaveLength(1);
    expect(shownAt(watch, at(watch, 6400)).mode).toBe('dive');
  });
});

describe('the rules', () => {
  it('each say why they are there and how far they can be trusted', () => {
    for (const { title, reason, standing } of RULES) {
      expect(title).not.toBe('');
      expect(reason.length).toBeGreaterThan(40);
      expect(['published guidance', 'common practice', 'illustrative']).toContain(standing);
    }
  });

  it('have a source where they call themselves published', () => {
    for (const one of RULES) if (one.standing === 'published guidance') expect(one.source).toBeTruthy();
  });

  it('document every kind of event they tell, once', () => {
    const kinds = RULES.flatMap(({ events }) => events.map(({ kind }) => kind as string));
    expect(new Set(kinds).size).toBe(kinds.length);
    expect(Object.keys(EVENT_KINDS).sort()).toEqual([...kinds, 'memory-lost'].sort());
    for (const own of RULES) for (const event of own.events) expect(event.rule).toBe(own.id);
  });

  it('say an event in either system of units', () => {
    const watch = watched([down(30, 100), stay(2400)]);
    const event = watch.events.find(({ kind }) => kind === 'stop-owed')!;
    expect(eventText(event, 'metric')).toBe(event.text);
    expect(eventText(event, 'metric')).toMatch(
      /a stop is owed: there is a ceiling, and coming up you need to stop at 3 m\.$/,
    );
    expect(eventText(event, 'imperial')).toMatch(/need to stop at 10 ft\.$/);
  });

  it('count from the dive they happen in, where a day has several', () => {
    const one = watched([down(30, 100), stay(2400)]).events.find(({ kind }) => kind === 'stop-owed')!;
    const day = watched([down(9, 60), stay(60), up(0, 60), rest(48 * 3600), down(30, 100), stay(2400)]);
    const [minutes] = printClock(one.timeS).split(':');
    expect(one.text).toMatch(new RegExp(`^At ${minutes}:\\d\\d a stop`));
    expect(day.events.find(({ kind }) => kind === 'stop-owed')!.text).toMatch(
      new RegExp(`^Dive 2, at ${minutes}:\\d\\d a stop`),
    );
  });

  it('never give two kinds of stop the same word, mark or explanation', () => {
    for (const field of ['word', 'mark', 'explanation', 'standing'] as const) {
      expect(new Set(Object.values(STOP_KINDS).map((kind) => kind[field])).size).toBe(3);
    }
  });

  it('explain every state of a safety stop', () => {
    expect(Object.keys(SAFETY_STOP_MEANINGS)).toEqual([...SAFETY_STOP_STATES]);
  });
});
