import { describe, expect, it } from 'vitest';
import { settingsSchema } from '@/lib/dive/dive';
import { setSetups } from '@/lib/dive/edit/edit-setups';
import { parseScript, writeScript } from '@/lib/dive/script';
import { setupSchema } from '@/lib/dive/setup';
import { diveOf } from '../read';

function setupsOf(text: string) {
  const dive = diveOf(text);
  expect(settingsSchema.safeParse(dive.settings).error).toBeUndefined();
  return dive.settings.setups;
}

function errorOf(text: string) {
  const parsed = parseScript(text);
  if (parsed.ok) throw new Error('it reads');
  const { line, column, endColumn, message, mend } = parsed.errors[0]!;
  return { at: text.split('\n')[line - 1]!.slice(column - 1, endColumn - 1), message, mend };
}

const right = { mode: 'dive', depthOffsetM: 0, depthScale: 1, freshBeforeDives: [] };
const one = (parts: string) => setupsOf(`setup: Rental unit, ${parts}`)![0];

describe('a setup in a script', () => {
  it('is none unless written', () => {
    expect(setupsOf('water: salt')).toEqual([]);
  });

  it('may be a name alone: a unit set as the dive is', () => {
    expect(setupsOf('setup: Shop unit')).toEqual([{ name: 'Shop unit', ...right }]);
  });

  it.each([
    ['gas 32%', { gas: { o2: 0.32, he: 0 } }],
    ['gas 18/45', { gas: { o2: 0.18, he: 0.45 } }],
    ['altitude 2000 m', { altitudeM: 2000 }],
    ['altitude sea level', { altitudeM: 0 }],
    ['water salt', { water: 'salt' }],
    ['gradient factors 40/85', { gradientFactors: { low: 0.4, high: 0.85 } }],
    ['gf 40/85', { gradientFactors: { low: 0.4, high: 0.85 } }],
    ['depth +0.8 m', { depthOffsetM: 0.8 }],
    ['depth −0,8 m', { depthOffsetM: -0.8 }],
    ['depth +3 ft', { depthOffsetM: 0.9144 }],
    ['depth 103%', { depthScale: 1.03 }],
    ['depth 97.5 %', { depthScale: 0.975 }],
    ['depth +0.8 m, depth 103%', { depthOffsetM: 0.8, depthScale: 1.03 }],
    ['gauge mode', { mode: 'gauge' }],
    ['Gauge', { mode: 'gauge' }],
    ['fresh before dive 2', { freshBeforeDives: [1] }],
    ['fresh before dives 2 and 4', { freshBeforeDives: [1, 3] }],
  ])('may be set to %s', (parts, setup) => {
    expect(one(parts)).toEqual({ name: 'Rental unit', ...right, ...setup });
  });

  it('takes its parts in any order, with commas or semicolons between', () => {
    const whole = {
      name: 'Rental unit',
      ...right,
      gas: { o2: 0.32, he: 0 },
      altitudeM: 2000,
      depthOffsetM: 0.8,
      mode: 'gauge',
      freshBeforeDives: [1],
    };
    expect(one('gas 32%; altitude 2000 m; depth +0.8 m; fresh before dive 2; gauge mode')).toEqual(whole);
    expect(one('gauge mode, fresh before dive 2, depth +0,8 m, altitude 2000 m, gas 32%')).toEqual(whole);
  });

  it('may be one of many, each on a line of its own', () => {
    const text = 'setup: Shop unit\nunit: Rental unit, gas 32%\n';
    expect(setupsOf(text)!.map(({ name }) => name)).toEqual(['Shop unit', 'Rental unit']);
  });

  it('is written one on a line, and reads back the same', () => {
    const parsed = parseScript(
      'setup: Shop unit;gauge;depth 103%\nsetup: Rental unit, fresh before dives 2 and 3, gf 40/85\n',
    );
    if (!parsed.ok) throw new Error('it does not read');
    const lines = writeScript({ ...parsed.dive, lines: [] })
      .split('\n')
      .filter((line) => line.startsWith('setup'));
    expect(lines).toEqual([
      'setup: Shop unit, gauge mode, depth 103%',
      'setup: Rental unit, gradient factors 40/85, fresh before dives 2 and 3',
    ]);
    expect(setupsOf(lines.join('\n'))).toEqual(parsed.dive.settings.setups);
  });

  it('keeps a name that would be taken for a setting in quotation marks', () => {
    expect(setupsOf('setup: "gas 32%", gas 36%')![0]).toMatchObject({ name: 'gas 32%', gas: { o2: 0.36, he: 0 } });
    const parsed = parseScript('setup: "gauge"');
    expect(parsed.ok && writeScript({ ...parsed.dive, lines: [] })).toContain('setup: "gauge"\n');
    expect(setupsOf('setup: Gas analyser')![0]!.name).toBe('Gas analyser');
  });

  it.each([
    ['setup: Rental unit, gas 132%', '132%', /A gas cannot be 132% oxygen/, /at most 100/],
    ['setup: Rental unit, altitude 9000 m', '9000 m', /higher than this model takes/, /6000 m/],
    ['setup: Rental unit, altitude 2000', '2000', /2000 what\?/, /2000 m or/],
    ['setup: Rental unit, depth 30 m', '30 m', /too much/, /10 m/],
    ['setup: Rental unit, depth 130%', '130%', /no sensor’s error/, /80% to 120%/],
    ['setup: Rental unit, depth 3', '3', /3 what\?/, /\+3 m, \+3 ft or 3%/],
    ['setup: Rental unit, gf 85/40', '85/40', /higher than the high one/, /40\/85/],
    ['setup: Rental unit, fresh before dive 1', '1', /not a dive with another before it/, /from 2 to 51/],
    ['setup: Rental unit, fresh before dive two', 'two', /not the number of a dive/, /fresh before dive 2/],
    ['setup: Rental unit, altitde 2000 m', 'altitde 2000 m', /nothing a unit can be set to/, /Did you mean “altitude”/],
    ['setup: Rental unit, colour red', 'colour red', /nothing a unit can be set to/, /Write gauge mode, gas,/],
    ['setup: Rental unit, gas', 'gas', /has no value/, /Write gas 32%/],
    ['setup: Rental unit, gauge mode on', 'on', /says nothing/, /alone/],
    ['setup: Rental unit, gas 32%, gas 36%', 'gas 36%', /says again/, /Keep one/],
    ['setup: Rental unit, , gas 32%', ',', /missing here/, /Write a name/],
    ['setup: Rental unit;', ';', /missing here/, /Write a name/],
    ['setup: , gas 32%', ',', /no name/, /Write a name/],
    ['setup: gas 32%, altitude 20 m', 'gas 32%', /its name comes first/, /Rental unit, gas 32%/],
    ['setup: "Rental, gas 32%', '"Rental', /stray quotation mark/, /whole name/],
    [`setup: ${'x'.repeat(61)}`, 'x'.repeat(61), /long name/, /60 characters/],
    ['setup: A\nsetup: A', 'A', /Two setups are called “A”/, /name of its own/],
  ])('says what is wrong with %j, and where', (text, at, message, mend) => {
    const error = errorOf(text);
    expect(error.at).toBe(at);
    expect(error.message).toMatch(message);
    expect(error.mend).toMatch(mend);
  });

  it('is at most one of twelve', () => {
    expect(errorOf(Array.from({ length: 13 }, (_, i) => `setup: Unit ${i}`).join('\n')).message).toMatch(
      /more than 12 setups/,
    );
  });
});

describe('editing the setups of a script', () => {
  const script =
    'water: salt\nsetup: Shop unit;  gauge  # on the wall\nsetup: Rental unit, gas 32%\ngas: air\ndescend to 20 m in 2 min\n';
  const setup = (name: string, more = {}) => setupSchema.parse({ name, ...more });

  it('leaves lines that already say it as they are typed', () => {
    const same = [setup('Shop unit', { mode: 'gauge' }), setup('Rental unit', { gas: { o2: 0.32, he: 0 } })];
    expect(setSetups(script, same)).toBe(script);
  });

  it('rewrites what has changed and keeps its remark', () => {
    const changed = [
      setup('Shop unit', { mode: 'gauge', depthScale: 1.02 }),
      setup('Rental unit', { gas: { o2: 0.32, he: 0 } }),
    ];
    expect(setSetups(script, changed).split('\n')[1]).toBe('setup: Shop unit, gauge mode, depth 102%  # on the wall');
  });

  it('adds new ones after the others, and takes out the rest', () => {
    expect(
      setSetups(script, [setup('A'), setup('B'), setup('C')])
        .split('\n')
        .slice(1, 4),
    ).toEqual(['setup: A  # on the wall', 'setup: B', 'setup: C']);
    expect(setSetups(script, []).split('\n')).toEqual([
      'water: salt',
      '# on the wall',
      'gas: air',
      'descend to 20 m in 2 min',
      '',
    ]);
  });

  it('adds the first after the settings', () => {
    expect(setSetups('gas: air\ndescend to 20 m in 2 min\n', [setup('A')])).toBe(
      'gas: air\nsetup: A\ndescend to 20 m in 2 min\n',
    );
  });
});
