import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate } from '@/lib/lesson/expression/evaluate';
import { LONGEST_EXPRESSION, parseExpression, parseMoment } from '@/lib/lesson/expression/parse-expression';
import { fillText, parseTemplate } from '@/lib/lesson/expression/template';
import { MOST_TOKENS } from '@/lib/lesson/expression/tokens';
import { FACT_NAMES } from '@/lib/lesson/facts/facts';
import { goalState } from '@/lib/lesson/questions/goal';
import { TWO_DIVES, worldFor } from '../../unit/lesson/made-lessons';
import { promptly } from './hostile';
import { law } from '../law';

const WORDS = [
  ...FACT_NAMES,
  'at',
  'in',
  'of',
  'on',
  'and',
  'or',
  'not',
  'highest',
  'lowest',
  'after',
  'before',
  'first',
  'dive',
  'min',
  'max',
  'abs',
  'floor',
  'ceil',
  'round',
  'start',
  'arrival',
  'leaving',
  'surfacing',
  'end',
  'ceiling-clears',
  'm',
  'ft',
  'min',
  's',
  'h',
  'bar',
  'm/min',
  '%',
  'g/L',
  '(',
  ')',
  ',',
  '+',
  '-',
  '*',
  '/',
  '==',
  '!=',
  '<',
  '<=',
  '>',
  '>=',
  '=',
  '"',
  '"Rental unit"',
  '"constructor"',
  '0',
  '1',
  '16',
  '17',
  '350',
  '1000000000000000000000',
  '0.0000000000001',
  '.5',
  '9'.repeat(350),
  '__proto__',
  'constructor',
  'toString',
  '\u2212',
  '×',
  '≤',
  '\u0000',
  '💥',
  '{{',
  '|',
];
const anyExpression = fc.oneof(
  fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 30 }).map((words) => words.join(' ')),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .tuple(
      fc.constantFrom('(', '-', 'not ', 'abs(', 'min(1,', '1+', 'highest ', 'noStopMin at ', '1 h '),
      fc.nat(500),
      fc.constantFrom('1', 'noStopMin', ')', ''),
    )
    .map(([piece, times, end]) => piece.repeat(times) + end),
  fc
    .tuple(
      fc.constantFrom(...FACT_NAMES),
      fc.constantFrom(
        '',
        '(0 m)',
        '(350 m)',
        '(351 m)',
        '(1)',
        '(16)',
        '(17)',
        '(0/0)',
        '(1/0)',
        '(1.4 bar)',
        '(ceiling-clears)',
        '(18 m, 3 m)',
        '(0 bar)',
      ),
      fc.constantFrom(
        '',
        ' at start',
        ' at arrival',
        ' at 5 min',
        ' at 1 s',
        ' at end',
        ' at 99 h',
        ' at (0-5) min',
        ' at first ceiling-clears',
        ' at 2 min after leaving',
        ' in dive 1',
        ' in dive 50',
        ' on "Rental unit"',
        ' of main',
      ),
    )
    .map((parts) => parts.join('')),
);

describe('any text as an expression', () => {
  const world = worldFor(TWO_DIVES);

  it('is worked out or refused in words, at once', () => {
    law(
      fc.property(anyExpression, (text) => {
        const parsed = promptly(() => parseExpression(text));
        promptly(() => parseMoment(text));
        promptly(() => parseTemplate(`A {{${text}}} b`));
        const filled = promptly(() => fillText(`A {{${text}}} b`, world, 'imperial'));
        if (filled.ok) expect(filled.value).not.toMatch(/NaN|undefined|Infinity|\[object/);
        const goal = promptly(() => goalState(text, world, 'metric'));
        for (const clause of goal.clauses) expect(clause.text).toMatch(/\S/);
        if (!parsed.ok) {
          expect(parsed.what).toMatch(/\S/);
          expect(parsed.mend).toMatch(/\S/);
          return;
        }
        const outcome = promptly(() => evaluate(parsed.value, world));
        if (outcome.ok) return;
        expect(outcome.what).toMatch(/\S/);
        expect(outcome.mend).toMatch(/\S/);
      }),
      3000,
    );
  });

  it('is refused where it is longer or has more in it than is read', () => {
    for (const text of [
      '1+'.repeat(LONGEST_EXPRESSION),
      '-'.repeat(LONGEST_EXPRESSION),
      '('.repeat(MOST_TOKENS - 1),
      'x'.repeat(1_000_000),
    ])
      expect(promptly(() => parseExpression(text)).ok).toBe(false);
  });
});
