import { describe, expect, it } from 'vitest';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { pulmonaryRate, singleExposureRate } from '@/lib/exposure/oxygen-rates';
import { scripted, timelineOf } from './scripted';

/** Where oxygen is at 1.6 atm in the gauge's water at sea level: (1.6 − 1)·1.01325 / 0.1 m. */
const DEPTH = '6.0795 m';
const last = (values: Float64Array) => values.at(-1)!;

describe('oxygen over a dive', () => {
  it('uses the whole single limit in 45 min at 1.6 atm, and three tenths of the day’s', () => {
    const timeline = timelineOf('gas: oxygen', `descend to ${DEPTH} in 2 s`, 'stay 45 min', 'ascend to surface in 2 s');
    const { singleFraction, dailyFraction, legs } = oxygenExposureOf(timeline);
    expect(legs[1]).toMatchObject({ single: expect.closeTo(1, 9), daily: expect.closeTo(0.3, 9) });
    expect(last(singleFraction)).toBeCloseTo(1, 3);
    expect(last(dailyFraction)).toBeCloseTo(0.3, 3);
  });

  it('tells the oxygen pressure at every sample', () => {
    const timeline = timelineOf(
      'gas: 32%',
      'descend to 30 m at 18 m/min',
      'stay 5 min',
      'ascend to surface at 9 m/min',
    );
    const { pO2Bar } = oxygenExposureOf(timeline);
    pO2Bar.forEach((bar, i) => expect(bar).toBeCloseTo(0.32 * timeline.ambientBar[i]!, 12));
  });

  it('counts the lungs by the power law', () => {
    const timeline = timelineOf('gas: oxygen', 'stay 60 min');
    expect(last(oxygenExposureOf(timeline).pulmonaryUnits)).toBeCloseTo(60, 9);
    const other = timelineOf('gas: oxygen', `descend to ${DEPTH} in 2 s`, 'stay 60 min', 'ascend to surface in 2 s');
    expect(oxygenExposureOf(other, { pulmonaryExponent: 'textbook' }).legs[1]!.pulmonaryUnits).toBeCloseTo(
      pulmonaryRate('textbook').at(1.6212) * 60,
      9,
    );
  });

  it('is the same however finely it is sampled', () => {
    const dive = scripted(
      'gas: 36%',
      'descend to 30 m at 18 m/min',
      'stay 20 min',
      'ascend to 5 m at 5 m/min',
      'switch to oxygen',
      'stay 5 min',
      'ascend to surface at 9 m/min',
    );
    const [coarse, fine] = [3600, 1].map((everyS) => oxygenExposureOf(computeTimeline(dive, everyS)));
    for (const figure of ['singleFraction', 'dailyFraction', 'pulmonaryUnits'] as const) {
      expect(last(fine![figure])).toBeCloseTo(last(coarse![figure]), 12);
    }
  });

  it('says when it went beyond the published limits', () => {
    const dive = (depth: string) =>
      timelineOf('gas: oxygen', `descend to ${depth} at 9 m/min`, 'stay 1 min', 'ascend to surface at 9 m/min');
    expect(oxygenExposureOf(dive('6 m')).beyondLimits).toBe(false);
    expect(oxygenExposureOf(dive('7 m')).beyondLimits).toBe(true);
  });
});

describe('oxygen over a day', () => {
  const day = ['gas: 50%', 'descend to 20 m at 18 m/min', 'stay 30 min', 'ascend to surface at 9 m/min'];

  it('halves the single fraction in 90 min at the surface, and leaves the others', () => {
    const timeline = timelineOf(...day, 'interval 90 min');
    const exposure = oxygenExposureOf(timeline);
    const surfaced = sampleAt(timeline, timeline.legs.at(-1)!.startS);
    expect(last(exposure.singleFraction)).toBeCloseTo(exposure.singleFraction[surfaced]! / 2, 12);
    expect(last(exposure.dailyFraction)).toBe(exposure.dailyFraction[surfaced]);
    expect(last(exposure.pulmonaryUnits)).toBe(exposure.pulmonaryUnits[surfaced]);
    const slower = oxygenExposureOf(timeline, { surfaceHalfTimeMin: 180 });
    expect(last(slower.singleFraction)).toBeCloseTo(exposure.singleFraction[surfaced]! / Math.SQRT2, 12);
  });

  it('adds up what each dive used', () => {
    const timeline = timelineOf(
      ...day,
      'interval 2 h',
      'descend to 10 m at 18 m/min',
      'stay 40 min',
      'ascend to surface at 9 m/min',
    );
    const { legs, dives, dailyFraction } = oxygenExposureOf(timeline);
    expect(dives).toHaveLength(2);
    expect(dives[0]!.daily + dives[1]!.daily).toBeCloseTo(last(dailyFraction), 12);
    expect(dives[1]!.single).toBeCloseTo(
      legs.slice(-3).reduce((sum, { single }) => sum + single, 0),
      12,
    );
    expect(dives[0]!.peakPO2Bar).toBeCloseTo(0.5 * 3.01325, 12);
  });

  it('forgets of the day’s limit what is more than 24 hours old', () => {
    const timeline = timelineOf(...day, 'interval 24 h');
    const { dailyFraction } = oxygenExposureOf(timeline);
    // 24 h after surfacing nothing of the dive is left in the window; half-way through its stay, half of the stay is.
    expect(last(dailyFraction)).toBeCloseTo(0, 12);
    const stay = timeline.legs[1]!;
    const at = sampleAt(timeline, (stay.startS + stay.endS) / 2 + 24 * 3600);
    const perMin = 1 / 180;
    expect(dailyFraction[at]).toBeGreaterThan(10 * perMin);
    expect(dailyFraction[at]).toBeLessThan(30 * perMin);
    expect([...dailyFraction].every((fraction) => fraction >= -1e-12)).toBe(true);
  });

  it('counts nothing on air at the surface', () => {
    expect(singleExposureRate.at(0.21)).toBe(0);
    expect(last(oxygenExposureOf(timelineOf('stay 5 h')).dailyFraction)).toBe(0);
  });
});
