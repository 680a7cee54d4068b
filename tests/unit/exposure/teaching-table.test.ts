import { describe, expect, it } from 'vitest';
import { planFrom } from '@/lib/exposure/ascent-plan';
import { squareDive, teachingTable } from '@/lib/exposure/teaching-table';
import { scripted } from './scripted';

const { settings } = scripted('gradient factors: 85/85');
const rows = teachingTable(settings, { depthsM: [12, 18, 24, 30, 40], bottomMins: [1, 10, 20, 40] });
const stopsAfter = (depthM: number, minutes: number) => planFrom(squareDive(settings, depthM, minutes)).schedule.stops;

describe('a teaching table', () => {
  it('has no-stop times that fall with depth', () => {
    const minutes = rows.map(({ noStopMin }) => noStopMin!);
    expect(minutes).toEqual([...minutes].sort((one, other) => other - one));
    expect(new Set(minutes).size).toBe(5);
  });

  it('gives the last whole minute without a stop', () => {
    for (const { depthM, noStopMin } of rows) {
      expect(stopsAfter(depthM, noStopMin!)).toEqual([]);
      expect(stopsAfter(depthM, noStopMin! + 1)).not.toEqual([]);
    }
  });

  it('gives the stops of each bottom time that reaches the depth', () => {
    expect(rows[4]!.entries.map(({ bottomMin }) => bottomMin)).toEqual([10, 20, 40]);
    expect(rows[4]!.entries[2]).toMatchObject({ stops: stopsAfter(40, 40) });
    for (const { noStopMin, entries } of rows) {
      for (const { bottomMin, stops } of entries) expect(stops.length === 0).toBe(bottomMin <= noStopMin!);
    }
  });

  it('counts the descent into the bottom time', () => {
    expect(squareDive(settings, 36, 20, 18).steps).toEqual([
      { kind: 'descend', toM: 36, durationS: 120 },
      { kind: 'stay', durationS: 1080 },
    ]);
  });

  it('says when there is no stop however long, and when there is one at once', () => {
    expect(teachingTable(settings, { depthsM: [3], bottomMins: [] })[0]!.noStopMin).toBeNull();
    const strict = { ...settings, gradientFactors: { low: 0.01, high: 0.01 } };
    expect(teachingTable(strict, { depthsM: [60], bottomMins: [] })[0]!.noStopMin).toBe(0);
  });
});
