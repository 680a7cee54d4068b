import { describe, expect, it } from 'vitest';
import {
  NO_PROGRESS,
  progressIn,
  readProgress,
  standingAt,
  withCheck,
  withDone,
  withMet,
  withoutLesson,
  withoutPrediction,
  withPrediction,
  type Prediction,
} from '@/lib/lesson/progress';

const guess: Prediction = { answer: { by: 'number', value: 12 }, reason: 'a table', confidence: 'sure', right: false };

describe('what a learner has done', () => {
  const some = withCheck(
    withMet(
      withPrediction(withDone(standingAt(NO_PROGRESS, 'one', 'begin'), 'one', 'begin'), 'one', 'foretell', guess),
      'one',
      'own',
      'gas: air',
    ),
    'one',
    'check',
    'left',
    5,
    true,
  );

  it('is kept by lesson and step', () => {
    expect(progressIn(some, 'one')).toEqual({
      at: 'begin',
      done: ['begin'],
      predictions: { foretell: guess },
      met: { own: 'gas: air' },
      checks: { 'check/left': { seed: 5, right: true, tries: 1, rights: 1 } },
    });
    expect(progressIn(some, 'two').done).toEqual([]);
    expect(progressIn(some, 'constructor').done).toEqual([]);
  });

  it('counts each question every time it is answered', () => {
    const twice = withCheck(some, 'one', 'check', 'left', 6, false);
    expect(progressIn(twice, 'one').checks['check/left']).toEqual({ seed: 6, right: false, tries: 2, rights: 1 });
  });

  it('can be taken back', () => {
    expect(progressIn(withoutPrediction(some, 'one', 'foretell'), 'one').predictions).toEqual({});
    expect(withoutLesson(some, 'one')).toEqual(NO_PROGRESS);
  });

  it('reads back from its record as it was', () => {
    expect(readProgress(JSON.parse(JSON.stringify(some)))).toEqual(some);
  });

  it('takes what is sound of a spoilt record and leaves the rest', () => {
    expect(
      readProgress({
        lessons: {
          one: {
            at: 3,
            done: ['a', 4],
            predictions: { foretell: guess, bad: { answer: { by: 'number', value: 'x' } } },
            met: { own: 5 },
            checks: { q: { seed: 1 } },
          },
          'No Such': {},
        },
      }),
    ).toEqual({
      lessons: { one: { at: undefined, done: ['a'], predictions: { foretell: guess }, met: {}, checks: {} } },
    });
    for (const record of [null, undefined, 3, 'x', [], { lessons: 4 }, { lessons: [] }, { lessons: { one: null } }])
      expect(() => readProgress(record)).not.toThrow();
  });
});
