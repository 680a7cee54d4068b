import { describe, expect, it } from 'vitest';
import { figuresOf } from '@/lib/ascent/figures';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Settings, Step } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { explainSettings, explainSettingsAtOnce, type Explanation } from '@/lib/files/settings/explain-settings';
import type { Recording } from '@/lib/files/records/record';
import { recordingsOfTimeline } from '@/lib/files/records/record-of-timeline';
import { channelsOf, layBeside } from '@/lib/files/settings/unit-and-model';
import { seeded } from '@/lib/quantity/seeded';
import { SEED } from '@/tests/laws/law';

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

function explained(recordings: readonly Recording[], more: Parameters<typeof explainSettings>[1] = {}): Explanation {
  const result = explainSettingsAtOnce(recordings, more);
  if (!result.ok) throw new Error(result.what);
  return result.value;
}

const sure = { water: false, altitude: false, gas: false };

describe('explaining a unit by its settings', () => {
  it('recovers gradient factors drawn by lot, to the percent', () => {
    const random = seeded(SEED);
    for (let draw = 0; draw < 12; draw += 1) {
      const high = 0.6 + Math.round(random() * 40) / 100;
      const low = Math.round((0.2 + random() * (high - 0.2)) * 100) / 100;
      const { ranked } = explained(recordedBy({ gradientFactors: { low, high } }), { doubt: sure });
      expect(ranked[0]!.settings.gradientFactors.low).toBeCloseTo(low, 9);
      expect(ranked[0]!.settings.gradientFactors.high).toBeCloseTo(high, 9);
      expect(ranked[0]!.misfit.score).toBeLessThan(1e-9);
    }
  });

  it.each<[string, Partial<Settings>]>([
    ['nothing else', { gradientFactors: { low: 0.3, high: 0.7 } }],
    ['salt water', { gradientFactors: { low: 0.55, high: 0.8 }, water: 'salt' }],
    [
      'an altitude of 1500 m',
      { gradientFactors: { low: 0.45, high: 0.95 }, altitudeM: 1500, start: { kind: 'adapted', altitudeM: 1500 } },
    ],
    ['a gas that was not breathed', { gradientFactors: { low: 0.5, high: 0.75 }, gas: { o2: 0.33, he: 0 } }],
  ])('recovers gradient factors together with %s, with everything in doubt', (_, settings) => {
    const { ranked } = explained(recordedBy(settings));
    const truth = { ...defaultSettings(), ...settings };
    expect(ranked[0]!.settings).toEqual({
      gradientFactors: settings.gradientFactors,
      water: truth.water,
      altitudeM: truth.altitudeM,
      gas: truth.gas,
    });
    expect(ranked[0]!.misfit.score).toBeLessThan(1e-9);
    expect(ranked[1]!.misfit.score).toBeGreaterThan(0.005);
  });

  it('finds a low gradient factor that lies in a narrow valley, from whole minutes and stops every 3 m', () => {
    const inStops = recordedBy({ gradientFactors: { low: 0.45, high: 0.8 } }, DEEP).map((recording) => ({
      ...recording,
      unit: {
        noStopS: recording.unit.noStopS!.map((s) => Math.floor(s / 60 + 1e-6) * 60),
        stopDepthM: recording.unit.ceilingM!.map((depth) => Math.ceil(depth / 3 - 1e-9) * 3),
      },
    }));
    const { ranked } = explained(inStops, { doubt: sure });
    expect(ranked[0]!.settings.gradientFactors.low).toBeCloseTo(0.45, 1);
    expect(ranked[0]!.misfit.stopDepthM).toBeLessThan(0.2);
  });

  it('recovers the high gradient factor from whole minutes, and says the low one left no trace', () => {
    const { ranked, sentences } = explained(inMinutes(recordedBy({ gradientFactors: { low: 0.3, high: 0.7 } })), {
      doubt: sure,
    });
    expect(ranked[0]!.settings.gradientFactors.high).toBe(0.7);
    expect(ranked[0]!.misfit.score).toBe(0);
    expect(sentences[0]).toMatch(
      /^The unit is best explained by a high gradient factor of 70: with these the model is off by less than 0.01 min/,
    );
    expect(sentences[1]).toContain('low gradient factor left no trace');
  });

  it('says so where two settings explain a coarse record about as well', () => {
    const { ranked, sentences } = explained(inMinutes(recordedBy({ gradientFactors: { low: 0.3, high: 0.7 } })));
    expect(ranked.slice(0, 2).every(({ misfit }) => misfit.score < 0.1)).toBe(true);
    expect(sentences.join(' ')).toContain('The record alone can hardly tell them apart.');
  });

  it('says so where nothing explains a unit that shows other figures altogether', () => {
    const odd = recordedBy({}).map((recording) => ({
      ...recording,
      unit: { noStopS: recording.timeS.map((t) => 60 * (5 + (t % 700) / 10)) },
    }));
    expect(explained(odd, { doubt: sure }).sentences[0]).toMatch(/^Nothing tried explains the unit well/);
  });

  it('gives the same answer every time, and tells how far it is', () => {
    const recordings = inMinutes(recordedBy({ gradientFactors: { low: 0.4, high: 0.8 } }, DEEP));
    const search = explainSettings(recordings);
    const shares: number[] = [];
    for (;;) {
      const step = search.next();
      if (step.done) {
        expect(step.value).toEqual(explainSettingsAtOnce(recordings));
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
    expect(explainSettingsAtOnce(bare)).toMatchObject({
      ok: false,
      what: 'The record holds too few figures of the unit’s own to explain.',
    });
  });
});

describe('laying the unit’s figures beside the model’s', () => {
  it('shows them equal where the unit is the model', () => {
    const recordings = recordedBy({}, DEEP);
    const made = diveFromRecords(recordings);
    if (!made.ok) throw new Error(made.what);
    const timeline = computeTimeline(made.value.dive, 10);
    const rows = layBeside(
      recordings[0]!,
      made.value.offsetS[0]!,
      timeline,
      figuresOf(timeline, made.value.dive.settings),
      100,
    );
    expect(rows).toHaveLength(100);
    for (const { unit, model } of rows) {
      if (Number.isFinite(unit.noStopS)) expect(model.noStopS).toBeCloseTo(unit.noStopS, 6);
      expect(model.ceilingM).toBeCloseTo(unit.ceilingM, 9);
    }
  });

  it('gives the model’s stop, its ceiling rounded deeper, where the unit showed stops', () => {
    const [recording] = recordedBy({}, DEEP);
    const stopDepthM = recording!.timeS.map((t) => (t > 900 && t < 1300 ? 3 : NaN));
    const withStops = { ...recording!, unit: { stopDepthM, stopTimeS: stopDepthM.map((depth) => depth * 20) } };
    expect(channelsOf(withStops)).toEqual(['stopDepthM', 'stopTimeS']);
    const made = diveFromRecords([withStops]);
    if (!made.ok) throw new Error(made.what);
    const timeline = computeTimeline(made.value.dive, 10);
    const rows = layBeside(withStops, 0, timeline, figuresOf(timeline, made.value.dive.settings));
    expect(rows.every(({ timeS }) => timeS > 900 && timeS < 1300)).toBe(true);
    for (const { model } of rows)
      expect(model.stopDepthM).toBe(
        model.ceilingM > 1e-6 ? Math.max(3, Math.ceil((model.ceilingM - 1e-6) / 3) * 3) : 0,
      );
    expect(rows.some(({ model }) => model.stopDepthM > 0 && model.stopTimeS > 0)).toBe(true);
    expect(rows.at(-1)!.model.stopTimeS % 60).toBe(0);
  });
});
