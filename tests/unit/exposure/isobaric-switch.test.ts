import { describe, expect, it } from 'vitest';
import { isobaricSwitches, ISOBARIC_CAUTION, sayIsobaricSwitch } from '@/lib/exposure/isobaric-switch';
import { totalPeak } from '@/lib/exposure/total-peak';
import { timelineOf } from './scripted';

const switched = (from: string, to: string, depth = '30 m') =>
  isobaricSwitches(
    timelineOf(
      `gas: ${from}`,
      `descend to 60 m at 20 m/min`,
      'stay 20 min',
      `ascend to ${depth} at 9 m/min`,
      `switch to ${to}`,
      'stay 5 min',
      'ascend to surface at 3 m/min',
    ),
  );

describe('a change of gas at one depth', () => {
  it('from helium to much nitrogen is a jump', () => {
    const [found] = switched('18/45', 'air');
    expect(found).toMatchObject({ depthM: 30, nitrogenJumps: true });
    // Dry gas at 4.01325 bar less 0.0627 of vapour: nitrogen 0.37 to 0.79, helium 0.45 to nothing.
    expect(found!.nitrogenRiseBar).toBeCloseTo((0.79 - 0.37) * 3.95055, 9);
    expect(found!.heliumFallBar).toBeCloseTo(0.45 * 3.95055, 9);
  });

  it('to a gas with no more nitrogen than a fifth of the helium given up is none', () => {
    expect(switched('18/45', '45/20', '24 m')).toEqual([]);
  });

  it('from nitrogen to helium makes the tissues fill without going deeper', () => {
    const [found] = switched('air', '21/79');
    expect(found!.nitrogenJumps).toBe(false);
    expect(found!.rising.length).toBeGreaterThan(0);
    expect(found!.rising[0]!.riseBar).toBeGreaterThan(0.1);
    const rises = found!.rising.map(({ riseBar }) => riseBar);
    expect(rises).toEqual([...rises].sort((one, other) => other - one));
  });

  it('says nothing of tissues that would have filled anyway', () => {
    const onTheWayDown = isobaricSwitches(
      timelineOf(
        'gas: 32%',
        'descend to 20 m at 20 m/min',
        'switch to air',
        'descend to 40 m at 20 m/min',
        'stay 5 min',
        'ascend to surface at 9 m/min',
      ),
    );
    expect(onTheWayDown).toEqual([]);
  });

  it('to helium after an hour on air tells of tissues that were almost full, and come to more than either gas presses', () => {
    const timeline = timelineOf(
      'gas: air',
      'descend to 30 m at 18 m/min',
      'stay 1 h',
      'switch to 21/35',
      'stay 30 min',
      'ascend to surface at 9 m/min',
    );
    const [found] = isobaricSwitches(timeline);
    expect(found).toMatchObject({ depthM: 30, nitrogenJumps: false });
    // Both gases press 0.79 of dry gas at 30 m; the timeline itself shows who goes beyond that while the depth stands still.
    const pressedBar = 0.79 * 3.95055;
    const beyond = (compartment: number) => {
      let highest = 0;
      for (let i = 0; i < timeline.length; i += 1) {
        const at = i * 16 + compartment - 1;
        if (timeline.timeS[i]! <= found!.timeS + 1800)
          highest = Math.max(highest, timeline.nitrogenBar[at]! + timeline.heliumBar[at]!);
      }
      return highest - pressedBar;
    };
    const told = found!.rising.map(({ compartment }) => compartment).sort((one, other) => one - other);
    expect(told).toEqual(expect.arrayContaining([1, 2, 3]));
    for (const compartment of [1, 2, 3]) expect(beyond(compartment)).toBeGreaterThan(0.05);
    expect(told).not.toContain(16);
    expect(beyond(16)).toBeLessThan(0);
  });

  it('between two dives is none', () => {
    expect(
      isobaricSwitches(
        timelineOf(
          'gas: 18/45',
          'descend to 30 m at 20 m/min',
          'ascend to surface at 9 m/min',
          'interval 1 h',
          'switch to air',
          'descend to 30 m at 20 m/min',
          'ascend to surface at 9 m/min',
        ),
      ),
    ).toEqual([]);
  });

  it('is told in a sentence, with what the model cannot know beside it', () => {
    expect(sayIsobaricSwitch(switched('18/45', 'air')[0]!, { legs: [] }, 'metric')).toMatch(
      /^At 26:20 you go from 18\/45 to air at 30 m\. The nitrogen you breathe rises by 1\.66 bar while helium falls by 1\.78 bar/,
    );
    expect(sayIsobaricSwitch(switched('air', '21/79')[0]!, { legs: [] }, 'imperial')).toMatch(
      /at 98 ft\. At this depth, compartment \d+ would go on to hold/,
    );
    expect(ISOBARIC_CAUTION).toMatch(/can’t tell/);
  });
});

describe('the peak of two gases together', () => {
  const K = { nitrogen: Math.LN2 / 27, helium: Math.LN2 / 10.21 };
  const byStepping = (
    start: { nitrogenBar: number; heliumBar: number },
    breathed: { nitrogenBar: number; heliumBar: number },
  ) => {
    let highest = 0;
    for (let t = 0; t < 2000; t += 0.01) {
      const nitrogen = breathed.nitrogenBar + (start.nitrogenBar - breathed.nitrogenBar) * Math.exp(-K.nitrogen * t);
      const helium = breathed.heliumBar + (start.heliumBar - breathed.heliumBar) * Math.exp(-K.helium * t);
      highest = Math.max(highest, nitrogen + helium - start.nitrogenBar - start.heliumBar);
    }
    return highest;
  };

  it.each([
    ['helium in, nitrogen out', { nitrogenBar: 2, heliumBar: 0 }, { nitrogenBar: 0.5, heliumBar: 1.5 }],
    ['nitrogen in, helium out', { nitrogenBar: 0.8, heliumBar: 1.5 }, { nitrogenBar: 2.5, heliumBar: 0 }],
    ['both in', { nitrogenBar: 0.8, heliumBar: 0 }, { nitrogenBar: 1, heliumBar: 1 }],
    ['both out', { nitrogenBar: 2, heliumBar: 1 }, { nitrogenBar: 1, heliumBar: 0.2 }],
    ['nothing moves', { nitrogenBar: 1, heliumBar: 1 }, { nitrogenBar: 1, heliumBar: 1 }],
  ])('is what stepping through time finds: %s', (_, start, breathed) => {
    expect(totalPeak(start, breathed, K).riseBar).toBeCloseTo(byStepping(start, breathed), 5);
  });
});
