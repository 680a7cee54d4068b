import { describe, expect, it } from 'vitest';
import { computeTimeline, sampleAt } from '@/lib/dive/timeline';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { saySupplyEvent } from '@/lib/exposure/supply-events';
import { scripted, timelineOf } from './scripted';

const DOWN_AND_UP = ['descend to 30 m at 30 m/min', 'stay 10 min', 'ascend to surface at 30 m/min'];

function supplyOf(...lines: string[]) {
  const timeline = timelineOf(...lines);
  return { timeline, supply: gasSupplyOf(timeline, scripted(...lines).settings)! };
}

describe('a cylinder over a dive', () => {
  it('is not followed when none is written', () => {
    expect(gasSupplyOf(timelineOf(...DOWN_AND_UP), scripted(...DOWN_AND_UP).settings)).toBeUndefined();
  });

  it('falls by the gas breathed over its volume', () => {
    const { timeline, supply } = supplyOf('cylinder: back, 12 L, 200 bar, air', ...DOWN_AND_UP);
    const [back] = supply.ideal.cylinders;
    // 20 L/min: a minute at 2.51325 bar on average, ten at 4.01325, a minute up.
    const used = [0, 20 * 2.51325, 20 * (2.51325 + 40.1325), 20 * (5.0265 + 40.1325)];
    [0, 60, 660, 720].forEach((timeS, i) => {
      const at = sampleAt(timeline, timeS);
      expect(back!.usedL[at]).toBeCloseTo(used[i]!, 9);
      expect(back!.pressureBar[at]).toBeCloseTo(200 - used[i]! / 12, 9);
    });
    expect(supply.events).toEqual([]);
    expect(Math.max(...supply.ideal.unsuppliedL)).toBe(0);
  });

  it('leaves what is breathed of a gas it does not hold unsupplied', () => {
    const { timeline, supply } = supplyOf('cylinder: pony, 3 L, 200 bar, 50%', ...DOWN_AND_UP);
    const { unsuppliedL } = supply.ideal;
    [0, 60, 660].forEach((timeS, i) =>
      expect(unsuppliedL[sampleAt(timeline, timeS)]).toBeCloseTo([0, 20 * 2.51325, 20 * (2.51325 + 40.1325)][i]!, 9),
    );
  });

  it('reads less as a real gas once some has been breathed from a high pressure', () => {
    const { supply } = supplyOf('cylinder: back, 12 L, 230 bar, air', ...DOWN_AND_UP);
    const [ideal, real] = [supply.ideal, supply.real].map(({ cylinders }) => cylinders[0]!.pressureBar);
    expect(real![0]).toBeCloseTo(230, 9);
    expect(real!.at(-1)).toBeLessThan(ideal!.at(-1)!);
  });

  it('is breathed at the rate of each phase', () => {
    const { supply } = supplyOf(
      'cylinder: back, 12 L, 200 bar, air',
      'consumption: 20 L/min',
      'consumption going down: 30 L/min',
      'consumption going up: 10 L/min',
      'consumption at stops: 5 L/min',
      'descend to 20 m at 20 m/min',
      'stay 10 min',
      'ascend to 5 m at 15 m/min',
      'stay 3 min',
      'ascend to surface at 5 m/min',
    );
    const used = 30 * 2.01325 + 20 * 30.1325 + 10 * 2.26325 + 5 * 3 * 1.51325 + 10 * 1.26325;
    expect(supply.ideal.cylinders[0]!.usedL.at(-1)).toBeCloseTo(used, 9);
  });

  it('is the one whose gas is breathed', () => {
    const { timeline, supply } = supplyOf(
      'gas: 18/45',
      'cylinder: back, 24 L, 200 bar',
      'cylinder: stage, 11 L, 200 bar, 50%',
      'descend to 21 m at 21 m/min',
      'stay 5 min',
      'switch to 50%',
      'stay 10 min',
      'ascend to surface at 9 m/min',
    );
    const [back, stage] = supply.ideal.cylinders;
    const switched = sampleAt(timeline, 360);
    expect(stage!.usedL[switched]).toBe(0);
    expect(stage!.usedL.at(-1)).toBeGreaterThan(0);
    expect(back!.usedL.at(-1)).toBe(back!.usedL[switched]);
  });

  it('is full again on the next dive, while the gas used goes on counting', () => {
    const { timeline, supply } = supplyOf(
      'cylinder: back, 12 L, 200 bar, air',
      ...DOWN_AND_UP,
      'interval 1 h',
      ...DOWN_AND_UP,
    );
    const [back] = supply.ideal.cylinders;
    const again = sampleAt(timeline, 720 + 3600);
    expect(back!.pressureBar[again]).toBeCloseTo(200, 9);
    expect(back!.usedL.at(-1)).toBeCloseTo(2 * back!.usedL[again]!, 9);
    expect(back!.pressureBar.at(-1)).toBeCloseTo(back!.pressureBar[again - 1]!, 9);
  });

  it('is the same however finely the dive is sampled', () => {
    const dive = scripted('cylinder: back, 10 L, 100 bar, air; pony, 3 L, 200 bar, air', ...DOWN_AND_UP);
    const [coarse, fine] = [3600, 1].map((everyS) => gasSupplyOf(computeTimeline(dive, everyS), dive.settings)!);
    expect(fine!.real.runOuts).toEqual(coarse!.real.runOuts);
    fine!.real.cylinders.forEach(({ pressureBar }, i) =>
      expect(pressureBar.at(-1)).toBeCloseTo(coarse!.real.cylinders[i]!.pressureBar.at(-1)!, 9),
    );
  });
});

describe('a cylinder that runs out', () => {
  // 5 L at 101.01325 bar, less 5 L at the 4.01325 bar of 30 m, is 485 L; 50.265 L went on the way down.
  const lines = ['cylinder: small, 5 L, 100 bar, air', ...DOWN_AND_UP];
  const outS = 60 + ((485 - 50.265) / (20 * 4.01325)) * 60;

  it('does so when its pressure is down to the water’s', () => {
    const { timeline, supply } = supplyOf(...lines);
    expect(supply.ideal.runOuts).toEqual([{ timeS: expect.closeTo(outS, 5), depthM: 30, cylinder: 0, next: -1 }]);
    expect(supply.ideal.cylinders[0]!.pressureBar[sampleAt(timeline, outS + 11)]).toBeCloseTo(3, 6);
  });

  it('is told in a sentence, once for both gas laws', () => {
    const { supply, timeline } = supplyOf(...lines);
    expect(supply.events).toHaveLength(1);
    const [event] = supply.events;
    expect(event).toMatchObject({ kind: 'out-of-gas', cylinder: 'small', next: null, idealS: expect.closeTo(outS, 5) });
    expect(event!.text).toMatch(
      /^At 6:2\d the cylinder “small” is empty: you can’t draw any more from it at 30 m, and no other air is left\./,
    );
    expect(saySupplyEvent(event!, timeline, 'imperial')).toContain('at 98 ft');
  });

  it('stays empty, and what is breathed after it comes from nowhere', () => {
    const { supply } = supplyOf(...lines);
    const { cylinders, unsuppliedL } = supply.ideal;
    const needed = 20 * (5.0265 + 40.1325);
    expect(cylinders[0]!.usedL.at(-1)! + unsuppliedL.at(-1)!).toBeCloseTo(needed, 6);
    expect(unsuppliedL.at(-1)).toBeGreaterThan(0);
  });

  it('hands over to the next with the same gas', () => {
    const { supply } = supplyOf('cylinder: small, 5 L, 100 bar, air; other, 5 L, 200 bar, air', ...DOWN_AND_UP);
    expect(supply.events[0]!.text).toContain('you go on from “other”.');
    expect(supply.ideal.unsuppliedL.at(-1)).toBe(0);
    expect(supply.ideal.cylinders[1]!.usedL.at(-1)).toBeCloseTo(20 * (5.0265 + 40.1325) - 485, 5);
  });

  it('says under which law it lasts when the two differ', () => {
    // Enough for the dive as ideal gas, at 230 bar, and a few litres short of it as real gas.
    const { supply } = supplyOf(
      'cylinder: back, 12 L, 230 bar, air',
      'descend to 30 m at 30 m/min',
      'stay 33 min',
      'ascend to surface at 30 m/min',
    );
    expect(supply.ideal.runOuts).toEqual([]);
    expect(supply.real.runOuts).toHaveLength(1);
    expect(supply.events[0]!.text).toMatch(/That is as a real gas; as an ideal gas it would last the dive\.$/);
  });

  it('is found on the way up, where the water lets go of gas faster than it is breathed', () => {
    // At 6 m/min the water lets go of 24 L/min in 40 L, as much as is breathed at 3 bar: there the least is left, and more
    // again further up. By hand the gauge has to begin at 3.564 bar.
    const dive = (bar: number) =>
      supplyOf(
        `cylinder: back, 40 L, ${bar} bar, air`,
        'consumption: 8 L/min',
        'descend to 30 m at 120 m/min',
        'stay 20 s',
        'ascend to surface at 6 m/min',
      ).supply.ideal;
    expect(dive(3.57).runOuts).toEqual([]);
    expect(dive(3.563).runOuts[0]!.depthM).toBeGreaterThan(19.8);
    expect(dive(3.563).runOuts[0]!.depthM).toBeLessThan(22);
  });

  it('is empty at once where the water presses harder than it does', () => {
    const { supply } = supplyOf('cylinder: back, 12 L, 2 bar, air', ...DOWN_AND_UP);
    expect(supply.ideal.runOuts[0]!.depthM).toBeLessThan(20);
    expect(supply.ideal.runOuts[0]!.depthM).toBeGreaterThan(0);
  });
});

describe('a gas without a cylinder', () => {
  it('is told where it is taken up, once a dive', () => {
    const day = ['descend to 6 m at 18 m/min', 'switch to oxygen', 'stay 5 min', 'ascend to surface at 9 m/min'];
    const { supply } = supplyOf('cylinder: back, 12 L, 200 bar, air', ...day, 'interval 1 h', ...day);
    expect(supply.events.map(({ kind }) => kind)).toEqual(['no-cylinder', 'no-cylinder']);
    expect(supply.events[0]!.text).toBe('Dive 1, at 0:20 you breathe oxygen at 6 m, and no cylinder here holds it.');
    expect(supply.ideal.unsuppliedL.at(-1)).toBeGreaterThan(0);
  });
});
