import { describe, expect, it } from 'vitest';
import {
  DEFAULT_BENCH,
  benchUnitSchema,
  sheetAboutSchema,
  type BenchSettings,
  type Readings,
} from '@/lib/bench/bench-settings';
import { parseRun } from '@/lib/bench/chamber-run';
import { allowedAtM, depthDeviations, driftOf, hysteresisOf } from '@/lib/bench/deviations';
import { expectedOf } from '@/lib/bench/expected';
import { verdictOf } from '@/lib/bench/verdict';
import { writeSheetCsv } from '@/lib/bench/write-sheet-csv';
import { cautions } from '@/content/cautions';

/** Fresh water in the pot and on the gauge, and a unit that counts fresh water too: it shows what the gauge shows. */
const SCRIPT = `descend to 10 m at 10 m/min
stay 1 min # check: 10 in
descend to 16 m at 10 m/min
stay 1 min # check: 16 in
stay 5 min # check: 16 later
ascend to 10 m at 10 m/min
stay 1 min # check: 10 out
ascend to surface at 10 m/min
stay 1 min # check: surface
`;
const unit = benchUnitSchema.parse({ id: 'a', name: 'Unit A', water: 'fresh' });
const stated: BenchSettings = { ...DEFAULT_BENCH, toleranceM: 0.3, tolerancePercent: 1 };

function expected(settings: BenchSettings = stated) {
  const read = parseRun(SCRIPT);
  if (!read.ok) throw new Error(read.errors[0]!.message);
  return expectedOf(read.run, settings, unit);
}
const depths = (shown: Record<string, number | 'nothing'>): Readings =>
  Object.fromEntries(Object.entries(shown).map(([name, depthM]) => [name, { depthM }]));
const verdict = (readings: Readings, settings = stated) =>
  verdictOf(unit, expected(settings), readings, settings, 'metric');

describe('the arithmetic of a bench sheet', () => {
  it('tells deviation as shown less expected', () => {
    const found = depthDeviations(expected(), depths({ '10 in': 10.3, '16 in': 15.4 }), stated);
    expect(found.map(({ deviationM }) => deviationM && Math.round(deviationM * 10) / 10)).toEqual([
      0.3,
      -0.6,
      undefined,
      undefined,
      undefined,
    ]);
    expect(found.map(({ standing }) => standing)).toEqual(['in', 'out', 'not read', 'not read', 'not read']);
  });

  it('allows so many metres and so many percent of the depth, added', () => {
    expect(allowedAtM(stated, 20)).toBeCloseTo(0.5, 12);
    expect(allowedAtM({ toleranceM: 0.3, tolerancePercent: null }, 20)).toBe(0.3);
    expect(allowedAtM(DEFAULT_BENCH, 20)).toBeUndefined();
  });

  it('takes a reading exactly at the allowance as within it', () => {
    // 0.3 m + 1% of 10 m = 0.4 m
    expect(depthDeviations(expected(), depths({ '10 in': 10.4 }), stated)[0]!.standing).toBe('in');
    expect(depthDeviations(expected(), depths({ '10 in': 10.5 }), stated)[0]!.standing).toBe('out');
  });

  it('finds hysteresis as the way out less the way in at one gauge depth', () => {
    const found = hysteresisOf(
      depthDeviations(expected(), depths({ '10 in': 9.9, '16 in': 16, '10 out': 10.2 }), stated),
    );
    expect(found).toHaveLength(1);
    expect(found[0]!.gaugeM).toBe(10);
    expect(found[0]!.differenceM).toBeCloseTo(0.3, 12);
  });

  it('finds drift as the last reading of a hold less its first, and over how long', () => {
    const found = driftOf(
      depthDeviations(expected(), depths({ '10 in': 10, '16 in': 16.1, '16 later': 15.9, '10 out': 10 }), stated),
    );
    expect(found).toHaveLength(1);
    expect(found[0]!.driftM).toBeCloseTo(-0.2, 12);
    expect(found[0]!.overS).toBe(300);
  });
});

describe('the verdict on a unit', () => {
  const good = { '10 in': 10, '16 in': 16.1, '16 later': 16.1, '10 out': 10.1 };

  it('stops the run for a unit without a depth, and names the depths', () => {
    const { ruling, headline, reasons } = verdict(depths({ ...good, '10 in': 'nothing', '16 in': 'nothing' }));
    expect(ruling).toBe('stop');
    expect(headline).toBe('Stop the run. Do not return this unit to service.');
    expect(reasons[0]).toBe('No depth reading at 10 m and 16 m.');
  });

  it('does not blame a unit for showing no depth at the surface', () => {
    expect(verdict(depths({ ...good, surface: 'nothing' })).ruling).toBe('in');
  });

  it('passes nothing while a depth is unread, and says which', () => {
    const { ruling, reasons } = verdict(depths({ '10 in': 10 }));
    expect(ruling).toBe('unread');
    expect(reasons.at(-1)).toBe('Still to be read: 16 in, 16 later, 10 out.');
  });

  it('judges nothing while no tolerance is stated', () => {
    expect(verdict(depths(good), DEFAULT_BENCH).ruling).toBe('unjudged');
  });

  it('says by how much a reading is out and what is allowed', () => {
    const { ruling, reasons } = verdict(depths({ ...good, '10 out': 10.6 }));
    expect(ruling).toBe('out');
    expect(reasons[0]).toBe('At “10 out” it is off by +0.60 m; 0.4 m is allowed.');
  });

  it('holds hysteresis and drift against what is stated for them alone', () => {
    expect(verdict(depths({ ...good, '10 out': 10.3 })).ruling).toBe('in');
    expect(verdict(depths({ ...good, '10 out': 10.3 }), { ...stated, hysteresisM: 0.2 }).ruling).toBe('out');
    expect(verdict(depths({ ...good, '16 later': 15.8 }), { ...stated, driftM: 0.2 }).ruling).toBe('out');
  });

  it('suspects the water setting where deviations grow as it would have them', () => {
    // Metres of fresh water at the pressure of a unit that counts salt: 3% fewer.
    const salt = Object.fromEntries(
      Object.entries(good).map(([name]) => [name, Math.round((parseFloat(name) / 1.03) * 10) / 10]),
    );
    expect(verdict(depths(salt)).reasons.join(' ')).toContain('as those of a unit set to salt water would');
  });

  it('tells of a fault that was seen, whatever the figures, and asks that unit for no more', () => {
    const { ruling, headline, reasons } = verdict({ '10 in': { depthM: 10 }, '16 in': { fault: 'water inside' } });
    expect(ruling).toBe('faulty');
    expect(headline).toMatch(/Do not return this unit to service.*may go on with the others/);
    expect(reasons).toEqual(['At “16 in”: water inside.']);
    expect(verdict({ ...depths(good), '10 out': { depthM: 'nothing', fault: 'dead display' } }).ruling).toBe('stop');
  });

  it('is content with a sheet that fits, and says what that is not', () => {
    const { ruling, headline, reasons } = verdict(depths(good));
    expect(ruling).toBe('in');
    expect(headline).toContain('not a certification');
    expect(reasons).toEqual([]);
  });

  it('tells apart a depth that fits from a no-stop time that does not', () => {
    const readings: Readings = { ...depths(good), '16 in': { depthM: 16, noStopMin: 20 } };
    const { ruling, reasons } = verdict(readings);
    expect(ruling).toBe('odd');
    expect(reasons[0]).toMatch(
      /^It showed a no-stop time of 20 min at “16 in”, where \d+ to \d+ min was to be expected\.$/,
    );
  });
});

describe('the sheet as CSV', () => {
  it('carries the cautions, every checkpoint and the verdict', () => {
    const about = sheetAboutSchema.parse({
      date: '2026-05-01',
      operator: 'The one at the valve',
      remarks: 'Water, 21 °C',
    });
    const text = writeSheetCsv('A run', about, stated, [
      { unit, expected: expected(), readings: depths({ '10 in': 10.3 }) },
    ]);
    expect(text).toContain(cautions.general);
    expect(text).toContain(cautions.chamber);
    for (const line of ['# Date: 2026-05-01', '# Who runs it: The one at the valve', '# Remarks: Water, 21 °C'])
      expect(text).toContain(`"${line}"`);
    expect(text).not.toContain('Gauge last checked');
    expect(text).toContain('reading,Unit A,10 in,120,10,0.981,10.00,10.3,0.3,0.400,in,');
    expect(text).toContain('verdict,Unit A,');
  });
});
