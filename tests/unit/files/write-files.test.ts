import { Window } from 'happy-dom';
import { describe, expect, it } from 'vitest';
import { cautions } from '@/content/cautions';
import facts from '@/content/published/uddf.json';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import { needsStop, stopStateOf } from '@/lib/ascent/stop-state';
import { defaultSettings } from '@/lib/dive/default-settings';
import type { Dive, Settings, Step } from '@/lib/dive/dive';
import { computeTimeline } from '@/lib/dive/timeline';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { readDiveFile } from '@/lib/files/read-dive-file';
import type { Recording } from '@/lib/files/records/record';
import { recordingsOfTimeline } from './record-of-timeline';
import { writeProfileCsv, writeReadingsCsv } from '@/lib/files/csv/write-csv';
import { writeUddf } from '@/lib/files/uddf/write-uddf';
import { madeRecording, switchTo } from './made-recordings';
import { valueOf } from '../read';

const STEPS: Step[] = [
  { kind: 'descend', toM: 45, durationS: 150 },
  { kind: 'stay', durationS: 1500.5 },
  { kind: 'ascend', toM: 21, durationS: 160 },
  { kind: 'switch', gas: { o2: 0.5, he: 0 } },
  { kind: 'stay', durationS: 300 },
  { kind: 'ascend', toM: 6, durationS: 100 },
  { kind: 'stay', durationS: 1200 },
  { kind: 'ascend', toM: 0, durationS: 60 },
  { kind: 'interval', durationS: 5400 },
  { kind: 'descend', toM: 18.3, durationS: 61 },
  { kind: 'stay', durationS: 1200 },
  { kind: 'ascend', toM: 0, durationS: 122 },
];

function diveOf(settings: Partial<Settings>): Dive {
  return { settings: { ...defaultSettings(), ...settings }, steps: STEPS, lines: [] };
}

const dive = diveOf({
  gas: { o2: 0.18, he: 0.45 },
  water: 'salt',
  altitudeM: 300,
  start: { kind: 'adapted', altitudeM: 300 },
});

async function readBack(text: string): Promise<readonly Recording[]> {
  const bytes = new TextEncoder().encode(text);
  const result = await readDiveFile(bytes, [bytes], { answer: () => undefined });
  if (!result.ok) throw new Error(`${result.what} ${result.mend}`);
  return result.recordings;
}

const legsOnly = (given: Dive) => recordingsOfTimeline(computeTimeline(given, 1e6));

describe('a UDDF file we write', () => {
  const text = writeUddf(legsOnly(dive), { writtenAt: '2026-05-01T10:00:00Z' });
  const document = new new Window().DOMParser().parseFromString(text, 'text/xml');
  const root = document.documentElement;
  const all = (name: string) => [...root.querySelectorAll(name)];

  it('is well-formed, with the root and version the standard asks for', () => {
    expect(root.tagName).toBe('uddf');
    expect(root.getAttribute('version')).toMatch(/^\d+\.\d+\.\d+$/);
    expect(document.querySelector('parsererror')).toBeNull();
  });

  it('keeps the compulsory order of its sections', () => {
    const fact = facts.facts.find((one) => one.text.startsWith('section order'))!.text;
    const order = fact
      .slice(fact.indexOf(':') + 1, fact.indexOf(';'))
      .split(',')
      .map((name) => name.trim());
    const sections = [...root.children].map((section) => section.tagName);
    expect(sections).toEqual(order.filter((name) => sections.includes(name)));
    expect(sections).toContain('generator');
    expect(sections).toContain('profiledata');
  });

  it('nests profile data as the standard does', () => {
    expect(root.querySelectorAll('profiledata > repetitiongroup > dive > samples > waypoint')).toHaveLength(
      all('waypoint').length,
    );
    expect(all('dive')).toHaveLength(2);
  });

  it('gives every waypoint a depth in metres and a time in seconds, the first of a dive at nought', () => {
    for (const waypoint of all('waypoint')) {
      expect(waypoint.querySelectorAll('depth')).toHaveLength(1);
      expect(waypoint.querySelectorAll('divetime')).toHaveLength(1);
      expect(waypoint.querySelectorAll('switchmix').length).toBeLessThanOrEqual(1);
    }
    for (const samples of all('samples')) {
      expect(samples.children[0]!.querySelector('depth')!.textContent).toBe('0');
      expect(samples.children[0]!.querySelector('divetime')!.textContent).toBe('0');
    }
    expect(all('samples')[0]!.children[1]!.querySelector('depth')!.textContent).toBe('45');
    expect(all('samples')[0]!.children[1]!.querySelector('divetime')!.textContent).toBe('150');
  });

  it('gives gases as fractions that add up, and refers to none it does not define', () => {
    const ids = all('mix').map((mix) => mix.getAttribute('id'));
    for (const mix of all('mix')) {
      const sum = ['o2', 'n2', 'he', 'ar', 'h2'].reduce(
        (total, name) => total + Number(mix.querySelector(name)!.textContent),
        0,
      );
      expect(sum).toBeCloseTo(1, 9);
    }
    for (const change of all('switchmix')) {
      expect(ids).toContain(change.getAttribute('ref'));
      expect(change.childNodes).toHaveLength(0);
    }
  });

  it('gives temperatures in kelvin', async () => {
    const cold = madeRecording(
      [
        [0, 0],
        [60, 10],
        [120, 0],
      ],
      { temperatureC: Float64Array.of(NaN, 18.05, 4) },
    );
    const written = writeUddf([cold]);
    expect(written).toContain('<temperature>291.2</temperature>');
    expect([...(await readBack(written))[0]!.temperatureC!]).toEqual([NaN, 18.05, 4]);
  });

  it('carries the caution', () => {
    expect(text).toContain(cautions.general);
  });

  it('keeps a text that would break the file from breaking it', async () => {
    const odd = madeRecording(
      [
        [0, 0],
        [60, 10],
      ],
      { startedAt: '<&"]]>' },
    );
    expect((await readBack(writeUddf([odd])))[0]!.startedAt).toBe('<&"]]>');
  });
});

describe('files we write read back the same', () => {
  const same = (from: Dive, to: Dive) => {
    expect(to.steps).toEqual(from.steps);
    expect(to.settings.gas).toEqual(from.settings.gas);
    const [one, other] = [computeTimeline(from, 30), computeTimeline(to, 30)];
    expect(other.timeS).toEqual(one.timeS);
    expect(other.depthM).toEqual(one.depthM);
    return [one, other] as const;
  };

  it('UDDF: steps, gases, interval, site and every tension', async () => {
    const result = valueOf(diveFromRecords(await readBack(writeUddf(legsOnly(dive)))));
    const [one, other] = same(dive, result.dive);
    expect(other.nitrogenBar).toEqual(one.nitrogenBar);
    expect(other.heliumBar).toEqual(one.heliumBar);
    expect(result.dive.settings).toMatchObject({ water: 'salt', altitudeM: 300 });
  });

  it('CSV: steps, gases and interval', async () => {
    same(
      dive,
      valueOf(diveFromRecords(await readBack(writeProfileCsv(legsOnly(dive))), { settings: { water: 'salt' } })).dive,
    );
  });

  it('CSV of one dive, without a column for its number', async () => {
    const one = madeRecording(
      [
        [0, 0],
        [60.125, 10.1],
        [600, 0],
      ],
      { switches: [switchTo(0, 0.32)] },
    );
    const written = writeProfileCsv([one]);
    expect(written.split('\n').slice(2)).toEqual(['time_s,depth_m,gas', '0,0,32%', '60.125,10.1,32%', '600,0,32%', '']);
    const [back] = await readBack(written);
    expect(back).toMatchObject({ timeS: one.timeS, depthM: one.depthM, switches: one.switches });
  });

  it('both: every figure of a unit the format has a place for', async () => {
    const unit = {
      noStopS: Float64Array.of(NaN, 1200, 60),
      ceilingM: Float64Array.of(NaN, 0, 4.5),
      stopDepthM: Float64Array.of(NaN, NaN, 6),
      stopTimeS: Float64Array.of(NaN, NaN, 120),
    };
    const recorded = madeRecording(
      [
        [0, 0],
        [60, 30],
        [600, 25],
      ],
      { unit, switches: [switchTo(0, 0.21)] },
    );
    expect((await readBack(writeProfileCsv([recorded])))[0]!.unit).toEqual(unit);
    const { ceilingM: _, ...inUddf } = unit;
    expect((await readBack(writeUddf([recorded])))[0]!.unit).toEqual(inUddf);
  });

  it('the readings, with what the model says in the place of a unit’s figures', async () => {
    const timeline = computeTimeline(dive, 30, { intervalEveryS: 600 });
    const figures = figuresOf(timeline, dive.settings);
    const written = writeReadingsCsv(timeline, figures);
    const recordings = await readBack(written);
    expect(recordings).toHaveLength(2);
    const ceilings = recordings.flatMap(({ unit }) => [...unit.ceilingM!]);
    expect(ceilings).toHaveLength(timeline.length);
    ceilings.forEach((ceiling, i) => expect(ceiling).toBeCloseTo(figures.ceilingM[i]!, 3));
    const back = computeTimeline(valueOf(diveFromRecords(recordings, { settings: { water: 'salt' } })).dive, 30);
    expect(back.timeS[back.length - 1]).toBeCloseTo(timeline.timeS[timeline.length - 1]!, 6);
  });
});

describe('a CSV file we write', () => {
  it('begins with the caution, in one cell of a spreadsheet', () => {
    const timeline = computeTimeline(dive, 600);
    for (const text of [
      writeProfileCsv(legsOnly(dive)),
      writeReadingsCsv(timeline, figuresOf(timeline, dive.settings)),
    ]) {
      expect(text.split('\n')[0]).toBe(`"# ${cautions.general}"`);
    }
  });

  it('says how the diver stands as the schedule does, and no time left while the way up itself needs a stop', () => {
    const { plan } = defaultSettings();
    const deep: Step[] = [
      { kind: 'descend', toM: 60, durationS: 200 },
      { kind: 'stay', durationS: 600 },
    ];
    const slow = { ...diveOf({ plan: { ...plan, ascentMMin: 3 } }), steps: deep };
    const timeline = computeTimeline(slow, 10);
    const figures = figuresOf(timeline, slow.settings);
    const [, , , headings, ...rows] = writeReadingsCsv(timeline, figures).trimEnd().split('\n');
    const column = (name: string) => headings!.split(',').indexOf(name);
    const seen = new Set<string>();
    rows.forEach((row, i) => {
      const cells = row.split(',');
      const state = cells[column('state')]!;
      seen.add(state);
      const { ceiling, schedule } = figuresAt(timeline, figures, i);
      expect(state, `at ${timeline.timeS[i]} s`).toBe(stopStateOf(ceiling.depthM, needsStop(schedule)));
      if (state === 'filling') expect(cells[column('no_stop_time_min')]).toBe('0');
    });
    expect([...seen]).toEqual(expect.arrayContaining(['free', 'filling', 'owed']));
  });

  it('says what settings the readings were worked out with', () => {
    const shown = diveOf({ gradientFactors: { low: 0.4, high: 0.85 } });
    const timeline = computeTimeline(shown, 600);
    expect(writeReadingsCsv(timeline, figuresOf(timeline, shown.settings)).split('\n')[2]).toContain(
      'Gradient factors 40/85, reference water, altitude 0 m.',
    );
  });
});
