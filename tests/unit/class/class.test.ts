import { describe, expect, it } from 'vitest';
import { answerSchema, nameSchema } from '@/lib/class/answer';
import { after, currentOf, EMPTY_CLASS, type ClassEvent, type ClassState } from '@/lib/class/class-state';
import { readCode, spacedCode } from '@/lib/class/code';
import { commonestWrong } from '@/lib/class/reasons';
import { resultRows } from '@/lib/class/results';
import { giveAway, spreadOf } from '@/lib/class/spread';
import { quantile } from '@/lib/quantity/quantile';
import { notTaken, viewOf, viewSchema } from '@/lib/class/view';
import { choiceAsk, choiceTruth, drawAsk, numberAsk, numberTruth } from './asks';

const through = (...events: ClassEvent[]): ClassState => events.reduce<ClassState>(after, EMPTY_CLASS);
const says = (phone: string, option: number, nth = 1, round = 0): ClassEvent => ({
  kind: 'answered',
  phone,
  ask: 'a1',
  round,
  nth,
  answer: { by: 'choice', option },
});
const asked: ClassEvent = { kind: 'asked', ask: choiceAsk, truth: choiceTruth };

describe('what phones see of a class', () => {
  it('holds neither spread nor truth before the teacher shows them', () => {
    const closed = through(asked, says('phone-001', 1), says('phone-002', 0), { kind: 'closed' });
    expect(viewOf(closed, 1).question).toMatchObject({ phase: 'closed', spreads: [], truth: undefined });
    expect(JSON.stringify(viewOf(closed, 1))).not.toContain('"right"');
    const shown = after(closed, { kind: 'spread shown' });
    expect(viewOf(shown, 2).question).toMatchObject({
      spreads: [{ by: 'choice', counts: [1, 1, 0] }],
      truth: undefined,
    });
    expect(viewOf(after(shown, { kind: 'truth shown' }), 3).question?.truth).toEqual(choiceTruth);
  });

  it('names no phone, whatever is shown', () => {
    const state = through({ kind: 'joined', phone: 'phone-001', name: 'Ada' }, asked, says('phone-001', 1), {
      kind: 'truth shown',
    });
    const sent = JSON.stringify(viewOf(state, 1));
    expect(sent).not.toContain('phone-001');
    expect(sent).not.toContain('Ada');
    expect(viewSchema.safeParse(JSON.parse(sent)).success).toBe(true);
  });

  it('keeps both rounds side by side once a question was asked again', () => {
    const state = through(
      asked,
      says('phone-001', 0),
      { kind: 'spread shown' },
      { kind: 'asked again' },
      says('phone-001', 1, 2, 1),
      { kind: 'spread shown' },
    );
    expect(viewOf(state, 1).question?.spreads).toEqual([
      { by: 'choice', counts: [1, 0, 0] },
      { by: 'choice', counts: [0, 1, 0] },
    ]);
  });

  it('goes from following to free and back, and ends with nothing', () => {
    const follow = { title: 'A dive', script: 'stay 1 min', covered: [] };
    const free = through({ kind: 'following', follow }, { kind: 'let free' });
    expect(viewOf(free, 1).follow?.mode).toBe('free');
    expect(viewOf(after(free, { kind: 'called back' }), 1).follow?.mode).toBe('follow');
    expect(viewOf(after(free, { kind: 'ended' }), 1)).toEqual({ version: 1, follow: undefined });
  });
});

describe('an answer', () => {
  const view = viewOf(through(asked), 1);
  const sent = { ask: 'a1', round: 0, answer: { by: 'choice' as const, option: 2 } };

  it('is taken while its question is open, and refused in words after', () => {
    expect(notTaken(view, sent)).toBeUndefined();
    expect(notTaken(viewOf(through(asked, { kind: 'closed' }), 1), sent)).toMatch(/closed/);
    // Of a phone that was away while it could be sent, as long as nobody has seen the spread.
    expect(notTaken(viewOf(through(asked, { kind: 'closed' }), 1), sent, true)).toBeUndefined();
    expect(notTaken(viewOf(through(asked, { kind: 'closed' }, { kind: 'spread shown' }), 1), sent, true)).toMatch(
      /closed/,
    );
    expect(notTaken(view, { ...sent, round: 1 })).toMatch(/no longer before the class/);
    expect(notTaken(view, { ...sent, answer: { by: 'choice', option: 3 } })).toMatch(/no answer to this question/);
    expect(notTaken(view, { ...sent, answer: { by: 'number', value: 3 } })).toMatch(/no answer to this question/);
  });

  it.each([
    { by: 'choice', option: -1 },
    { by: 'choice', option: 1.5 },
    { by: 'number', value: Infinity },
    { by: 'number', value: 1e9 },
    { by: 'draw', sketch: [] },
    { by: 'draw', sketch: Array.from({ length: 61 }, (_, i) => ({ timeS: i, value: 1 })) },
    { by: 'leader', compartment: 17 },
    { by: 'choice', option: 1, extra: true },
    { by: 'script', text: 'alert(1)' },
  ])('is refused at the border when it is $by and not as it has to be', (answer) => {
    expect(answerSchema.safeParse(answer).success).toBe(false);
  });

  it('of a phone that changed its mind counts once, and an older one that comes late counts nothing', () => {
    const state = through(asked, says('phone-001', 0, 1), says('phone-001', 2, 3), says('phone-001', 1, 2));
    expect(viewOf(after(state, { kind: 'spread shown' }), 1).question?.spreads).toEqual([
      { by: 'choice', counts: [0, 0, 1] },
    ]);
  });
});

describe('a nickname', () => {
  it('is letters and digits, and no markup', () => {
    expect(nameSchema.safeParse('Ada L.').success).toBe(true);
    expect(nameSchema.safeParse('<img src=x>').success).toBe(false);
    expect(nameSchema.safeParse('a'.repeat(25)).success).toBe(false);
  });
});

describe('the spread', () => {
  it('of numbers is in rising order, that of curves has its quartiles', () => {
    expect(
      spreadOf(
        numberAsk,
        [12, 3, 7].map((value) => ({ by: 'number', value })),
      ),
    ).toEqual({
      by: 'number',
      values: [3, 7, 12],
    });
    const levels = [10, 20, 30, 40, 50].map((value) => ({ by: 'draw' as const, sketch: [{ timeS: 0, value }] }));
    const spread = spreadOf(drawAsk, levels);
    expect(spread).toMatchObject({ by: 'draw', curves: 5 });
    expect(spread.by === 'draw' && spread.columns[0]).toEqual([0, 20, 30, 40]);
  });

  /* Hyndman and Fan, "Sample Quantiles in Statistical Packages" (1996), definition 7; figures worked by hand. */
  it('has quantiles straight between neighbours', () => {
    expect(quantile([1, 2, 3, 4], 0.25)).toBeCloseTo(1.75, 12);
    expect(quantile([1, 2, 3, 4], 0.5)).toBeCloseTo(2.5, 12);
    expect(quantile([5], 0.75)).toBe(5);
  });
});

describe('so few answers that showing them tells whose they are', () => {
  it('are one or two of any round, and none or three are not', () => {
    const given = (count: number) =>
      currentOf(through(asked, ...[1, 2, 3].slice(0, count).map((n) => says(`phone-00${n}`, 0))))!;
    expect([0, 1, 2, 3].map((count) => giveAway(given(count)))).toEqual([false, true, true, false]);
    const again = through(
      asked,
      ...[1, 2, 3].map((n) => says(`phone-00${n}`, 0)),
      { kind: 'closed' },
      { kind: 'asked again' },
      says('phone-001', 1, 2, 1),
    );
    expect(giveAway(currentOf(again)!)).toBe(true);
  });
});

describe('the commonest wrong answers', () => {
  it('come with the reason that fits each, most given first, and never the right one', () => {
    const answers = [0, 0, 2, 1, 1, 1].map((option) => ({ by: 'choice' as const, option }));
    const told = commonestWrong(choiceAsk, choiceTruth, answers, { choice: ['because of one', 'right', 'of three'] });
    expect(told).toMatchObject([
      { option: 0, count: 2, because: { html: 'because of one' } },
      { option: 2, count: 1, because: { html: 'of three' } },
    ]);
  });

  it('of numbers are grouped by what is said to them', () => {
    const answers = [11, 9, 13, 14, 20, 22, 5].map((value) => ({ by: 'number' as const, value }));
    const number = [
      { from: undefined, to: 11, html: 'too strict' },
      { from: 11, to: 18, html: 'longer' },
      { from: 18, to: undefined, html: 'an older table' },
    ];
    expect(commonestWrong(numberAsk, numberTruth, answers, { number })).toMatchObject([
      { count: 2, between: [20, 22], because: { html: 'an older table' } },
      { count: 1, between: [14, 14], because: { html: 'longer' } },
      { count: 1, between: [5, 5], because: { html: 'too strict' } },
    ]);
  });
});

describe('the results of a class', () => {
  it('go by question and round, and name nobody', () => {
    const state = through(
      { kind: 'joined', phone: 'phone-001', name: 'Ada' },
      asked,
      says('phone-001', 0),
      says('phone-002', 1),
      { kind: 'closed' },
      { kind: 'asked again' },
      says('phone-001', 1, 2, 1),
    );
    const rows = resultRows(state, String);
    expect(rows).toMatchObject([
      { question: 'Which is right?', round: 1, answered: 2, right: 1, answers: 'one: 1; two: 1; three: 0' },
      { round: 2, answered: 1, right: 1 },
    ]);
    expect(JSON.stringify(rows)).not.toMatch(/Ada|phone/);
  });

  it('are gone once the class is forgotten, and nobody’s name is left', () => {
    const state = through({ kind: 'joined', phone: 'phone-001', name: 'Ada' }, asked, says('phone-001', 0), {
      kind: 'forgotten',
    });
    expect(resultRows(state, String)).toEqual([]);
    expect(state.phones).toEqual({});
    expect(currentOf(state)).toBeUndefined();
  });
});

describe('a code', () => {
  it('is read as it may be typed, and has no letters that are taken for others', () => {
    expect(readCode('k7m 2qx')).toBe('K7M2QX');
    expect(readCode('K7M-2QX')).toBe('K7M2QX');
    expect(readCode('K7M2Q0')).toBeUndefined();
    expect(readCode('K7M2Q')).toBeUndefined();
    expect(spacedCode('K7M2QX')).toBe('K7M 2QX');
  });
});
