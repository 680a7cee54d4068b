// @module-tag in-turn
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scenarios } from '@/content/scenarios/scenarios';
import { readyRuns } from '@/content/bench/runs';
import { figuresAt, figuresOf } from '@/lib/ascent/figures';
import type { Dive } from '@/lib/dive/dive';
import { samplingOf } from '@/lib/dive/sampling';
import { MOST_CHARACTERS, MOST_LINES, parseScript, writeScript } from '@/lib/dive/script';
import { scriptReference } from '@/lib/dive/script-reference';
import { SET_RIGHT } from '@/lib/dive/set-right';
import { computeTimeline } from '@/lib/dive/timeline';
import { gasDensitiesOf } from '@/lib/exposure/gas-density';
import { gasSupplyOf } from '@/lib/exposure/gas-supply';
import { isobaricSwitches } from '@/lib/exposure/isobaric-switch';
import { oxygenExposureOf } from '@/lib/exposure/oxygen-exposure';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { watchDive } from '@/lib/rules/watch';
import { RULE_READING_IDS, unitWorkingFor, type UnitReadingId } from '@/lib/working/rules/unit-all';
import { damagedLines, expectUnpolluted, promptly } from './hostile';
import { law } from '../law';

/** A week of dives, and what an instrument makes of it, may take this long on a slow machine, ms. */
const WHOLE_DIVE_MS = 6000;

/** Readings whose workings take every leg of the dive, every stop of the way up and every rule. */
const ASKED: readonly UnitReadingId[] = [
  'tension-1',
  'supersaturation',
  'ceiling',
  'no-stop',
  'time-to-surface',
  ...RULE_READING_IDS,
];

/** Where in some data a number is none, by the names that lead there; each place once. */
function notNumbers(data: unknown, path = '', seen = new Set<unknown>(), found = new Set<string>()): string[] {
  if (typeof data === 'number') {
    if (Number.isNaN(data)) found.add(path);
  } else if (typeof data === 'object' && data !== null && !seen.has(data)) {
    seen.add(data);
    if (ArrayBuffer.isView(data)) {
      if ((data as Float64Array).some(Number.isNaN)) found.add(path);
    } else
      for (const [key, value] of Object.entries(data))
        notNumbers(value, `${path}.${Array.isArray(data) ? '' : key}`, seen, found);
  }
  return [...found];
}

/** Works out all there is of a dive; every number of it has to be one. */
function expectWorkedOut(dive: Dive): void {
  const { everyS, intervalEveryS } = samplingOf(dive, 30);
  const timeline = promptly(() => computeTimeline(dive, everyS, { intervalEveryS }));
  const figures = promptly(() => figuresOf(timeline, dive.settings));
  const setups = [SET_RIGHT, ...(dive.settings.setups ?? []).slice(0, 2)];
  const watches = setups.map((setup) =>
    promptly(
      () => watchDive(dive, setup, DEFAULT_RULES, everyS, { truth: { timeline, figures }, intervalEveryS }),
      WHOLE_DIVE_MS,
    ),
  );
  expect(notNumbers([timeline, figures, watches])).toEqual([]);
  expect(notNumbers(promptly(() => gasSupplyOf(timeline, dive.settings)))).toEqual([]);
  for (const worked of [oxygenExposureOf, gasDensitiesOf, isobaricSwitches])
    expect(notNumbers(promptly(() => worked(timeline)))).toEqual([]);
  for (const share of [0, 0.4, 0.8, 1]) {
    const sample = Math.floor((timeline.length - 1) * share);
    expect(notNumbers(promptly(() => figuresAt(timeline, figures, sample)))).toEqual([]);
    for (const watch of watches) {
      const workings = promptly(
        () => ASKED.map((reading) => unitWorkingFor(reading, { watch, sample })),
        WHOLE_DIVE_MS,
      );
      expect(notNumbers(workings)).toEqual([]);
    }
  }
}

function expectRead(text: string): void {
  const read = promptly(() => parseScript(text));
  expectUnpolluted(read);
  if (read.ok) {
    expectWorkedOut(read.dive);
    expect(promptly(() => writeScript(read.dive))).toBe(text.replace(/\r(?!\n)/g, '\n'));
    return;
  }
  const lines = text.split(/\r\n|\r|\n/);
  expect(read.errors.length).toBeGreaterThan(0);
  for (const { line, column, endColumn, message, mend } of read.errors) {
    expect(column).toBeGreaterThanOrEqual(1);
    expect(endColumn).toBeGreaterThan(column);
    expect(endColumn - 1).toBeLessThanOrEqual(lines[line - 1]!.length + (message.includes('are read') ? 1 : 0));
    expect(message).toMatch(/\S.*[.?]$/s);
    expect(mend).toMatch(/\S.*[.?]$/s);
    expect((message + mend).replace(/“[^”]*”/g, '')).not.toMatch(/NaN|Infinity|undefined|\[object/);
  }
}

const UP = 'ascend to surface at 9 m/min';

describe('a script of absurd numbers', () => {
  it.each([
    ['a stay of next to no time', `descend to 30 m at 18 m/min\nstay 0.000000001 s\n${UP}`],
    [
      'a stay shorter than the clock can tell after a week',
      `interval 6 days\ndescend to 30 m at 18 m/min\nstay 0.0000000000001 s\n${UP}`,
    ],
    [
      'a climb of less than an atom',
      `interval 6 days\ndescend to 30 m at 18 m/min\nascend to 29.9999999999999 m at 200 m/min\n${UP}`,
    ],
    ['a dive of less than an atom', `interval 6 days\ndescend to 0.${'0'.repeat(40)}1 m at 18 m/min\n${UP}`],
    ['a number with three hundred noughts after the point', `descend to 30 m in 0.${'0'.repeat(300)}1 s\n${UP}`],
    ['a number that overflows', `descend to 1${'0'.repeat(400)} m at 18 m/min\nstay 1${'0'.repeat(400)} min\n${UP}`],
    [
      'a week at the greatest depth',
      `gas: 4/90\ndescend to 350 m at 200 m/min\nstay 6.9 days\nascend to surface at 9 m/min`,
    ],
    ['a week at the surface', 'interval 7 days'],
    ['the strictest limits after a week', `gf: 1/1\ndescend to 350 m at 18 m/min\nstay 6 days\n${UP}`],
    [
      'the slowest ascents',
      `plan ascent: 0.0001 m/min\ndescend to 60 m at 18 m/min\nstay 60 min\nascend to surface at 0.01 m/min`,
    ],
    [
      'a thousand dives',
      Array.from({ length: 1200 }, () => 'descend to 10 m in 10 s\nascend to surface in 10 s\ninterval 100 s').join(
        '\n',
      ),
    ],
    ['as many steps as there may be', `descend to 30 m at 18 m/min\n${'stay 1 s\n'.repeat(MOST_LINES - 3)}${UP}`],
    [
      'as many gases as there may be',
      `descend to 30 m at 18 m/min\n${Array.from({ length: 2400 }, (_, i) => `switch to ${20 + (i % 79)}.${i}%\nstay 1 s`).join('\n')}\n${UP}`,
    ],
    [
      'the wrong letters on every line',
      Array.from({ length: MOST_LINES }, (_, i) => `descnd to 30 mm at ${i}`).join('\n'),
    ],
    ['one endless line', 'descend to '.repeat(100_000)],
    ['one endless word', 'x'.repeat(1_000_000)],
    ['as long a line of digits as is read', `stay ${'1'.repeat(1990)} min`],
    ['as long a line of spaces as is read', `stay ${' '.repeat(1980)}min`],
    ['as long a line of parts as is read', `stay ${'1 min and '.repeat(199)}`],
    ['as long a list of parts as is read', `setup: ${'a, '.repeat(660)}`],
    ['nothing but line ends', '\n'.repeat(1_000_000)],
    ['every line end there is', '\r\n\r\n\n\r'.repeat(1000)],
    ['half a letter', 'descend to \ud800 m'],
    [
      'a name that everything shares',
      '__proto__: 1\nconstructor: 2\nsetup: __proto__, gauge\nsetup: constructor, gas 32%',
    ],
  ])('%s is worked out or refused in words', (_, text) => expectRead(text));

  it.each([
    ['stay 0.0009 s', 6, 'is too short to tell from no time', 'Write a time of at least a second.'],
    ['ascend to 29.9999 m in 0.0001 s', 24, 'is too short to tell from no time', 'Write a time of at least a second.'],
    [
      'ascend to 29.99999999 m at 200 m/min',
      11,
      'a change of depth as small as this is over in no time',
      'Write a depth further from it, or leave this line out.',
    ],
  ])(
    'is refused, with its place and what to write, where a step is over in no time: %s',
    (step, column, message, mend) => {
      const read = parseScript(`descend to 30 m at 18 m/min\n${step}\n${UP}`);
      expect(read).toMatchObject({
        ok: false,
        errors: [{ line: 2, column, message: expect.stringContaining(message), mend }],
      });
    },
  );

  it('may have a step of a millisecond', () => {
    expectRead(`interval 6 days\ndescend to 0.003 m at 180 m/min\nstay 0.001 s\n${UP}`);
    expect(parseScript(`descend to 0.003 m at 180 m/min\nstay 0.001 s\n${UP}`).ok).toBe(true);
  });

  it('is refused where it is longer than is read', () => {
    for (const text of ['x'.repeat(MOST_CHARACTERS + 1), '\n'.repeat(MOST_LINES + 1)])
      expect(parseScript(text)).toMatchObject({ ok: false, errors: [{ line: 1, column: 1 }] });
  });
});

const SPOILT = [
  '',
  ' ',
  '0',
  '0 s',
  '0 m',
  '-1 min',
  '-0 m',
  '1e308 m',
  '1e-9 s',
  '0.000001 s',
  '0.0000001 m',
  '350 m',
  '350.1 m',
  '7 days',
  '8 days',
  '9'.repeat(300) + ' min',
  'NaN',
  'Infinity min',
  '1,200 m',
  '2:50',
  '2:99',
  '99:99:99',
  '1 h 1 h',
  '18/45',
  '0/0',
  '100/1',
  '1/99',
  '0%',
  '100%',
  '101%',
  '0.0001%',
  'gauge',
  'air',
  'surface',
  'at 200 m/min',
  'at 0 m/min',
  'in 1 s',
  'in 0 s',
  'from 21 m',
  '12 L, 200 bar',
  '-10 m',
  '# ',
  '"',
  ';',
  ',',
  ':',
  '=',
  '\r',
  '\u00a0',
  '\u202e',
  '💥',
  '\u0000',
  'İ',
  'ﬁ',
  '½',
  '٣ m',
  '１２ m',
  '__proto__',
];
const READY = [...scenarios.map(({ script }) => script), ...readyRuns.map(({ script }) => script)];

describe('a ready dive with lines lost, doubled, swapped or spoilt', () => {
  it('is worked out, to the last number, or refused in words', () => {
    law(
      fc.property(
        fc.constantFrom(...READY).chain((script) => damagedLines(script, SPOILT)),
        expectRead,
      ),
      200,
    );
  });
});

const WORDS = [
  ...scriptReference.flatMap(({ name, also, examples }) => [name, ...also, ...examples]),
  ...SPOILT,
  'descend to',
  'ascend to',
  'stay',
  'interval',
  'switch to',
  'setup:',
  'cylinder:',
  ' at ',
  ' in ',
  ' m',
  ' min',
  ' m/min',
  '\n',
  '\n',
  '\n',
  '30',
  '18',
  '5',
];

describe('words of the language in any order', () => {
  it('are worked out or refused in words', () => {
    law(
      fc.property(
        fc.array(fc.constantFrom(...WORDS), { maxLength: 60 }).map((words) => words.join(' ')),
        expectRead,
      ),
      1000,
    );
  });

  it('are steps of a dive as absurd as they may be', () => {
    const depth = fc.oneof(
      fc.constantFrom('0.0000001 m', '0.001 m', '1 ft', '3 m', '30 m', '349.9999999 m', '350 m'),
      fc.integer({ min: 1, max: 3500 }).map((tenths) => `${tenths / 10} m`),
    );
    const speed = fc.constantFrom(
      'at 200 m/min',
      'at 0.001 m/min',
      'at 9 m/min',
      'in 1 s',
      'in 2 min',
      'in 0.000001 s',
      'in 1 day',
    );
    const stay = fc.constantFrom(
      'stay 0.001 s',
      'stay 1 s',
      'stay 0.0000000001 s',
      'stay 1 day',
      'stay 99 min',
      'switch to oxygen',
      'switch to 4/95',
      'switch to 1%',
      'switch to air',
    );
    const absurd = fc.tuple(
      fc.constantFrom(
        '',
        'gas: 1%',
        'gas: 4/96',
        'altitude: 6000 m',
        'altitude: -450 m',
        'gf: 1/1',
        'respiratory quotient: 0.6',
        'arrived: 6000 m, 1 s ago',
        'setup: A, gauge\nsetup: B, altitude 6000 m, gas 1/99, depth +10 m',
        'cylinder: back, 0.1 L, 450 bar, air\nbreathing: 200 L/min',
      ),
      fc.array(fc.tuple(depth, speed, stay), { minLength: 1, maxLength: 5 }),
    );
    law(
      fc.property(absurd, ([setting, moves]) => {
        let fromM = 0;
        const steps = moves.flatMap(([to, how, wait]) => {
          const toM = to.endsWith('ft') ? 0.3048 : Number.parseFloat(to);
          const verb = toM > fromM ? 'descend' : 'ascend';
          const move = toM === fromM ? [] : [`${verb} to ${to} ${how}`];
          fromM = toM;
          return [...move, wait];
        });
        expectRead([setting, ...steps, 'surface at 200 m/min', 'interval 1 h'].join('\n'));
      }),
      100,
    );
  });
});
