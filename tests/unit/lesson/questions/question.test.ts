import { describe, expect, it } from 'vitest';
import { drawQuestion, questionWith } from '@/lib/lesson/questions/drawn-question';
import { judgeNumber, numberAsked, numbersToPick, rightOption } from '@/lib/lesson/questions/judge';
import { questionSchema } from '@/lib/lesson/step';
import { THIRTY, worldFor, worldsFor } from '../made-lessons';
import { valueOf } from '../../read';

const worlds = worldsFor({ main: THIRTY });
const ARRIVAL = questionSchema.parse({
  id: 'left',
  draws: { depth: { from: '18 m', to: '39 m', step: '3 m' } },
  script: 'gas: air\ndescend to {depth} at 18 m/min\nstay 60 min\nascend to surface at 9 m/min\n',
  ask: 'What is left on arrival at {{depth}}?',
  number: { answer: 'noStopMin at arrival', within: '1 min', otherwise: 'Not so.' },
});

describe('a question whose numbers are drawn', () => {
  it('is the same for the same seed, and varies with it', () => {
    const depths = Array.from({ length: 30 }, (_, seed) => {
      return valueOf(drawQuestion(ARRIVAL, seed, worlds)).values['depth']!.value;
    });
    expect(new Set(depths).size).toBeGreaterThan(4);
    expect(depths.every((depth) => depth >= 18 && depth <= 39 && depth % 3 === 0)).toBe(true);
    expect(drawQuestion(ARRIVAL, 3, worlds)).toMatchObject({
      value: { script: expect.stringContaining(`descend to ${depths[3]} m`) },
    });
  });

  it('has its answer worked out by the engine for the very numbers drawn', () => {
    const answerAt = (depthM: number) => {
      const asked = numberAsked(
        ARRIVAL.number!,
        valueOf(questionWith(ARRIVAL, { depth: { value: depthM, dimension: 'depth' } }, worlds)).world,
      );
      return asked.ok ? asked.value.answer.value : NaN;
    };
    expect(answerAt(18)).toBeGreaterThan(answerAt(30));
    expect(answerAt(30)).toBeGreaterThan(answerAt(39));
  });

  it('says what its script lacks', () => {
    const bad = { ...ARRIVAL, script: 'descend to {deepness} at 18 m/min\n' };
    expect(drawQuestion(bad, 1, worlds)).toMatchObject({
      ok: false,
      what: 'The question’s script asks for “deepness”, which is not drawn.',
    });
    const worse = { ...ARRIVAL, draws: { depth: { from: '18 m', to: '30 min', step: '3 m' } } };
    expect(drawQuestion(worse, 1, worlds)).toMatchObject({
      ok: false,
      what: 'depth: from, to and step are not of one kind.',
    });
  });
});

describe('an answer', () => {
  const world = worldFor(THIRTY);
  const number = {
    answer: 'noStopMin at arrival',
    within: '1 min',
    wrong: [{ when: 'given > answer + within', because: 'Too long by {{given - answer}}.' }],
    otherwise: 'Too short.',
  };

  it('in numbers is right within the width, and wrong with the reason that fits', () => {
    const asked = valueOf(numberAsked(number, world));
    const { value } = asked.answer;
    expect(judgeNumber(number, asked, value, world)).toMatchObject({ right: true, because: undefined });
    expect(judgeNumber(number, asked, value + 0.99, world).right).toBe(true);
    expect(judgeNumber(number, asked, value + 5, world)).toMatchObject({
      right: false,
      because: 'Too long by {{given - answer}}.',
    });
    expect(judgeNumber(number, asked, value - 5, world)).toMatchObject({ right: false, because: 'Too short.' });
  });

  it('without end cannot be asked for as a number', () => {
    expect(numberAsked({ ...number, answer: 'freshNoStopMin(3 m)' }, world)).toMatchObject({
      ok: false,
      cause: 'no value',
    });
  });

  it('in words is right where its condition holds, which must be one alone', () => {
    const option = (holds: string) => ({ text: holds, holds, because: 'Because.' });
    expect(rightOption([option('maxDepthM < 20'), option('maxDepthM >= 20')], world)).toEqual({ ok: true, value: 1 });
    expect(rightOption([option('maxDepthM > 10'), option('maxDepthM > 20')], world)).toMatchObject({
      ok: false,
      what: '2 of the answers are right.',
    });
    expect(rightOption([option('maxDepthM < 10'), option('maxDepthM < 20')], world)).toMatchObject({
      ok: false,
      what: 'None of the answers is right.',
    });
  });

  it('to pick leaves out wrong numbers that read like the right one', () => {
    const pick = {
      answer: '10 min',
      because: 'So.',
      others: [
        { value: '10.2 min', because: 'Same.' },
        { value: '20 min', because: 'Twice.' },
      ],
    };
    const picks = numbersToPick(pick, world);
    expect(picks.ok && picks.value.map(({ printed, right }) => [printed.metric, right])).toEqual([
      ['10 min', true],
      ['20 min', false],
    ]);
    expect(numbersToPick({ ...pick, others: [{ value: '10.1 min', because: 'Same.' }] }, world)).toMatchObject({
      ok: false,
    });
  });
});
