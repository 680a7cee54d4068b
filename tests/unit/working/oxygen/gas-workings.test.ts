import { describe, expect, it } from 'vitest';
import { supersaturationOf } from '@/lib/ascent/supersaturation';
import { loadAt } from '@/lib/ascent/figures';
import { sampleAt } from '@/lib/dive/timeline';
import { READING_IDS, workingFor, type ReadingId } from '@/lib/working/all';
import { modWorking } from '@/lib/working/oxygen/mod-working';
import { downFor, TRIMIX, workedDive } from '../dives';

const EAN32 = { o2: 0.32, he: 0 };

function at60(reading: ReadingId, gas: { o2: number; he: number }, toM = 60) {
  const { timeline, figures } = workedDive(downFor(toM, 10), { gas });
  return workingFor(reading, timeline, figures, sampleAt(timeline, toM * 3 + 60));
}

// Worked by hand from Dalton's law, 10 m to the bar, 1.01325 bar at the surface.
describe('the workings behind the readings of the gas', () => {
  it('gives 32% oxygen 1.4 bar of oxygen at 33.6 m', () => {
    expect(at60('mod', EAN32).answer.value).toBeCloseTo((1.4 / 0.32 - 1.01325) * 10, 9);
    expect(at60('mod', EAN32).answer.value).toBeCloseTo(33.6, 1);
  });

  it('marks the oxygen limit as common practice, for changing', () => {
    expect(at60('mod', EAN32).steps[0]!.values['p_O2_limit']).toMatchObject({
      value: 1.4,
      from: 'common practice',
      changeable: true,
    });
  });

  it('takes another oxygen limit where one is set', () => {
    const { timeline, figures } = workedDive(downFor(6, 10), { gas: { o2: 1, he: 0 } });
    expect(modWorking({ timeline, figures, sample: 5 }, 1.6).answer.value).toBeCloseTo(5.8675, 9);
  });

  it('has no depth for a gas without oxygen', () => {
    const working = at60('mod', { o2: 0, he: 0.5 }, 10);
    expect(working.answer.value).toBe(Infinity);
    expect(working.answer.text).toContain('no oxygen');
  });

  it('gives trimix 18/45 at 60 m an oxygen pressure of 1.26 bar', () => {
    const working = at60('oxygen-pressure', TRIMIX);
    expect(working.answer.value).toBeCloseTo(7.01325 * 0.18, 9);
    expect(working.table?.rows.map((row) => row[2] as number).reduce((sum, bar) => sum + bar, 0)).toBeCloseTo(
      7.01325,
      9,
    );
  });

  it('gives it the narcosis of air at 28.4 m with oxygen counted, and at 31 m without', () => {
    expect(at60('end', TRIMIX).answer.value).toBeCloseTo((7.01325 * 0.55 - 1.01325) * 10, 9);
    expect(at60('end-nitrogen', TRIMIX).answer.value).toBeCloseTo(((7.01325 * 0.37) / 0.79 - 1.01325) * 10, 6);
  });
});

describe('the workings behind supersaturations', () => {
  it.each(['supersaturation', 'surfacing-supersaturation'] as const)(
    'takes the largest of the sixteen: %s',
    (reading) => {
      const { timeline, figures } = workedDive([...downFor(40, 20), { kind: 'ascend', toM: 3, durationS: 180 }]);
      const sample = timeline.length - 1;
      const working = workingFor(reading, timeline, figures, sample);
      const ambientBar = reading === 'supersaturation' ? 1.31325 : 1.01325;
      const all = Array.from({ length: 16 }, (_, c) => supersaturationOf(loadAt(timeline, sample), c, ambientBar));
      expect(working.answer.value).toBe(Math.max(...all));
      expect(working.table?.rows.map((row) => row.at(-1))).toEqual(all);
      expect(working.compartment).toBe(all.indexOf(Math.max(...all)) + 1);
    },
  );
});

describe('asking why', () => {
  it.each(READING_IDS)('has an answer for %s', (reading) => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    const working = workingFor(reading, timeline, figures, 20);
    expect(working.reading).toBe(reading);
    expect(working.steps.length).toBeGreaterThan(0);
    for (const { why, title, source } of working.steps)
      for (const words of [why, title, source]) expect(words).not.toBe('');
  });

  it('says which reading or sample there is not', () => {
    const { timeline, figures } = workedDive(downFor(30, 10));
    expect(() => workingFor('depths' as ReadingId, timeline, figures, 0)).toThrow(
      'nothing is known of a reading called depths',
    );
    expect(() => workingFor('constructor' as ReadingId, timeline, figures, 0)).toThrow(RangeError);
    expect(() => workingFor('ceiling', timeline, figures, timeline.length)).toThrow('the timeline has no sample');
    expect(() => workingFor('ceiling', timeline, figures, 0.5)).toThrow(RangeError);
  });
});
