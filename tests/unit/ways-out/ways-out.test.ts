import { sayLeft } from '@/lib/ways-out/words';
import { describe, expect, it } from 'vitest';
import { parseScript } from '@/lib/dive/script';
import { howMuchMore } from '@/lib/ways-out/how-much-more';
import type { Target } from '@/lib/ways-out/trouble';
import { settingsThatMadeIt } from '@/lib/ways-out/unit-settings';
import { systemOf, troubleOf, waysOut } from '@/lib/ways-out/ways-out';

const asked = (script: string, target: Target = 'stop') => waysOut(script, { target, system: systemOf(script) });

function way(script: string, lever: string, target: Target = 'stop') {
  const found = asked(script, target).find((one) => one.lever === lever);
  if (!found) throw new Error(`no lever ${lever} is told of`);
  return found;
}

const STOP = { target: 'stop', system: 'metric' } as const;

const LEVELS = `# the wall
gas: air
descend to 34 m at 18 m/min
stay 8 min
ascend to 25 m at 9 m/min   # along the wall
stay 15 min
ascend to 5 m at 9 m/min
stay 3 min
ascend to surface at 9 m/min
`;

const FEET = `gas: air
descend to 110 ft at 60 ft/min
stay 20 min
ascend to surface at 30 ft/min
`;

const DAY = `gas: air
descend to 20 m at 18 m/min
stay 30 min
ascend to surface at 9 m/min
interval 30 min
descend to 30 m at 18 m/min
stay 14 min
ascend to surface at 9 m/min
`;

describe('what would have avoided a stop', () => {
  it('changes the numbers of one step and keeps the writer’s words', () => {
    expect(way(LEVELS, 'leave-earlier')).toMatchObject({
      from: 24,
      to: 15,
      unit: 'min',
      cost: '9 min less at the bottom',
      script: LEVELS.replace('stay 15 min', 'stay 6 min'),
    });
  });

  it('takes no more than one step where one is enough', () => {
    const overByOne = 'gas: air\ndescend to 30 m at 18 m/min\nstay 15 min\nascend to surface at 9 m/min\n';
    expect(way(overByOne, 'leave-earlier')).toMatchObject({ from: 15, to: 14, cost: '1 min less at the bottom' });
  });

  it('moves every level up together, and keeps the deepest from going above the next', () => {
    expect(way(LEVELS, 'every-level-shallower')).toMatchObject({
      from: 34,
      to: 30.5,
      unit: 'm',
      script: LEVELS.replace('34 m', '30.5 m').replace('25 m', '21.5 m'),
    });
    expect(way(LEVELS, 'deepest-shallower')).toMatchObject({ none: true });
    expect(way(LEVELS, 'deepest-shallower').text).toMatch(
      /^Even going no deeper than 25 m, where the next level lies, \d+ min of stops/,
    );
  });

  it('says that no rate and no pause would have done where it came about before the way up', () => {
    for (const lever of ['slower-all-the-way', 'pause'])
      expect(way(LEVELS, lever).text).toBe(
        'The stop came about at 17:39, before the way up begins: nothing of this kind would have been enough.',
      );
  });

  it('counts each dive of a day by its own clock', () => {
    const before = 'descend to 10 m at 20 m/min\nstay 5 min\nascend to surface at 9 m/min\ninterval 24 h\n';
    expect(way(LEVELS.replace('descend', `${before}descend`), 'pause').text).toMatch(
      /^On dive 2 nothing: the stop came about on dive 2, at 17:39, before the way up begins: /,
    );
  });

  it('speaks whole feet to a script in feet', () => {
    const shallower = way(FEET, 'deepest-shallower');
    expect(shallower).toMatchObject({ from: 110, unit: 'ft' });
    expect('script' in shallower && shallower.script).toMatch(/^descend to \d+ ft at 60 ft\/min$/m);
    expect(
      asked(FEET)
        .map(({ text }) => text)
        .join(),
    ).not.toMatch(/\d m\b|m\/min/);
  });

  it('holds a richer gas against its oxygen limit, which takes no slack that practice does not', () => {
    // By hand: 1.4 bar of oxygen, the working limit, with 0.02 bar of slack: (1.42 ÷ 0.36 − 1.01325) × 10 = 29.3 m.
    const deep = 'gas: air\ndescend to 39 m at 18 m/min\nstay 12 min\nascend to surface at 9 m/min\n';
    const gas = way(deep, 'richer-gas');
    expect(gas).toMatchObject({ none: true });
    expect(gas.text).toMatch(/^\d\d% would have done, but its oxygen limit is \d\d m and the dive goes to 39 m\.$/);
  });

  it('waits longer before the dive that has the stop, and not before the first', () => {
    const wait = way(DAY, 'longer-interval');
    expect(wait).toMatchObject({ dive: 2, from: 30, unit: 'min' });
    expect('script' in wait && wait.script).toBe(
      DAY.replace('30 min\ndescend', `${'to' in wait && wait.to} min\ndescend`),
    );
    expect(way(LEVELS, 'longer-interval')).toMatchObject({ none: true });
  });

  it('finds by halving the very interval a minute by minute search finds, and that none is enough', () => {
    const dive = (depthM: number, minutes: number) =>
      `descend to ${depthM} m at 18 m/min\nstay ${minutes} min\nascend to 5 m at 9 m/min\nstay 3 min\nascend to surface at 9 m/min\n`;
    const days = [
      `gas: air\n${dive(18, 40)}interval 30 min\n${dive(30, 14)}`,
      `gas: 36%\n${dive(22, 40)}interval 10 min\n${dive(30, 20)}`,
    ];
    for (const day of days) {
      const found = way(day, 'longer-interval');
      if ('none' in found) throw new Error(found.text);
      for (let minutes = found.from + 1; minutes < found.to; minutes += 1)
        expect(
          troubleOf(day.replace(/interval \d+ min/, `interval ${minutes} min`), STOP),
          `${minutes} min`,
        ).toBeDefined();
      expect(troubleOf(found.script, STOP)).toBeUndefined();
    }
    const none = `gas: air\n${dive(14, 20)}interval 60 min\n${dive(30, 22)}`;
    expect(way(none, 'longer-interval')).toMatchObject({ none: true });
    for (const minutes of [61, 100, 300, 700, 1439])
      expect(troubleOf(none.replace('60 min', `${minutes} min`), STOP)).toBeDefined();
  });

  it('makes the deeper dive first, where that is enough', () => {
    const order = way(DAY, 'other-order');
    const [first, second] = DAY.replace('gas: air\n', '').split('interval 30 min\n');
    if (!('none' in order)) expect(order.script.trim()).toBe(`gas: air\n${second}interval 30 min\n${first}`.trim());
    else expect(order.text).toMatch(/^Even in the other order, /);
  });

  it('pulls a lever on each dive that has it, in turn', () => {
    const twice = `${LEVELS}interval 24 h\n${LEVELS.replace('# the wall\ngas: air\n', '')}`;
    const earlier = way(twice, 'leave-earlier');
    expect(earlier.text).toMatch(
      /^On dive 1 leaving the bottom 9 min earlier and on dive 2 leaving the bottom \d+ min earlier/,
    );
    expect('script' in earlier && asked(earlier.script)).toEqual([]);
  });

  it('lays no rise of a later dive to a change that keeps the unit from locking before it', () => {
    const surfaced = 'gas: air\ndescend to 30 m at 18 m/min\nstay 25 min\nascend to surface at 9 m/min\n';
    const hasty = 'descend to 12 m at 18 m/min\nstay 5 min\nascend to surface at 18 m/min\n';
    expect(way(`${surfaced}interval 3 h\n${hasty}`, 'leave-earlier')).toMatchObject({ to: 14 });
  });

  it('cuts a recorded dive, which has slopes and no levels, at whole minutes', () => {
    const slopes =
      'gas: air\ndescend to 33 m in 2 min\nascend to 29.4 m in 9 min\ndescend to 31.2 m in 6 min\nascend to 24.8 m in 10 min\nascend to surface in 4 min\n';
    const earlier = way(slopes, 'leave-earlier');
    expect(earlier).toMatchObject({ unit: 'min' });
    expect('script' in earlier && parseScript(earlier.script).ok).toBe(true);
    expect('script' in earlier && asked(earlier.script)).toEqual([]);
  });
});

describe('what would have avoided a “slow down”', () => {
  it('is a slower rate over the climb that was too fast, and nothing else', () => {
    const fast = LEVELS.replace('ascend to 5 m at 9', 'ascend to 5 m at 18');
    expect(asked(fast, 'slow-down').map(({ lever }) => lever)).toEqual(['slower-where-too-fast', 'slower-all-the-way']);
    expect(way(fast, 'slower-where-too-fast', 'slow-down')).toMatchObject({
      from: 18,
      to: 9,
      unit: 'm/min',
      script: LEVELS,
    });
  });
});

describe('a change that turns', () => {
  it('is searched from the smallest on: the first rate that is enough, though a slower one would not be', () => {
    // With a low first factor, slower is better until the gas taken up on the way outweighs what is let go.
    const quick =
      'gas: air\ngradient factors: 30/80\ndescend to 30 m at 20 m/min\nstay 12 min\nascend to surface at 18 m/min\n';
    const slower = way(quick, 'slower-all-the-way');
    expect(slower).toMatchObject({ from: 18, unit: 'm/min' });
    const to = 'to' in slower ? slower.to : 0;
    const at = (rate: number) => asked(quick.replace('at 18 m/min', `at ${rate} m/min`)).length > 0;
    const rates = Array.from({ length: 17 }, (_, i) => 17 - i);
    expect(rates.filter((rate) => rate > to).map(at)).not.toContain(false);
    expect(at(to)).toBe(false);
    expect(rates.filter((rate) => rate < to).map(at)).toContain(true);
  });
});

describe('how much more it would have taken', () => {
  const SHORT = 'gas: air\ndescend to 30 m at 18 m/min\nstay 5 min\nascend to surface at 9 m/min\n';

  it('is told of a dive that has no stop, each stretch by itself', () => {
    const more = howMuchMore(SHORT, { target: 'stop', system: 'metric' });
    expect(more.map(({ lever }) => lever)).toEqual(['stay-longer', 'go-deeper', 'come-up-faster']);
    const [longer] = more;
    expect(longer).toMatchObject({ from: 5, unit: 'min' });
    // Going back by the least that has it leads back below it.
    if (longer && 'script' in longer) {
      expect(asked(longer.script).length).toBeGreaterThan(0);
      expect(asked(longer.script.replace(`stay ${longer.to} min`, `stay ${longer.to - 1} min`))).toEqual([]);
    }
    expect(howMuchMore(LEVELS, { target: 'stop', system: 'metric' })).toEqual([]);
  });
});

describe('what a unit asks beyond the model', () => {
  it('is laid to the one setting that makes the difference, beside what the other units show', () => {
    const units =
      'gas: air\nsetup: Strict, gradient factors 40/60\nsetup: Timer, gauge mode\ndescend to 27 m at 18 m/min\nstay 15 min\nascend to surface at 9 m/min\n';
    const [strict, ...others] = settingsThatMadeIt(units, { target: 'stop', system: 'metric' });
    expect(others).toEqual([]);
    expect(strict!.text).toMatch(
      /^Strict asks for \d+ min of stops, which a unit set right does not: its limits made the difference\. Of the other units, Timer asks for nothing of the kind\.$/,
    );
    expect(strict && 'script' in strict && strict.script).toBe(
      units.replace('Strict, gradient factors 40/60', 'Strict'),
    );
  });
});

describe('what would still have been there', () => {
  it('is a stop never told shorter than it is, or a ceiling never told shallower', () => {
    expect(sayLeft('stop', { stopsMin: 6.001, ceilingM: 4 }, 'metric')).toContain('6 min 1 s of stops');
    expect(sayLeft('stop', { stopsMin: 6, ceilingM: 4 }, 'metric')).toContain('6 min of stops');
    expect(sayLeft('ceiling', { stopsMin: 0, ceilingM: 4.31 }, 'metric')).toContain('a ceiling at 4.4 m');
    expect(sayLeft('ceiling', { stopsMin: 0, ceilingM: 4.31 }, 'imperial')).toContain('a ceiling at 15 ft');
  });
});
