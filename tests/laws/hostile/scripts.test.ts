// @module-tag in-turn
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { scenarios } from '@/content/scenarios/scenarios';
import { readyRuns } from '@/content/bench/runs';
import { scriptReference } from '@/lib/dive/script-reference';
import { UNEXPECTED, damagedLines } from './hostile';
import { law } from '../law';
import { expectRead } from './expect-script';

const SPOILT = [
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
  ';',
  ',',
  ':',
  '=',
  '\r',
  '\u00a0',
  'İ',
  'ﬁ',
  '½',
  '٣ m',
  '１２ m',
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
  ...UNEXPECTED,
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
