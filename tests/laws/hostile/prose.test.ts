// @module-tag in-turn
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderLine, renderProse } from '@/app/lessons/prose';
import { withValue } from '@/lib/lesson/edit-lesson';
import { prose } from '@/lib/lesson/questions/answer';
import { SOUND } from '../../unit/lesson/made-lessons';
import { promptly } from './hostile';
import { law } from '../law';
import { expectRead } from './lesson-read';

describe('a lesson text with marks within marks', () => {
  const PIECES = [
    '>',
    '> ',
    '- ',
    '* ',
    '+ ',
    '1. ',
    '12) ',
    '[',
    '](',
    '![',
    '*',
    '**_',
    '~~',
    '`',
    '```\n',
    '$',
    '{',
    '|',
    '\n',
    '  ',
    'a',
  ];
  const text = fc
    .array(fc.tuple(fc.array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 3 }), fc.nat(3000)), {
      maxLength: 4,
    })
    .map((runs) =>
      runs
        .map(([pieces, count]) => pieces.join('').repeat(count + 1))
        .join('')
        .slice(0, 8000),
    );
  const lessonWith = (words: string) => withValue(SOUND, ['steps', 0, 'text'], words);

  it.each([
    ['quotes', '>'.repeat(1900)],
    ['quotes, spaced', '> '.repeat(1900)],
    ['lists', '- '.repeat(1900)],
    ['numbered lists', '1. '.repeat(1900)],
    ['quotes in lists', '> - '.repeat(950)],
    ['emphasis', '**_a '.repeat(800) + 'b_**'.repeat(800)],
  ])('is refused by the checker where %s go too deep, on its own line', (_, marks) => {
    const read = expectRead(lessonWith(`${marks} a`));
    expect(read.ok ? [] : read.faults.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^(Quotes and lists go more than 8 levels deep|This text has more than 200 marks)/),
    ]);
    expect(read.ok ? 0 : read.faults[0]!.line).toBeGreaterThan(SOUND.split('\n').indexOf('steps:'));
  });

  it('can be drawn, whatever it is, once its shape has passed', () => {
    law(
      fc.property(text, (words) => {
        if (!prose.safeParse(words).success) return;
        promptly(() => renderProse(words, () => undefined));
        promptly(() => renderLine(words, () => undefined));
      }),
      300,
    );
  });
});
