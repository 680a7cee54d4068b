// @module-tag in-turn
import { describe, expect, it } from 'vitest';
import { MOST_CHARACTERS, MOST_LINES, parseScript } from '@/lib/dive/script';
import { expectRead } from './expect-script';

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
