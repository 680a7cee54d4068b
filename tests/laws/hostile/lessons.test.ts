// @module-tag in-turn
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lessonData, withEntry, withStep, withStepCopied, withValue } from '@/lib/lesson/edit-lesson';
import { LONGEST_LESSON } from '@/lib/lesson/lesson';
import { SOUND, TWO_DIVES } from '../../unit/lesson/made-lessons';
import { UNEXPECTED, damagedLines, expectUnpolluted, promptly } from './hostile';
import { law } from '../law';
import { expectRead } from './lesson-read';

const shipped = readdirSync('content/lessons')
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => readFileSync(`content/lessons/${name}`, 'utf8'));

/** Reading a lesson may ask for all the work there is for one, of some seconds on a slow machine. */
const WHOLE_LESSON_MS = 20_000;

const full = (piece: string, least = 0) =>
  piece.repeat(Math.max(least, Math.floor((LONGEST_LESSON - 10) / piece.length)));

describe('a text that was made to be slow or to overflow, read as a lesson', () => {
  it.each([
    ['quotation marks', full('"')],
    ['apostrophes', full("'")],
    ['bad escapes', `"${full('\\x')}"`],
    ['anchors', full('&a ')],
    ['aliases to nothing', full('*a ')],
    [
      'aliases of aliases',
      `a: &a [x, x]\n${Array.from({ length: 20 }, (_, i) => `b${i}: &b${i} [${Array.from({ length: 9 }, () => `*${i === 0 ? 'a' : `b${i - 1}`}`).join(', ')}]`).join('\n')}`,
    ],
    ['tags', full('!a ')],
    ['open brackets', full('[')],
    ['open braces', full('{a: ')],
    ['brackets in brackets', '['.repeat(50_000) + ']'.repeat(50_000)],
    ['lists in lists', full('- ')],
    ['keys of keys', full('? ')],
    ['colons', full(': ')],
    ['closing braces', full('}\n')],
    ['commas in a list', `[${full(',')}]`],
    ['empty lists', full('[]')],
    ['keys without values', full('a:\n')],
    [
      'many different keys',
      Array.from({ length: 13_000 }, (_, i) => `k${i}: 1`)
        .join('\n')
        .slice(0, LONGEST_LESSON),
    ],
    ['documents', full('---\n')],
    ['directives', full('%A\n')],
    ['remarks', full('#\n')],
    ['blocks', full('- >\n')],
    ['nulls', full('\u0000')],
    ['half letters', full('\ud800')],
    ['groups in groups', Array.from({ length: 400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
    ['too many characters', 'a'.repeat(2_000_000)],
  ])('%s', (_, text) => {
    expect(expectRead(text).ok).toBe(false);
    promptly(() => lessonData(text));
    expect(promptly(() => withStep(text, 'read', 0))).toEqual(expect.any(String));
  });

  it('with names that everything shares is read or refused, and nothing shared is written to', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      for (const text of [
        `${name}: { polluted: true }\n${SOUND}`,
        SOUND.replace('  main:', `  ${name}:`),
        SOUND.replace('    script: |', `    rules: { ${name}: { polluted: true } }\n    script: |`),
      ]) {
        expectRead(text);
        expectUnpolluted(lessonData(text));
      }
    }
  });
});

describe('a lesson that asks for very much of the engine', () => {
  const lesson = (script: string, steps: string) =>
    `title: T\nsummary: S\nlevel: further\nminutes: 5\nobjectives: [a]\nscripts:\n  main:\n    title: A\n    script: |\n${script.replace(/^/gm, '      ')}\nsteps:\n${steps}`;
  const step = (id: string, text: string) => `  - kind: read\n    id: ${id}\n    title: t\n    text: "${text}"\n`;
  const WEEK = 'gas: 4/90\ndescend to 350 m at 18 m/min\nstay 6 days\nascend to surface at 9 m/min\ninterval 1 h';

  it.each([
    [
      'for extremes over a week under water',
      lesson(
        WEEK,
        Array.from({ length: 40 }, (_, i) => step(`s${i}`, '{{highest supersaturationPercent}}'.repeat(60))).join(''),
      ),
    ],
    [
      'for no-stop times at every moment',
      lesson(WEEK, step('one', Array.from({ length: 60 }, (_, i) => `{{highest nextNoStopMin(${i + 1} m)}}`).join(''))),
    ],
    [
      'for schedules at every second',
      lesson(
        TWO_DIVES,
        Array.from({ length: 40 }, (_, i) =>
          step(`s${i}`, Array.from({ length: 60 }, (_, k) => `{{stopsMin at ${i + 1}.${k + 10} min}}`).join('')),
        ).join(''),
      ),
    ],
    [
      'in questions with long dives of their own',
      lesson(
        TWO_DIVES,
        Array.from(
          { length: 5 },
          (_, k) =>
            `  - kind: check\n    id: check-${k}\n    title: t\n    text: t\n    questions:\n${Array.from({ length: 8 }, (_, i) => `      - id: q${i}\n        draws: { wait: { of: [7000 min, 8000 min] } }\n        script: |\n          descend to 300 m at 18 m/min\n          stay {wait}\n          ascend to surface at 9 m/min\n        ask: How long?\n        number: { answer: highest ceilingM, within: 1 m, otherwise: No. }`).join('\n')}\n`,
        ).join(''),
      ),
    ],
  ])('%s is stopped in time, and the place is told', (_, text) => {
    const read = expectRead(text, WHOLE_LESSON_MS);
    expect(read.ok ? [] : read.faults.map(({ what }) => what)).toContainEqual(
      expect.stringMatching(/more than is worked out for one lesson/),
    );
    expect(read.ok ? 0 : read.faults.at(-1)!.line).toBeGreaterThan(5);
  });
});

const SPOILT = [
  'x',
  '-1',
  '1e308',
  '.inf',
  '99999999999999999999',
  '1 m',
  '6 days',
  '{{',
  '}}',
  '{{1/0}}',
  '{{highest noStopMin}}',
  '{{0/0 | min}}',
  '{}',
  '[]',
  '[1, 2',
  '{ a: b',
  '*a',
  '&a',
  '!!js/function x',
  '|',
  '>',
  "'",
  '- ',
  '? a',
  '~',
  'null',
  '<script>alert(1)</script>',
  '<b onclick=x>',
  '[a](javascript:alert(1))',
  '[a](https://example.org)',
  '{ __proto__: { polluted: true } }',
  'constructor',
  '\ud800',
  '\t',
  'stay 6 days',
  'descend to 350 m at 200 m/min',
  'setup: U, gauge',
  '"\\u0000"',
  '9'.repeat(3000),
  '('.repeat(300),
  'not '.repeat(90) + '1',
  '$\\frac{1}{0}$',
  '```',
  '---',
  '...',
];

describe('a lesson with lines lost, doubled, swapped or spoilt', () => {
  it('is read or refused line by line, whatever was done to the made one', () => {
    law(
      fc.property(damagedLines(SOUND, SPOILT), (text) => {
        const read = expectRead(text, WHOLE_LESSON_MS);
        if (!read.ok) return;
        expect(JSON.stringify(read.lesson)).not.toContain('javascript:');
      }),
      400,
    );
  });

  it('is read or refused line by line, whatever was done to one that is shipped', () => {
    law(
      fc.property(
        fc.constantFrom(...shipped).chain((text) => damagedLines(text, SPOILT, 6)),
        (text) => void expectRead(text, WHOLE_LESSON_MS),
      ),
      60,
    );
  });

  it('can be edited further or stays as it is', () => {
    law(
      fc.property(
        damagedLines(SOUND, SPOILT),
        fc.constantFrom(...UNEXPECTED, ...SPOILT),
        fc.array(
          fc.oneof(fc.constantFrom('steps', 'scripts', 'title', '__proto__', 'constructor', 'text'), fc.nat(5)),
          { minLength: 1, maxLength: 4 },
        ),
        (text, value, path) => {
          for (const edited of [
            withValue(text, path, value),
            withValue(text, path, undefined),
            withEntry(text, path, value),
            withStepCopied(text, 0),
            withStep(text, 'check'),
          ])
            expect(edited).toEqual(expect.any(String));
          expectUnpolluted(lessonData(text));
        },
      ),
      200,
    );
  });
});
