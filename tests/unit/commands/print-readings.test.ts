import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readingsAsCsv, readingsAsText } from '@/app/commands/readings/print-readings';
import { readingsOf, type SampleReadings } from '@/app/commands/readings/readings-of';
import { printClock } from '@/lib/quantity/duration';
import { diveOf } from '../read';

const SCRIPT = `gas: 28%
gradient factors: 35/80
stop rounding: 0.1 min

descend to 33 m at 18 m/min
stay 24 min
ascend to 9 m at 9 m/min
stay 2 min
ascend to surface at 9 m/min
`;

/** On so slow a way up stops are owed before there is a ceiling. */
const SLOW = `ascent rate: 3 m/min\n${SCRIPT.replace('33 m', '60 m')}`;

function readings(script: string) {
  return readingsOf(diveOf(script), [], 150);
}

/** So much of a figure is the dust of sums; what is printed has three decimals. */
const DUST = 1e-6;
const STEP = 1e-3;

function expectDown(printed: number, figure: number) {
  expect(printed).toBeLessThanOrEqual(figure + DUST);
  expect(printed).toBeGreaterThan(figure - STEP - DUST);
}

function expectUp(printed: number, figure: number) {
  expect(printed).toBeGreaterThanOrEqual(figure - DUST);
  expect(printed).toBeLessThan(figure + STEP + DUST);
}

/** One row as it is printed, by the heading over it, beside the sample it is of. */
function expectRow(row: Readonly<Record<string, string>>, sample: SampleReadings) {
  const of = (heading: string) => Number(row[heading]);
  expect(row.state).toBe(sample.state);
  if (sample.state === 'filling') expect(row['no-stop min']).toBe('none');
  else if (sample.noStopMin === null) expect(row['no-stop min']).toBe('over 99');
  else expectDown(of('no-stop min'), sample.noStopMin);
  expectUp(of('ceiling m'), sample.ceilingM);
  expectUp(of('time to surface min'), sample.timeToSurfaceMin!);
  const stops = row['required stops'] === 'none' ? [] : row['required stops']!.split('; ');
  expect(stops).toHaveLength(sample.requiredStops.length);
  stops.forEach((stop, index) => {
    const [minutes, depth] = stop.split(' min at ');
    expectUp(Number(minutes), sample.requiredStops[index]!.minutes);
    expect(depth).toBe(`${sample.requiredStops[index]!.depthM} m`);
  });
  expect(Math.abs(of('depth m') - sample.depthM)).toBeLessThanOrEqual(STEP / 2 + DUST);
  expect(Math.abs(of('supersaturation') - sample.supersaturation)).toBeLessThanOrEqual(6e-5);
  expect(Math.abs(of('surfacing supersaturation') - sample.surfacingSupersaturation)).toBeLessThanOrEqual(6e-5);
  expect(of('leading compartment')).toBe(sample.leadingCompartment);
}

const withoutRemarks = (text: string) => text.replace(/^#.*\n/gm, '');

describe.each([
  ['free', 'clearing', 'owed', SCRIPT],
  ['free', 'filling', 'owed', SLOW],
])('readings of a dive, %s, %s and %s, written out', (...[before, between, owed, script]) => {
  it('tell how the diver stands', () => {
    const states = readings(script).samples.map(({ state }) => state);
    expect(states).toEqual(expect.arrayContaining([before, between, owed]));
  });

  it('as comma-separated values tell each figure, time left never rounded up, stops and ceilings never down', () => {
    const told = readings(script);
    const { data } = Papa.parse<Record<string, string>>(withoutRemarks(readingsAsCsv(told)).trimEnd(), {
      header: true,
    });
    expect(data).toHaveLength(told.samples.length);
    expect(told.samples.some(({ requiredStops }) => requiredStops.length > 1)).toBe(true);
    data.forEach((row, index) => {
      const sample = told.samples[index]!;
      expect(Number(row['time s'])).toBe(sample.timeS);
      expectRow(row, sample);
      for (let c = 0; c < 16; c += 1)
        expect(Math.abs(Number(row[`nitrogen ${c + 1} bar`]) - sample.nitrogenBar[c]!)).toBeLessThanOrEqual(6e-7);
    });
  });

  it('as a table for people tell the same', () => {
    const told = readings(script);
    const [head, ...rows] = withoutRemarks(readingsAsText(told))
      .trimEnd()
      .split('\n')
      .map((line) => line.trim().split(/ {2,}/));
    expect(rows).toHaveLength(told.samples.length);
    rows.forEach((cells, index) => {
      const row = Object.fromEntries(head!.map((heading, at) => [heading, cells[at]!]));
      expect(row.time).toBe(printClock(told.samples[index]!.timeS));
      expectRow(row, told.samples[index]!);
    });
  });
});
