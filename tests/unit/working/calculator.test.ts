import { beforeAll, describe, expect, it } from 'vitest';
import { loadCalculator, LONGEST_EXPRESSION, type Calculator } from '@/lib/working/calculator';

let calculator: Calculator;
beforeAll(async () => {
  calculator = await loadCalculator();
});

describe('the calculator of a working', () => {
  it.each([
    ['p_surface + w * d', { p_surface: 1.01325, w: 0.1, d: 30 }, 4.01325],
    ['a / b - c ^ 2', { a: 1, b: 4, c: 0.5 }, 0],
    ['-x + abs(-2) + sqrt(9) + pow(2, 3)', { x: 1 }, 12],
    ['exp(log(2)) + ceil(1.2) + max(1, 2) - min(1, 2)', {}, 5],
    ['x > 1 ? 10 : x >= 1 ? 20 : 30', { x: 1 }, 20],
    ['x < 2 ? x : Infinity', { x: 2 }, Infinity],
  ])('works out %s', (expression, values, expected) => {
    expect(calculator.evaluate(expression, values)).toBeCloseTo(expected, 12);
  });

  it.each([
    ['log(0 - 1)', NaN],
    ['1 / 0', Infinity],
  ])('tells %s as no number or infinite, never as a complex number', (expression, expected) => {
    expect(calculator.evaluate(expression, {})).toBe(expected);
  });

  it.each([
    'import({})',
    'import("x")',
    'createUnit("x")',
    'evaluate("1")',
    'parse("1")',
    'simplify("x")',
    'derivative("x^2", "x")',
    'constructor("x")',
    'f(x) = x',
    'x = 3',
    'x = 3; x',
    '1:3',
    '[1, 2]',
    '{a: 1}',
    'x.y',
    'x[1]',
    '"text"',
    '5 cm',
    '2 x',
    'x!',
    "x'",
    'x % 2',
    'not x',
    'x == 1 ? 1 : 2',
    'sin(x)',
    'random()',
    'range(1, 9)',
    'sum(1, 2)',
    'map([1], sqrt)',
    'sqrt(2)(3)',
    'true',
    'null',
    'NaN',
    '1 < x',
    '',
    '(',
  ])('refuses %s', (expression) => {
    expect(() => calculator.evaluate(expression, { x: 1 })).toThrow(RangeError);
  });

  it.each(['constructor', 'toString', '__proto__', 'hasOwnProperty', 'exp', 'e', 'pi', 'i'])(
    'knows %s only where it is given',
    (name) => {
      expect(() => calculator.evaluate(`${name} + 1`, {})).toThrow(`${name} has no value in this working`);
    },
  );

  it('refuses a value that is no number', () => {
    const values = { x: 'process' } as unknown as Record<string, number>;
    expect(() => calculator.evaluate('x + 1', values)).toThrow('x is not a number');
  });

  it('refuses an expression that is too long', () => {
    expect(() => calculator.evaluate(`1${' '.repeat(LONGEST_EXPRESSION)}`, {})).toThrow(
      `at most ${LONGEST_EXPRESSION} characters`,
    );
  });

  it('refuses an expression of too many parts', () => {
    expect(() =>
      calculator.evaluate(
        Array(LONGEST_EXPRESSION / 2)
          .fill('1')
          .join('+'),
        {},
      ),
    ).toThrow('parts');
  });

  it('refuses brackets nested as deep as they can be written', () => {
    const half = LONGEST_EXPRESSION / 2 - 1;
    expect(() => calculator.evaluate(`${'('.repeat(half)}1${')'.repeat(half)}`, {})).toThrow(RangeError);
  });

  it('is loaded once', () => {
    expect(loadCalculator()).toBe(loadCalculator());
  });
});
