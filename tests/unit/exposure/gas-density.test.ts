import { describe, expect, it } from 'vitest';
import {
  densityBand,
  gasDensitiesOf,
  gasDensityGL,
  HIGHEST_DENSITY_GL,
  RECOMMENDED_DENSITY_GL,
} from '@/lib/exposure/gas-density';
import { AIR } from '@/lib/physics/gas';
import { timelineOf } from './scripted';

describe('gas density', () => {
  it('grows with pressure and with heavier gas, and falls with warmth', () => {
    expect(gasDensityGL(AIR, 4)).toBeCloseTo(4 * gasDensityGL(AIR, 1), 12);
    expect(gasDensityGL({ o2: 0.18, he: 0.45 }, 4)).toBeLessThan(gasDensityGL(AIR, 4));
    expect(gasDensityGL(AIR, 1, 37)).toBeLessThan(gasDensityGL(AIR, 1, 0));
  });

  it('is held against what is recommended and what is advised at the most', () => {
    expect([RECOMMENDED_DENSITY_GL, HIGHEST_DENSITY_GL]).toEqual([5.2, 6.2]);
    expect([5.2, 5.21, 6.2, 6.21].map(densityBand)).toEqual([
      'within what is recommended',
      'over what is recommended',
      'over what is recommended',
      'over the most that is advised',
    ]);
  });

  it('follows the dive and its gases', () => {
    const timeline = timelineOf(
      'gas: 18/45',
      'descend to 21 m at 21 m/min',
      'switch to 50%',
      'stay 1 min',
      'ascend to surface at 9 m/min',
    );
    const densities = gasDensitiesOf(timeline);
    const switched = timeline.timeS.indexOf(60);
    expect(densities[switched]).toBeCloseTo(gasDensityGL({ o2: 0.5, he: 0 }, timeline.ambientBar[switched]!), 12);
    expect(densities[switched - 1]).toBeCloseTo(
      gasDensityGL({ o2: 0.18, he: 0.45 }, timeline.ambientBar[switched - 1]!),
      12,
    );
  });
});
