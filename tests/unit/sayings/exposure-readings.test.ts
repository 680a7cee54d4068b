import { describe, expect, it } from 'vitest';
import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { exposureSayings, type ExposureMoment } from '@/lib/sayings/exposure-readings';
import { scripted } from '../exposure/scripted';

const dive = scripted(
  'gas: 32%',
  'cylinder: left, 12 L, 200 bar, 32%; right, 12 L, 200 bar, 32%; deco, 7 L, 150 bar, 50%',
  'descend to 30 m at 30 m/min',
  'stay 20 min',
  'ascend to 18 m at 9 m/min',
  'switch to 50%',
  'stay 2 min',
  'ascend to surface at 9 m/min',
);
const timeline = computeTimeline(dive, 10);
const supply = gasSupplyOf(timeline, dive.settings);

function momentAt(timeS: number, other: Partial<ExposureMoment> = {}): ExposureMoment {
  return {
    timeline,
    sample: sampleAt(timeline, timeS),
    oxygen: oxygenExposureOf(timeline),
    densitiesGL: gasDensitiesOf(timeline),
    supply,
    ...other,
  };
}

/** A moment at which one figure is another. */
function withOxygen(figures: { pO2Bar?: number; singleFraction?: number; dailyFraction?: number }): ExposureMoment {
  const moment = momentAt(600);
  const oxygen = { ...moment.oxygen };
  for (const [name, value] of Object.entries(figures))
    oxygen[name as keyof typeof figures] = new Float64Array(timeline.length).fill(value);
  return { ...moment, oxygen };
}

describe('what is breathed', () => {
  it.each([
    [0.15, 'under 0.16, the customary floor', 'rule'],
    [0.16, 'within what is taught', 'plain'],
    [1.4, 'within what is taught', 'plain'],
    [1.41, 'over 1.4, taught as the limit at work', 'rule'],
    [1.6, 'over 1.4, taught as the limit at work', 'rule'],
    [1.61, 'over 1.6, taught as the limit at rest', 'rule'],
  ])('at %f bar of oxygen is %s', (pO2Bar, note, tone) => {
    expect(exposureSayings(withOxygen({ pO2Bar }), 'metric')['oxygen-pressure']).toMatchObject({ note, tone });
  });

  it.each([
    [0.999, '100%', 'plain'],
    [1, '100%', 'plain'],
    [1.01, '101%', 'rule'],
  ])('of which %f of a limit is used is %s of it', (share, text, tone) => {
    const said = exposureSayings(withOxygen({ singleFraction: share, dailyFraction: share }), 'metric');
    expect(said['oxygen-single']).toMatchObject({
      text,
      tone,
      note: 'of the limit for one exposure',
      name: 'Single exposure',
    });
    expect(said['oxygen-daily']).toMatchObject({ text, tone, note: 'of the limit for a day', name: 'Oxygen in 24 h' });
  });

  it('is told with its pressure, its density and its lung units', () => {
    // 0.32 · 4.01325 bar.
    const said = exposureSayings(momentAt(600), 'metric');
    expect(said['oxygen-pressure'].text).toBe('1.28 bar');
    expect(said['oxygen-pulmonary'].note).toBe('since the start; they do not fade');
    const dense = (densityGL: number) =>
      exposureSayings(momentAt(600, { densitiesGL: new Float64Array(timeline.length).fill(densityGL) }), 'metric')[
        'gas-density'
      ];
    expect([5.2, 5.3, 6.3].map((densityGL) => [dense(densityGL).note, dense(densityGL).tone])).toEqual([
      ['within what is recommended', 'plain'],
      ['over what is recommended', 'rule'],
      ['over the most that is advised', 'rule'],
    ]);
  });
});

describe('the cylinder in use', () => {
  const cylinderAt = (timeS: number) => exposureSayings(momentAt(timeS), 'metric').cylinder;

  it('is the one breathed just then, though another holds the same gas', () => {
    expect(cylinderAt(600).note).toMatch(/^“left”, 32%; as an ideal gas \d+ bar$/);
    expect(cylinderAt(1400).note).toMatch(/^“deco”, 50%; as an ideal gas \d+ bar$/);
    const { real } = supply!;
    expect(cylinderAt(600).text).toBe(`${Math.round(real.cylinders[0]!.pressureBar[sampleAt(timeline, 600)]!)} bar`);
    expect(cylinderAt(1400).text).toBe(`${Math.round(real.cylinders[2]!.pressureBar[sampleAt(timeline, 1400)]!)} bar`);
  });

  it('is the next of the gas once the first is empty', () => {
    const [empty] = supply!.real.spells.filter(({ cylinder }) => cylinder === 1);
    const longer = scripted(
      'gas: 32%',
      'cylinder: left, 3 L, 200 bar, 32%; right, 12 L, 200 bar, 32%',
      'descend to 30 m at 30 m/min',
      'stay 20 min',
      'ascend to surface at 9 m/min',
    );
    expect(empty).toBeUndefined();
    const other = computeTimeline(longer, 10);
    const noteAt = (timeS: number) =>
      exposureSayings(
        {
          timeline: other,
          sample: sampleAt(other, timeS),
          oxygen: oxygenExposureOf(other),
          densitiesGL: gasDensitiesOf(other),
          supply: gasSupplyOf(other, longer.settings),
        },
        'metric',
      ).cylinder.note;
    expect(noteAt(120)).toMatch(/^“left”/);
    expect(noteAt(1100)).toMatch(/^“right”/);
  });

  it('is not shown where none is listed', () => {
    const { cylinder } = exposureSayings(momentAt(600, { supply: undefined }), 'metric');
    expect(cylinder).toMatchObject({ text: 'not shown', note: '' });
  });
});
