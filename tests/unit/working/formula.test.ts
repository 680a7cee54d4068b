import { beforeAll, describe, expect, it } from 'vitest';
import { SaxesParser } from 'saxes';
import { MATH_LETTERS } from '@/app/commands/site/math-font';
import { READING_IDS, workingFor } from '@/lib/working/all';
import { loadTypesetter, stepTex, symbolTex, type FormulaOptions, type Typesetter } from '@/lib/working/formula';
import type { WorkingStep } from '@/lib/working/working';
import { downFor, TRIMIX, workedDive } from './dives';

let typesetter: Typesetter;
beforeAll(async () => {
  typesetter = await loadTypesetter();
});
const texOf = (one: WorkingStep, options: FormulaOptions) => stepTex(typesetter.calculator, one, options).join(' ');

const { timeline, figures } = workedDive(downFor(45, 25), {
  gas: TRIMIX,
  gradientFactors: { low: 0.3, high: 0.8 },
  altitudeM: 1200,
});
const all = READING_IDS.slice(0, 11).flatMap(
  (reading) => workingFor(reading, timeline, figures, timeline.length - 2).steps,
);

const air = workedDive(downFor(30, 10));
const noStop = workingFor('no-stop', air.timeline, air.figures, 20).steps;
const step = (id: string): WorkingStep => noStop.find((one) => one.id === `step:${id}`)!;

describe('a step’s formula', () => {
  it('is written in symbols', () => {
    expect(texOf(step('ambient'), { withNumbers: false }).replace(/ +/g, ' ')).toBe(
      'p_{\\text{amb}} = p_{\\text{surface}} + w \\cdot d',
    );
  });

  it('is written with numbers, units and the result', () => {
    expect(texOf(step('ambient'), { withNumbers: true }).replaceAll(' ', '')).toBe(
      'p_{\\text{amb}}=1.01325\\,\\text{bar}+0.1\\,\\text{bar/m}\\cdot30\\,\\text{m}=4.01325\\,\\text{bar}',
    );
  });

  it('prints as it is told, for other units and other roundings', () => {
    const feet = texOf(step('ambient'), {
      withNumbers: true,
      print: ({ value, unit }) =>
        unit === 'm' ? { number: (value / 0.3048).toFixed(0), unit: 'ft' } : { number: value.toFixed(2), unit },
    });
    expect(feet).toContain('98\\,\\text{ft}');
  });

  it('sets cases under one brace', () => {
    const tex = texOf(step('no-stop'), { withNumbers: false });
    expect(tex.match(/begin\{dcases\}/g)).toHaveLength(1);
    expect(tex.match(/\\text\{if \}/g)).toHaveLength(2);
    expect(tex).toContain('\\infty & \\text{if }');
    expect(tex).toContain('\\text{otherwise}');
  });

  it('is written with numbers for the case that holds, with what decides it', () => {
    const told = (held: number) => {
      const { values } = step('no-stop');
      const so = { ...step('no-stop'), values: { ...values, P_N2: { ...values['P_N2']!, value: held } } };
      return texOf(so, { withNumbers: true }).replaceAll(' ', '');
    };
    expect(told(3)).toMatch(
      /^t_\{\\text\{no-stop\}\}=[\d.]+\\,\\text\{min\}\\text\{as\}3\\,\\text\{bar\}\\geq[\d.]+\\,\\text\{bar\}$/,
    );
    expect(told(1)).toMatch(/^t_\{\\text\{no-stop\}\}=\\ln.*\\text\{min\}$/);
    expect(told(1)).not.toContain('as}');
  });

  it('cuts a fraction longer than a line at its signs, and keeps what it means', () => {
    const long: WorkingStep = { ...step('ambient'), expression: 'd * (p_surface - w) / (w - d - p_surface + w) / 2' };
    expect(texOf(long, { withNumbers: true }).replaceAll(' ', '')).toContain(
      '=30\\,\\text{m}\\cdot(1.01325\\,\\text{bar}-0.1\\,\\text{bar/m})/(0.1\\,\\text{bar/m}-30\\,\\text{m}-1.01325\\,\\text{bar}+0.1\\,\\text{bar/m})/2=',
    );
  });

  it('has no letter that the face it is set in was not left', () => {
    const kept = new Set(MATH_LETTERS);
    for (const one of [...all, ...noStop])
      for (const withNumbers of [false, true]) {
        const letters = typesetter
          .step(one, { withNumbers })
          .join('')
          .replace(/<annotation.*?<\/annotation>|<[^>]*>/g, '');
        const plain = letters.replace(/&[a-z]+;/g, '');
        expect(
          [...plain].filter((letter) => !kept.has(letter)),
          one.id,
        ).toEqual([]);
      }
  });

  it('puts a negative number in brackets', () => {
    const negative: WorkingStep = {
      ...step('ambient'),
      values: { ...step('ambient').values, d: { ...step('ambient').values['d']!, value: -2 } },
    };
    expect(texOf(negative, { withNumbers: true })).toContain('\\left(-2\\,\\text{m}\\right)');
  });

  it('keeps the brackets of a sum within a product and after a minus sign, however it is cut to break', () => {
    const nested: WorkingStep = { ...step('ambient'), expression: '(d - w) * d - (w - d) + (d + w) / w' };
    expect(texOf(nested, { withNumbers: false }).replaceAll(' ', '')).toBe(
      'p_{\\text{amb}}=(d-w)\\cdotd-(w-d)+\\frac{d+w}{w}',
    );
    // The symbol, and three terms: a product of a sum and another, a sum, a fraction.
    expect(typesetter.step(nested, { withNumbers: false })).toHaveLength(7);
  });

  it('puts a power of a quantity in brackets', () => {
    const squared: WorkingStep = { ...step('ambient'), expression: 'd ^ 2' };
    expect(texOf(squared, { withNumbers: false })).toContain('{ d}^{2}');
    expect(texOf(squared, { withNumbers: true })).toContain('\\left( 30\\,\\text{m}\\right)^{2}');
  });

  it.each([
    ['p_amb', 'p_{\\text{amb}}'],
    ['t_half_N2', 't_{\\text{1/2, N₂}}'],
    ['P_alv_He_3', 'P_{\\text{alv, He, 3}}'],
    ['t_nostop', 't_{\\text{no-stop}}'],
    ['gf', '\\text{gf}'],
    ['w', 'w'],
  ])('sets %s with its subscripts', (symbol, tex) => {
    expect(symbolTex(symbol)).toBe(tex);
  });

  it('is well-formed MathML without inline styles, for every step of every reading', () => {
    for (const one of [...all, ...noStop]) {
      for (const withNumbers of [false, true]) {
        for (const mathml of typesetter.step(one, { withNumbers })) {
          expect(mathml).toMatch(/^<math/);
          expect(mathml).not.toMatch(/ style=|merror|NaN|undefined/);
          const errors: Error[] = [];
          const parser = new SaxesParser();
          parser.on('error', (error) => errors.push(error));
          parser.write(mathml.replaceAll('&nbsp;', ' ')).close();
          expect(errors).toEqual([]);
        }
      }
    }
  });

  it('keeps its subscripts and numbers readable in MathML', () => {
    const mathml = typesetter.step(step('ambient'), { withNumbers: true }).join('');
    expect(mathml).toContain('<mn>4.01325</mn>');
    expect(mathml).toContain('bar/m');
    expect(mathml).toMatch(/<msub><mi>p<\/mi>.*?amb/);
  });
});
