import { describe, expect, it } from 'vitest';
import { parseScript, writeScript } from '@/lib/dive/script';
import { diveFromRecords } from '@/lib/files/records/dive-from-record';
import { inDiveOrder, likelyChoice, seriesOf } from '@/lib/files/records/dive-log';
import { surfaceIntervals } from '@/lib/files/records/surface-intervals';
import type { Recording } from '@/lib/files/records/record';
import { readUddf } from '@/lib/files/uddf/read-uddf';
import { madeRecording } from '../made-recordings';

const DIVE: readonly (readonly [number, number])[] = [
  [0, 0],
  [60, 18],
  [1800, 18],
  [2400, 0],
];
const at = (startedAt: string | undefined, more: Partial<Recording> = {}) =>
  madeRecording(DIVE, { startedAt, ...more });
const hours = (recordings: readonly Recording[]) =>
  surfaceIntervals(recordings).map((intervalS) => (intervalS === undefined ? undefined : intervalS / 3600));

describe('a log of dives', () => {
  it('tells the time between them by their zones', () => {
    const gap = 3 - 2400 / 3600;
    expect(hours([at('2024-05-01T10:00:00+02:00'), at('2024-05-01T11:00:00Z')])[1]).toBeCloseTo(gap, 9);
    expect(hours([at('2024-05-01T10:00:00-05:00'), at('2024-05-01T10:00:00-08:00')])[1]).toBeCloseTo(gap, 9);
    expect(hours([at('2024-05-01T10:00:00'), at('2024-05-01T13:00:00')])[1]).toBeCloseTo(gap, 9);
    expect(hours([at('2024-05-01T10:00:00+02:00'), at('2024-05-01T13:00:00')])[1]).toBeUndefined();
  });

  it('is split into series where three days or the unknown lie between', () => {
    const log = [
      at('2024-05-01T09:00:00'),
      at('2024-05-01T13:00:00'),
      at('2024-05-03T09:00:00'),
      at('2024-05-20T09:00:00'),
      at(undefined),
      at(undefined, { intervalBeforeS: 3600 }),
      at(undefined, { intervalBeforeS: Infinity }),
    ];
    expect(seriesOf(log).map(({ dives, begins }) => [dives, begins])).toEqual([
      [[0, 1, 2], 'first'],
      [[3], 'rest'],
      [[4, 5], 'untold'],
      [[6], 'rest'],
    ]);
    expect(likelyChoice(log)).toEqual([]);
    expect(likelyChoice(log.slice(0, 3))).toEqual([0, 1, 2]);
    expect(likelyChoice([at(undefined), at(undefined)])).toEqual([0, 1]);
    // Ten days running are one series, and longer than a script.
    expect(likelyChoice(Array.from({ length: 10 }, (_, day) => at(`2024-05-${10 + day}T09:00:00`)))).toEqual([]);
  });

  it('that is written newest first stands in the order it was dived', () => {
    const log = ['2024-05-03T09:00:00', '2024-05-01T13:00:00', '2024-05-01T09:00:00'].map((start) => at(start));
    const { recordings, turned } = inDiveOrder(log);
    expect(turned).toBe(true);
    expect(recordings).toEqual([...log].reverse());
    // Each from a nought of its own: nothing to go by.
    expect(inDiveOrder([at(undefined, { clockS: 20 }), at(undefined, { clockS: 10 })]).turned).toBe(false);
  });

  it('makes a script the desk can read, however far apart its dives are, or says why not', () => {
    for (const log of [
      [at('2024-05-01T09:00:00'), at('2024-06-01T09:00:00')],
      [at(undefined), at(undefined, { intervalBeforeS: Infinity })],
      ['01', '03', '05', '07', '08'].map((day) => at(`2024-05-${day}T09:00:00`)),
    ]) {
      const made = diveFromRecords(log);
      if (!made.ok) {
        expect(made.what).toMatch(/a script follows one week/);
        continue;
      }
      expect(parseScript(writeScript(made.value.dive)).ok).toBe(true);
      expect(made.value.notes.join()).toMatch(/A surface interval is given as 72 h/);
    }
  });

  it('opens with a thousand dives', async () => {
    const dive = (number: number) =>
      `<dive id="d${number}"><informationbeforedive><datetime>${new Date(Date.UTC(2020, 0, 1 + number)).toISOString()}</datetime></informationbeforedive><samples>${DIVE.map(([time, depth]) => `<waypoint><depth>${depth}</depth><divetime>${time}</divetime></waypoint>`).join('')}</samples></dive>`;
    const file = `<uddf version="3.2.2"><profiledata><repetitiongroup id="g">${Array.from({ length: 1000 }, (_, i) => dive(999 - i)).join('')}</repetitiongroup></profiledata></uddf>`;
    const read = await readUddf([file]);
    if (!read.ok) throw new Error(read.what);
    expect(read.recordings).toHaveLength(1000);
    expect(seriesOf(read.recordings)).toHaveLength(1);
    expect(read.recordings[0]!.startedAt).toMatch(/^2020-01-01/);
  });
});

describe('the gas of a UDDF file', () => {
  const gases = '<gasdefinitions><mix id="a"><o2>0.32</o2></mix><mix id="b"><o2>0.5</o2></mix></gasdefinitions>';
  const file = (more: string) =>
    `<uddf version="3.2.2">${gases}<profiledata><repetitiongroup id="g"><dive id="d">${more}<samples>${DIVE.map(([time, depth]) => `<waypoint><depth>${depth}</depth><divetime>${time}</divetime></waypoint>`).join('')}</samples></dive></repetitiongroup></profiledata></uddf>`;
  const tank = (ref: string) => `<tankdata><link ref="${ref}"/></tankdata>`;
  const first = async (more: string) => {
    const read = await readUddf([file(more)]);
    if (!read.ok) throw new Error(read.what);
    return read.recordings[0]!;
  };

  it('is the cylinder’s where no waypoint names one, and that is said', async () => {
    const recording = await first(tank('a'));
    expect(recording.switches).toEqual([{ timeS: 0, gas: { o2: 0.32, he: 0 } }]);
    const made = diveFromRecords([recording]);
    expect(made.ok && made.value.notes.join()).toMatch(/32% is taken, from its cylinder/);
  });

  it('is asked for where cylinders hold several', async () => {
    const recording = await first(tank('a') + tank('b'));
    expect(recording.switches).toEqual([]);
    expect(diveFromRecords([recording])).toMatchObject({ ok: false, what: expect.stringMatching(/32% and 50%/) });
    const said = diveFromRecords([recording], { settings: { gas: { o2: 0.5, he: 0 } } });
    expect(said.ok && said.value.dive.settings.gas.o2).toBe(0.5);
  });

  it('is air where nothing is named, and that is said', async () => {
    const made = diveFromRecords([await first('')]);
    expect(made.ok && made.value.notes.join()).toMatch(/air is meant by that/);
  });
});
