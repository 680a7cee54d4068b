import { describe, expect, it } from 'vitest';
import { decodeAnswers, encodeAnswers } from '@/lib/files/links/answers-link';
import { classResults } from '@/lib/lesson/class-results';
import { handedInOf, readHandedIn, writeHandedIn } from '@/lib/files/handed-in';
import {
  NO_PROGRESS,
  withCheck,
  withDraft,
  withLooked,
  withMet,
  withPrediction,
  withWayLooked,
  type Answer,
  type Confidence,
  type Progress,
} from '@/lib/lesson/progress';
import { valueOf } from '../read';

const STEPS = [
  { id: 'how-many', kind: 'predict' },
  { id: 'the-curve', kind: 'predict' },
  { id: 'own', kind: 'try' },
  { id: 'check', kind: 'check', questions: [{ id: 'one' }, { id: 'two' }] },
];

const number = (value: number): Answer => ({ by: 'number', value });

/** Who answers one number, surely or not, and is right where it is 11. */
function says(
  value: number,
  reason: string,
  confidence: Confidence = 'sure',
  before: Progress = NO_PROGRESS,
): Progress {
  return withPrediction(before, 'four', 'how-many', {
    answer: number(value),
    reason,
    confidence,
    right: value === 11,
  });
}

/** Twelve people, invented. */
const twelve: readonly Progress[] = [
  says(20, 'the table says so'),
  says(20, 'taught so'),
  says(20, 'the table says so', 'a guess'),
  says(15, ''),
  says(11, 'felt like it', 'a guess'),
  says(11, 'worked it out', 'sure', says(20, 'the table says so')),
  says(11, 'saw it', 'sure', withLooked(NO_PROGRESS, 'four', 'how-many')),
  withLooked(NO_PROGRESS, 'four', 'how-many'),
  withCheck(withCheck(NO_PROGRESS, 'four', 'check', 'one', 7, false), 'four', 'check', 'one', 8, true),
  withMet(NO_PROGRESS, 'four', 'own', 'stay'),
  withMet(withWayLooked(NO_PROGRESS, 'four', 'own'), 'four', 'own', 'stay'),
  NO_PROGRESS,
];

/** Through text and back, as a file or a link takes them. */
const papers = twelve
  .map((progress) => readHandedIn(writeHandedIn(progress, '')))
  .flatMap((read) => (read.ok ? [handedInOf(read.value, 'four')] : []));

describe('the results of twelve', () => {
  const [howMany, curve, own, one] = classResults(STEPS, papers);

  it('count first answers, apart from those given after looking and those given later', () => {
    expect(howMany).toMatchObject({ people: 11, answered: 6, right: 1, looked: 2, rightAtLast: 3 });
    expect(howMany!.answers.map(({ answer, count }) => [answer, count])).toEqual([
      [number(20), 4],
      [number(11), 1],
      [number(15), 1],
    ]);
  });

  it('name the commonest wrong answer with the reasons given for it', () => {
    expect(howMany!.commonestWrong).toMatchObject({ answer: number(20), count: 4 });
    expect(howMany!.commonestWrong!.reasons).toEqual([
      'taught so',
      'the table says so',
      'the table says so',
      'the table says so',
    ]);
  });

  it('name the reason given most often for an answer that is not right', () => {
    expect(howMany!.wrongReason).toEqual({ reason: 'the table says so', count: 3 });
  });

  it('say how numbers spread, and how sure those were who were right', () => {
    expect(howMany!.numbers).toEqual([11, 15, 20, 20, 20, 20]);
    expect(howMany!.sureness).toEqual([
      { confidence: 'a guess', count: 2, right: 1 },
      { confidence: 'fairly sure', count: 0, right: 0 },
      { confidence: 'sure', count: 4, right: 0 },
    ]);
  });

  it('hold a goal met by one’s own way apart from one met after looking, and a first answer from the last', () => {
    expect(own).toMatchObject({ answered: 2, right: 1, looked: 1, rightAtLast: 2 });
    expect(one).toMatchObject({ question: 1, answered: 1, right: 0, rightAtLast: 1 });
    expect(curve).toMatchObject({ answered: 0, curves: [] });
  });

  it('are the same in whatever order the papers come', () => {
    expect(classResults(STEPS, [...papers].reverse())).toEqual(classResults(STEPS, papers));
  });
});

describe('what is handed in', () => {
  const drawn = withPrediction(NO_PROGRESS, 'four', 'the-curve', {
    answer: { by: 'draw', sketch: [{ timeS: 0, value: 1 / 3 }] },
    reason: 'because',
    confidence: 'sure',
    right: false,
  });

  it('holds the curve, the reason and the name that was typed, and nothing half given', () => {
    const text = writeHandedIn(withDraft(drawn, 'four', 'how-many', { reason: 'half a tho' }), ' Kim ');
    expect(text).not.toContain('half a tho');
    const read = valueOf(readHandedIn(text));
    expect(read.name).toBe('Kim');
    expect(handedInOf(read, 'four').predictions['the-curve']!.given[0]).toMatchObject({
      answer: { by: 'draw', sketch: [{ timeS: 0, value: 0.333 }] },
      reason: 'because',
    });
  });

  it('is one lesson where one was meant', () => {
    const two = withLooked(drawn, 'five', 'x');
    const read = readHandedIn(writeHandedIn(two, '', 'five'));
    expect(read.ok && Object.keys(read.value.lessons)).toEqual(['five']);
  });

  it('goes through a link, and a link that was cut says so', () => {
    const text = writeHandedIn(drawn, '');
    const packed = valueOf(encodeAnswers(text));
    expect(decodeAnswers(`https://example.test/lessons/results/#${packed}`)).toEqual({ ok: true, value: text });
    const cut = decodeAnswers(packed.slice(0, -3));
    expect(cut.ok).toBe(false);
  });

  it('is refused where two answers changed places, and read without its name, or as a paper from before had it', () => {
    const two = withPrediction(drawn, 'four', 'how-many', {
      answer: number(11),
      reason: '',
      confidence: 'sure',
      right: true,
    });
    const paper = JSON.parse(writeHandedIn(two, 'Kim')) as {
      lessons: Record<string, { predictions: Record<string, unknown> }>;
    };
    const moved = structuredClone(paper);
    const { 'how-many': first, 'the-curve': second } = paper.lessons['four']!.predictions;
    moved.lessons['four']!.predictions = { 'how-many': second, 'the-curve': first };
    const read = readHandedIn(JSON.stringify(moved));
    expect(read.ok || `${read.what} ${read.mend}`).toMatch(/were changed after they were handed in.*Ask for/);
    expect(readHandedIn(JSON.stringify({ ...paper, name: '' }, undefined, 2)).ok).toBe(true);
    expect(readHandedIn(JSON.stringify({ ...moved, checksum: undefined })).ok).toBe(true);
  });

  it.each(['', '{', 'null', '[]', '{"format":"halftime-answers","version":2}', '{"format":"other"}'])(
    'refuses %j in words that say how to mend it',
    (text) => {
      const read = readHandedIn(text);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(`${read.what} ${read.mend}`).toMatch(/\. .+\.$/);
    },
  );
});
