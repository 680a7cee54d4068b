import { describe, expect, it } from 'vitest';
import { FORMATS, printValue } from '@/lib/lesson/expression/print-value';
import { fillText, parseTemplate } from '@/lib/lesson/expression/template';
import { THIRTY, worldFor } from '../made-lessons';

const world = worldFor(THIRTY);

function filled(text: string, system: 'metric' | 'imperial' = 'metric'): string {
  const made = fillText(text, world, system);
  return made.ok ? made.value : `${made.what} ${made.mend}`;
}

describe('values in a text', () => {
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
