// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { plannedAt } from '@/lib/ascent/plan/ascent-start';
import { figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Settings, Step } from '@/lib/dive/dive';
import { legsOf } from '@/lib/dive/legs';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { explainSettings, type Explanation } from '@/lib/files/settings/explain-settings';
import type { Recording } from '@/lib/files/records/record';
import { recordingsOfTimeline } from '../record-of-timeline';
import { channelsOf, layBeside } from '@/lib/files/settings/unit-and-model';
import { seeded } from '@/lib/quantity/seeded';
import { LONG, SEED } from '@/tests/laws/law';
import { CLEAN, madeDisturbance, madeLimits, madeSteps, recordOf, type Disturbance, type Truth } from './made-units';
import { valueOf } from '../../read';

const DEEP: Step[] = [
  { kind: 'descend', toM: 40, durationS: 120 },
  { kind: 'stay', durationS: 1200 },
  { kind: 'ascend', toM: 21, durationS: 130 },
  { kind: 'stay', durationS: 600 },
  { kind: 'ascend', toM: 6, durationS: 120 },
  { kind: 'stay', durationS: 900 },
  { kind: 'ascend', toM: 0, durationS: 60 },
];
const SECOND: Step[] = [
  { kind: 'interval', durationS: 5400 },
  { kind: 'descend', toM: 30, durationS: 100 },
  { kind: 'stay', durationS: 900 },
  { kind: 'ascend', toM: 5, durationS: 180 },
  { kind: 'stay', durationS: 240 },
  { kind: 'ascend', toM: 0, durationS: 60 },
];
const AT_SEA = { water: 'reference', altitudeM: 0, gas: { o2: 0.21, he: 0 } };
const AIR_SWITCH = [{ timeS: 0, gas: { o2: 0.21, he: 0 } }];

/** What a unit with these settings would have shown, recorded as worn in reference water at sea level on air. */
function recordedBy(settings: Partial<Settings>, steps: readonly Step[] = [...DEEP, ...SECOND]): Recording[] {
  const worn = { ...defaultSettings(), ...settings };
  const timeline = computeTimeline({ settings: worn, steps: [...steps], lines: [] }, 10, { intervalEveryS: 3600 });
  return recordingsOfTimeline(timeline, figuresOf(timeline, worn)).map((recording) => ({
    ...recording,
    altitudeM: 0,
    water: 'reference',
    switches: AIR_SWITCH,
  }));
}

/** The same from a unit that shows whole minutes and no ceiling. */
function inMinutes(recordings: readonly Recording[]): Recording[] {
  return recordings.map((recording) => ({
    ...recording,
    unit: { noStopS: recording.unit.noStopS!.map((s) => Math.floor(s / 60 + 1e-6) * 60) },
  }));
}

function explainedAtOnce(...given: Parameters<typeof explainSettings>) {
  const search = explainSettings(...given);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function explained(recordings: readonly Recording[], more: Parameters<typeof explainSettings>[1] = {}): Explanation {
  return valueOf(explainedAtOnce(recordings, more));
}

const sure = { water: false, altitude: false, gas: false, memory: false };

/** Whether a set that is as the record says has these limits in it. */
function holds({ sets, sawStops, explains }: Explanation, { low, high }: Settings['gradientFactors']): boolean {
  const [first] = sets;
  if (!explains || !first || first.site.altitudeM !== 0 || first.site.water !== 'reference') return false;
  return first.pairs.some(
    (pair) => pair.high === Math.round(high * 100) && (!sawStops || pair.low === Math.round(low * 100)),
  );
}

/** Records with known truth, and how many of them the set found holds; a single wrong answer is one too many. */
function trials(count: number, disturbed: boolean): { held: number; singleWrong: string[] } {
  const random = seeded(SEED);
  let held = 0;
  const singleWrong: string[] = [];
  for (let draw = 0; draw < count; draw += 1) {
    const gradientFactors = madeLimits(random);
    const steps = madeSteps(random);
    const disturbance = disturbed ? madeDisturbance(random) : CLEAN;
    const found = explained([recordOf({ gradientFactors }, steps, disturbance, random)], { doubt: sure });
    if (holds(found, gradientFactors)) held += 1;
    else if (found.explains && found.sets[0]!.pairs.length === 1)
      singleWrong.push(JSON.stringify({ gradientFactors, disturbance }));
  }
  return { held, singleWrong };
}

const TRUTH = { low: 0.4, high: 0.85 };
const atSea = (disturbance: Partial<Disturbance>, truth: Truth = { gradientFactors: TRUTH }) =>
  recordOf(truth, DEEP, { ...CLEAN, ...disturbance }, seeded(7));

describe('explaining a unit by its settings', () => {
  // Where there is time, as many as it takes to see the share that is promised; else one may be the odd one of hundreds.
  it.each([
    ['clean', 0.99, false],
    ['late, rounded, capped, missing and outlying', 0.95, true],
  ] as const)(
    'finds a range that holds the truth in all but the odd one of %s records',
    (_, promised, disturbed) => {
      const count = LONG ? 200 : 8;
      const { held, singleWrong } = trials(count, disturbed);
      expect(held).toBeGreaterThanOrEqual(LONG ? promised * count : count - 1);
      expect(singleWrong).toEqual([]);
    },
    LONG ? 1_200_000 : 120_000,
  );

  it('does not take figures that stand a sample late for another altitude, and says that they are late', () => {
    const found = explained([atSea({ lateSamples: 1 })]);
    expect(holds(found, TRUTH)).toBe(true);
    expect(found.sentences.join(' ')).toContain('Its figures stand 10 s too late in the record');
  });

  it('bears an outlier, and a no-stop time of 0 at the surface', () => {
    const record = atSea({});
    const noStopS = record.unit.noStopS!.map((seconds, i) => (record.depthM[i]! < 1 ? 0 : seconds));
    noStopS[60] = 99 * 60;
    const found = explained([{ ...record, unit: { ...record.unit, noStopS } }]);
    expect(holds(found, TRUTH)).toBe(true);
    expect(found.sentences.join(' ')).toMatch(/1 of \d+ readings is far from what these would show/);
  });

  it('sees where a display ends although outliers lie beyond it', () => {
    const easy: Step[] = [
      { kind: 'descend', toM: 26, durationS: 80 },
      { kind: 'stay', durationS: 720 },
      { kind: 'ascend', toM: 12, durationS: 100 },
      { kind: 'stay', durationS: 900 },
      { kind: 'ascend', toM: 5, durationS: 60 },
      { kind: 'stay', durationS: 1200 },
      { kind: 'ascend', toM: 0, durationS: 60 },
    ];
    const limits = { low: 0.62, high: 0.95 };
    const shows = { ...CLEAN, capMin: 30, outlying: 0.02 };
    const found = explained([recordOf({ gradientFactors: limits }, easy, shows, seeded(3))], { doubt: sure });
    expect(found.explains).toBe(true);
    expect(found.sets[0]!.pairs.some(({ high }) => high === 95)).toBe(true);
  });

  it('gives a range where several limits explain a record without error, and says what would tell them apart', () => {
    const shallow: Step[] = [
      { kind: 'descend', toM: 30, durationS: 100 },
      { kind: 'stay', durationS: 1080 },
      { kind: 'ascend', toM: 5, durationS: 180 },
      { kind: 'stay', durationS: 400 },
      { kind: 'ascend', toM: 0, durationS: 60 },
    ];
    const limits = { low: 0.5, high: 0.8 };
    const found = explained(
      [recordOf({ gradientFactors: limits }, shallow, { ...CLEAN, minutes: 'down', ceilingStepM: 3 }, seeded(1))],
      { doubt: sure },
    );
    expect(holds(found, limits)).toBe(true);
    const lows = found.sets[0]!.pairs.map(({ low }) => low);
    expect(Math.max(...lows) - Math.min(...lows)).toBeGreaterThan(10);
    expect(found.sentences.join(' ')).toMatch(/can’t be told apart from this record/);
    expect(found.sentences.join(' ')).toMatch(/more at 30 m would tell: with /);
  });

  it.each<[string, Truth]>([
    ['salt water', { gradientFactors: TRUTH, water: 'salt' }],
    ['an altitude of 1500 m', { gradientFactors: { low: 0.45, high: 0.95 }, altitudeM: 1500 }],
    ['a gas that was not breathed', { gradientFactors: { low: 0.5, high: 0.75 }, gas: { o2: 0.32, he: 0 } }],
  ])('has the truth among what it finds where the unit is set to %s', (_, truth) => {
    const { sets, others } = explained([atSea({}, truth)]);
    const { water = 'reference', altitudeM = 0, gas = { o2: 0.21, he: 0 }, gradientFactors } = truth;
    const own = [...sets, ...others].find(
      ({ site }) =>
        site.water === water && Math.abs(site.altitudeM - altitudeM) <= 50 && Math.abs(site.gas.o2 - gas.o2) < 0.011,
    );
    expect(own).toBeDefined();
    expect(Math.abs(own!.best.settings.gradientFactors.high - gradientFactors.high)).toBeLessThan(0.025);
  });

  it('tells a memory that was lost between two dives, where the record holds both', () => {
    const settings = { ...defaultSettings(), gradientFactors: TRUTH };
    const shallow: Step[] = [
      { kind: 'interval', durationS: 2400 },
      { kind: 'descend', toM: 18, durationS: 100 },
      { kind: 'stay', durationS: 1800 },
      { kind: 'ascend', toM: 0, durationS: 180 },
    ];
    const dive = { settings, steps: [...DEEP, ...shallow], lines: [] };
    const second = legsOf(dive).legs.findIndex(({ diveNumber }) => diveNumber === 1);
    const forgetful = computeTimeline(dive, 10, { intervalEveryS: 3600, freshAtLegs: [second] });
    const recordings = inMinutes(recordingsOfTimeline(forgetful, figuresOf(forgetful, settings))).map((recording) => ({
      ...recording,
      altitudeM: 0,
      water: 'reference' as const,
      switches: AIR_SWITCH,
    }));
    const { sets, others, sentences } = explained(recordings);
    const forgot = [...sets, ...others].find(({ site }) => site.forgotBefore === 1 && site.altitudeM === 0);
    expect(forgot?.pairs).toContainEqual({ low: 85, high: 85 });
    expect(sentences.join(' ')).toContain('the tissues it reckons with begun anew before dive 2');
    // At its word the record is not believed here.
    expect(sets.map(({ site }) => site)).not.toContainEqual(expect.objectContaining({ ...AT_SEA, forgotBefore: 0 }));
  });

  it('believes the record where departing from it gains next to nothing', () => {
    const { sets } = explained([atSea({ minutes: 'down', ceilingStepM: 1 })]);
    expect(sets).toHaveLength(1);
    expect(sets[0]!.site).toMatchObject({ water: 'reference', altitudeM: 0, gas: { o2: 0.21 } });
  });

  it('recovers the high gradient factor from whole minutes, and says the low one left no trace', () => {
    const found = explained(inMinutes(recordedBy({ gradientFactors: { low: 0.3, high: 0.7 } })), { doubt: sure });
    expect(holds(found, { low: 0.3, high: 0.7 })).toBe(true);
    expect(found.sentences[0]).toMatch(/^The unit is explained by a high gradient factor (of 70|from 6\d to 7\d)/);
    expect(found.sentences.join(' ')).toContain('low gradient factor left no trace');
  });

  it('says so where nothing explains a unit that shows other figures altogether', () => {
    const odd = recordedBy({}).map((recording) => ({
      ...recording,
      unit: { noStopS: recording.timeS.map((t) => 60 * (5 + (t % 700) / 10)) },
    }));
    expect(explained(odd, { doubt: sure }).sentences[0]).toMatch(/^Nothing tried explains the unit/);
  });

  it('gives the same answer every time, and tells how far it is', () => {
    const recordings = inMinutes(recordedBy({ gradientFactors: { low: 0.4, high: 0.8 } }, DEEP));
    const search = explainSettings(recordings);
    const shares: number[] = [];
    for (;;) {
      const step = search.next();
      if (step.done) {
        expect(step.value).toEqual(explainedAtOnce(recordings));
        break;
      }
      shares.push(step.value.done / step.value.of);
    }
    expect(shares.every((share, i) => share > 0 && share <= 1 + 1e-9 && share >= (shares[i - 1] ?? 0) - 1e-9)).toBe(
      true,
    );
    expect(shares.length).toBeGreaterThan(20);
  });

  it('refuses a record that holds none of the unit’s figures', () => {
    const bare = recordedBy({}).map((recording) => ({ ...recording, unit: {} }));
    expect(explainedAtOnce(bare)).toMatchObject({
      ok: false,
      what: 'The record holds too few figures of the unit’s own to explain.',
    });
  });
});

describe('laying the unit’s figures beside the model’s', () => {
  it('shows them equal where the unit is the model', () => {
    const recordings = recordedBy({}, DEEP);
    const made = valueOf(diveFromRecords(recordings));
    const timeline = computeTimeline(made.dive, 10);
    const rows = layBeside(recordings[0]!, made.offsetS[0]!, timeline, figuresOf(timeline, made.dive.settings), 100);
    expect(rows).toHaveLength(100);
    for (const { unit, model } of rows) {
      if (Number.isFinite(unit.noStopS)) expect(model.noStopS).toBeCloseTo(unit.noStopS, 6);
      expect(model.ceilingM).toBeCloseTo(unit.ceilingM, 9);
    }
  });

  it('gives the stop of the model’s own schedule where the unit showed stops', () => {
    const [recording] = recordedBy({}, DEEP);
    const stopDepthM = recording!.timeS.map((t) => (t > 900 && t < 1300 ? 3 : NaN));
    const withStops = { ...recording!, unit: { stopDepthM, stopTimeS: stopDepthM.map((depth) => depth * 20) } };
    expect(channelsOf(withStops)).toEqual(['stopDepthM', 'stopTimeS']);
    const made = valueOf(diveFromRecords([withStops]));
    const timeline = computeTimeline(made.dive, 10);
    const figures = figuresOf(timeline, made.dive.settings);
    const rows = layBeside(withStops, 0, timeline, figures);
    expect(rows.every(({ timeS }) => timeS > 900 && timeS < 1300)).toBe(true);
    for (const { timeS, model } of rows)
      expect(model.stopDepthM).toBe(plannedAt(timeline, figures, sampleAt(timeline, timeS)).stops[0]?.depthM ?? 0);
    expect(rows.some(({ model }) => model.stopDepthM > 0 && model.stopTimeS > 0)).toBe(true);
    expect(rows.at(-1)!.model.stopTimeS % 60).toBe(0);
  });
});
