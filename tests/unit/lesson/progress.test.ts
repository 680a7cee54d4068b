import { describe, expect, it } from 'vitest';
import {
  askedAgain,
  NO_PROGRESS,
  NOTHING_YET,
  progressIn,
  standingAt,
  withCheck,
  withDraft,
  withLooked,
  withMet,
  withoutLesson,
  withPrediction,
  withSeen,
  withWayLooked,
  type Prediction,
  type Progress,
} from '@/lib/lesson/progress';
import { readProgress } from '@/lib/lesson/read-progress';
import { standingIn, stepAsks } from '@/lib/lesson/standing';

const wrong = { answer: { by: 'number', value: 12 }, reason: 'a table', confidence: 'sure', right: false } as const;
const right = { answer: { by: 'number', value: 11 }, reason: '', confidence: 'a guess', right: true } as const;
const kept = (prediction: Omit<Prediction, 'knowing'>, knowing = false): Prediction => ({ ...prediction, knowing });
const one = (progress: Progress) => progressIn(progress, 'one');

const some = withCheck(
  withMet(
    withPrediction(withSeen(standingAt(NO_PROGRESS, 'one', 'begin'), 'one', 'begin'), 'one', 'foretell', wrong),
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

describe('what a learner has done', () => {
  it('is kept by lesson and step', () => {
    expect(one(some)).toEqual({
      at: 'begin',
      seen: ['begin'],
      predictions: { foretell: { given: [kept(wrong)], looked: false, again: false } },
      tries: { own: { met: 'gas: air', looked: false } },
      checks: { 'check/left': { seed: 5, right: true, firstRight: true, tries: 1, rights: 1 } },
      drafts: {},
    });
    expect(progressIn(some, 'two')).toEqual(NOTHING_YET);
    expect(progressIn(some, 'constructor').seen).toEqual([]);
  });

  it('keeps the first answer when the question is answered again, and says that the later one knew', () => {
    const again = withPrediction(askedAgain(some, 'one', 'foretell'), 'one', 'foretell', right);
    expect(one(askedAgain(some, 'one', 'foretell')).predictions['foretell']!.again).toBe(true);
    expect(one(again).predictions['foretell']).toEqual({
      given: [kept(wrong), kept(right, true)],
      looked: false,
      again: false,
    });
  });

  it('keeps looking apart from answering, and an answer after a look knows', () => {
    const looked = withLooked(NO_PROGRESS, 'one', 'foretell');
    expect(one(looked).predictions['foretell']).toEqual({ given: [], looked: true, again: false });
    expect(one(withPrediction(looked, 'one', 'foretell', right)).predictions['foretell']!.given).toEqual([
      kept(right, true),
    ]);
    // Looking once one has answered is no looking.
    expect(one(withLooked(some, 'one', 'foretell')).predictions['foretell']!.looked).toBe(false);
  });

  it('knows a goal met by oneself from one met after looking at the way', () => {
    expect(one(withMet(withWayLooked(NO_PROGRESS, 'one', 'own'), 'one', 'own', 'x')).tries['own']).toEqual({
      met: 'x',
      looked: true,
    });
    expect(one(withWayLooked(some, 'one', 'own')).tries['own']!.looked).toBe(false);
  });

  it('counts each question every time it is answered, and keeps how the first went', () => {
    const twice = withCheck(some, 'one', 'check', 'left', 6, false);
    expect(one(twice).checks['check/left']).toEqual({ seed: 6, right: false, firstRight: true, tries: 2, rights: 1 });
    const wrongFirst = withCheck(withCheck(NO_PROGRESS, 'one', 'c', 'q', 1, false), 'one', 'c', 'q', 2, true);
    expect(one(wrongFirst).checks['c/q']).toMatchObject({ firstRight: false, right: true });
  });

  it('keeps what is half given until it is given', () => {
    const half = withDraft(withDraft(NO_PROGRESS, 'one', 'foretell', { reason: 'because' }), 'one', 'foretell', {
      text: '1',
    });
    expect(one(half).drafts['foretell']).toEqual({ reason: 'because', text: '1' });
    expect(one(withPrediction(half, 'one', 'foretell', right)).drafts).toEqual({});
  });

  it('can be started over', () => {
    expect(withoutLesson(some, 'one')).toEqual(NO_PROGRESS);
  });

  it('reads back from its record as it was, drafts and all', () => {
    const all = withDraft(withLooked(some, 'one', 'other'), 'one', 'curve', {
      answer: { by: 'draw', sketch: [{ timeS: 1, value: 2 }] },
      confidence: 'sure',
      seed: 4,
      script: 'gas: air',
    });
    expect(readProgress(JSON.parse(JSON.stringify(all)))).toEqual(all);
  });
});

describe('how far a learner has come', () => {
  const steps = stepAsks([
    { id: 'begin', kind: 'read' },
    { id: 'foretell', kind: 'predict' },
    { id: 'own', kind: 'try' },
    { id: 'check', kind: 'check', questions: [{ id: 'left' }, { id: 'right' }] },
  ]);
  const allSeen = steps.reduce((progress, { id }) => withSeen(progress, 'one', id), NO_PROGRESS);

  it('is not done by going on alone', () => {
    expect(standingIn(steps, one(allSeen))).toEqual({ seen: 4, steps: 4, answered: 0, questions: 4, done: false });
  });

  it('is not answered by looking', () => {
    expect(standingIn(steps, one(withLooked(allSeen, 'one', 'foretell'))).answered).toBe(0);
  });

  it('is done when all is seen and answered', () => {
    const most = withMet(withPrediction(allSeen, 'one', 'foretell', wrong), 'one', 'own', 'x');
    const all = withCheck(withCheck(most, 'one', 'check', 'left', 1, false), 'one', 'check', 'right', 1, true);
    expect(standingIn(steps, one(most)).done).toBe(false);
    expect(standingIn(steps, one(all))).toMatchObject({ answered: 4, done: true });
  });
});

describe('a record of what was done', () => {
  it('from before first and later answers were kept apart is taken over', () => {
    const before = {
      lessons: {
        one: {
          at: 'begin',
          done: ['begin'],
          predictions: { foretell: wrong },
          met: { own: 'gas: air' },
          checks: { 'check/left': { seed: 5, right: true, tries: 3, rights: 1 } },
        },
      },
    };
    expect(one(readProgress(before))).toEqual({
      at: 'begin',
      seen: ['begin'],
      predictions: { foretell: { given: [kept(wrong)], looked: false, again: false } },
      tries: { own: { met: 'gas: air', looked: false } },
      checks: { 'check/left': { seed: 5, right: true, firstRight: undefined, tries: 3, rights: 1 } },
      drafts: {},
    });
  });

  it('follows a lesson to its new place on the shelf', () => {
    const moved = readProgress({ lessons: { '14-enriched-air': { seen: ['a'] } } });
    expect(progressIn(moved, '12-enriched-air').seen).toEqual(['a']);
  });

  it('that is spoilt gives what is sound of it and leaves the rest', () => {
    expect(
      readProgress({
        lessons: {
          one: {
            at: 3,
            seen: ['a', 4],
            predictions: {
              foretell: wrong,
              bad: { answer: { by: 'number', value: 'x' } },
              empty: { given: [{ answer: 5 }], looked: false },
            },
            tries: { own: 5 },
            met: { other: 4 },
            checks: { q: { seed: 1 } },
            drafts: { a: 5, b: { text: 'so', seed: 'x' } },
          },
          'No Such': {},
        },
      }),
    ).toEqual({
      lessons: {
        one: {
          at: undefined,
          seen: ['a'],
          predictions: { foretell: { given: [kept(wrong)], looked: false, again: false } },
          tries: {},
          checks: {},
          drafts: { b: { text: 'so' } },
        },
      },
    });
    for (const record of [null, undefined, 3, 'x', [], { lessons: 4 }, { lessons: [] }, { lessons: { one: null } }])
      expect(() => readProgress(record)).not.toThrow();
  });
});
