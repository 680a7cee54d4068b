import { expect, it } from 'vitest';
import { resultsText } from '@/app/lessons/player/results';
import type { PreparedLesson } from '@/app/lessons/prepared';

it('the results to keep say “as you said” of a right answer, “other than you said” of a wrong one, and neither of one that is not judged', () => {
  const row = (step: string, right: boolean | undefined) => ({
    step,
    answer: '12 min',
    outcome: '14 min',
    right,
    later: '',
    reason: '',
    confidence: 'sure',
  });
  const text = resultsText(
    { title: 'No-stop time' } as PreparedLesson,
    [row('One', true), row('Two', false), row('Three', undefined), { ...row('Four', undefined), answer: '' }],
    'Kim',
    '2026-01-02',
    'Never to dive on.',
  );
  expect(text.split('\n')).toEqual([
    'Halftime: No-stop time',
    'Name: Kim',
    'Date: 2026-01-02',
    '',
    'One',
    '  you, first: 12 min (sure)',
    '  so: 14 min — as you said',
    '',
    'Two',
    '  you, first: 12 min (sure)',
    '  so: 14 min — other than you said',
    '',
    'Three',
    '  you, first: 12 min (sure)',
    '  so: 14 min',
    '',
    'Four',
    '  14 min',
    '',
    'Never to dive on.',
    '',
  ]);
});
