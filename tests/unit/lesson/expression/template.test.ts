import { describe, expect, it } from 'vitest';
import { evaluateAmount } from '@/lib/lesson/expression/evaluate';
import type { Expression } from '@/lib/lesson/expression/expression';
import { parseExpression } from '@/lib/lesson/expression/parse-expression';
import { FORMATS, formatsFor, printValue } from '@/lib/lesson/expression/print-value';
import { fillText, formOf, parseTemplate } from '@/lib/lesson/expression/template';
import type { Amount } from '@/lib/lesson/expression/world';
import { FACT_GROUPS } from '@/lib/lesson/facts/facts';
import { MEASURES, printAs } from '@/lib/sayings/measures';
import { THIRTY, worldFor } from '../made-lessons';
import { valueOf } from '../../read';

const world = worldFor(THIRTY);

function filled(text: string, system: 'metric' | 'imperial' = 'metric'): string {
  const made = fillText(text, world, system);
  return made.ok ? made.value : `${made.what} ${made.mend}`;
}

/** The figure in `3.1 m`, `12 min`, `12:30`, `1 h 05 min` or `1 min 20 s`, in metres or minutes. */
function readBack(said: string): number {
  const [, clockMin, clockS] = /^(\d+):(\d\d)$/.exec(said) ?? [];
  if (clockMin !== undefined) return Number(clockMin) + Number(clockS) / 60;
  const sizes = { m: 1, h: 60, min: 1, s: 1 / 60 };
  return [...said.matchAll(/([\d.]+) (min|m|h|s)/g)].reduce(
    (sum, [, figure, unit]) => sum + Number(figure) * sizes[unit as keyof typeof sizes],
    0,
  );
}

function parsed(source: string): Expression {
  return valueOf(parseExpression(source));
}

describe('values in a text', () => {
  it('stand among words that spell per cent as every reading does', () => {
    expect(filled('Of 42 % and {{50 % | %}}, 100 % is the limit.')).toBe('Of 42% and 50%, 100% is the limit.');
  });

  it('stand in the reader’s units', () => {
    expect(filled('At {{30 m}} the pressure is {{pressureAtBar(30 m)}}.')).toBe('At 30 m the pressure is 4.01 bar.');
    expect(filled('At {{30 m}} the pressure is {{pressureAtBar(30 m)}}.', 'imperial')).toBe(
      'At 98 ft the pressure is 58.2 psi.',
    );
    expect(filled('A stop at {{6 m | stop}}.', 'imperial')).toBe('A stop at 20 ft.');
  });

  it('are printed as their fact usually is, or as asked', () => {
    // A no-stop time is rounded down: the minute that is not full may not be used.
    expect(filled('{{noStopMin at arrival}}')).toBe('11 min');
    expect(filled('{{noStopMin at arrival | clock}}')).toMatch(/^11:\d\d$/);
    expect(filled('{{runMin | min up}}')).toBe('28 min');
    expect(filled('{{90 min | hours}}')).toBe('1 h 30 min');
  });

  it('of a reading are rounded the way it is on every screen, whatever form an author asks for', () => {
    const readings = FACT_GROUPS.flatMap(({ facts }) => facts).filter(({ measure }) => measure !== undefined);
    const others = FACT_GROUPS.flatMap(({ facts }) => facts)
      .filter(({ name, dimension, measure }) => {
        const needed = /ceiling|stop|fly|desat|lock|wait|ToSurface/i.test(name);
        return needed && (dimension === 'time' || dimension === 'depth') && measure === undefined;
      })
      .map(({ name }) => name);
    // How far above a ceiling, and how long one was in a band, are measured, not asked for.
    expect(others).toEqual(['aboveCeilingMin', 'mostAboveCeilingM', 'safetyStopMin']);
    for (const { name, dimension, measure } of readings) {
      const lone = parsed(name);
      // No reading is an altitude.
      for (const asked of [undefined, ...formatsFor(dimension).filter((form) => form !== 'altitude')]) {
        for (const value of [0.046, 3.94, 12.04, 59.99, 61.004]) {
          const said = printValue({ value, dimension }, 'metric', formOf(lone, asked));
          const off = readBack(said) - value;
          const where = `${name} | ${asked} of ${value}: ${said}`;
          if (MEASURES[measure!].rounds === 'down') expect(off, where).toBeLessThanOrEqual(0);
          else expect(off, where).toBeGreaterThanOrEqual(0);
          expect(Math.abs(off), where).toBeLessThan(1);
        }
      }
    }
  });

  it('of a ceiling and of a stop are told as the screens tell them', () => {
    for (const system of ['metric', 'imperial'] as const) {
      const print = (text: string) => filled(`{{${text}}}`, system);
      const at = (name: string) => (evaluateAmount(parsed(name), world) as { value: Amount }).value.value;
      expect(print('ceilingM at leaving | m 1')).toBe(printAs('ceilingM', at('ceilingM at leaving'), system));
      expect(print('stopM at leaving')).toBe(printAs('stopM', at('stopM at leaving'), system));
      expect(print('stopMin at leaving')).toBe(printAs('stopMin', at('stopMin at leaving'), system));
      expect(print('timeToSurfaceMin at leaving')).toBe(
        printAs('timeToSurfaceMin', at('timeToSurfaceMin at leaving'), system),
      );
      expect(print('noStopMin at arrival | min up')).toBe(printAs('noStopMin', at('noStopMin at arrival'), system));
    }
  });

  it('say so when there is no end to them', () => {
    expect(filled('{{freshNoStopMin(3 m)}}')).toBe('more than 99 min');
    expect(printValue({ value: Infinity, dimension: 'time' }, 'metric')).toBe('no end');
  });

  it.each([
    [
      '{{noStopMin}}',
      'In “{{noStopMin}}”: noStopMin changes over the dive, and no moment is given. Write when, such as noStopMin at leaving.',
    ],
    [
      '{{30 m | min}}',
      'In “{{30 m | min}}”: the format “min” does not fit this value. Write one of m, m 1, ceiling, stop, altitude.',
    ],
    [
      '{{30 m | furlongs}}',
      `“furlongs” is not a format that is known here. Write one of ${Object.keys(FORMATS).join(', ')}.`,
    ],
    ['{{}}', '“{{}}” is empty. Write an expression between the braces.'],
    [
      '{{30 m',
      'Double braces are opened and not closed. Write {{ and }} around the expression, and nothing but it between.',
    ],
    ['{{1|min|min}}', '“{{1|min|min}}” has more than one |. Write the expression, one | and the format.'],
  ])('refuse %s', (text, expected) => {
    expect(filled(text)).toBe(expected);
  });

  it('leave the braces of a formula alone', () => {
    expect(filled('$\\frac{a_{\\text{b}}}{c}$')).toBe('$\\frac{a_{\\text{b}}}{c}$');
  });

  it('are at most sixty in one text', () => {
    expect(parseTemplate('{{1}}'.repeat(61))).toMatchObject({ ok: false });
  });
});
