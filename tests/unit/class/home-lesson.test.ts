import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { knownNames } from '@/app/stage/known-names';
import { prepareText } from '@/app/lessons/workshop/looks/prepare-text';
import { classAsks, classAnswers } from '@/app/lessons/class-asks';
import { askMoment } from '@/lib/class/ask-moment';
import type { Asked } from '@/lib/class/class-state';
import { DIVE_ASKS } from '@/lib/class/dive-asks';
import { homeLesson, termsIn } from '@/lib/class/home-lesson';
import { decodeLesson, encodeLesson } from '@/lib/files/links/lesson-link';
import { readLesson } from '@/lib/lesson/read-lesson';

const textOf = (slug: string) => readFileSync(`content/lessons/${slug}.yaml`, 'utf8');
const FOUR = '04-no-stop-time';
const known = knownNames(termsIn(textOf(FOUR)).map((id) => ({ id })));

const SCRIPT = `gas: air
gradient factors: 85/85
descend to 30 m at 18 m/min
stay 28 min
ascend to 3 m at 9 m/min
stay 20 min
ascend to surface at 9 m/min`;

function ofDive(id: string, atS: number, index: number): Asked[] {
  const origin = { by: 'dive' as const, ask: id, atS, title: 'Too long at thirty metres', script: SCRIPT };
  const made = askMoment(
    DIVE_ASKS.find((one) => one.id === id)!,
    origin,
  );
  if (!made.ok) return [];
  const picture = {
    points: [
      [0, 0],
      [100, 30],
      [atS, 30],
    ] as [number, number][],
  };
  const ask = { id: `d${index}`, title: 'At 8:00', text: 'What?', picture, ...made.asked };
  return [{ ask, truth: made.truth, origin, phase: 'truth', rounds: [{ answers: {} }] }];
}

function ofLesson(slug: string): Asked[] {
  const lesson = prepareText({ text: textOf(slug), slug, known })!;
  const { answers } = classAnswers(lesson);
  return classAsks(lesson).asks.map(({ id, asked }, i) => ({
    ask: { ...asked, id: `l${i}`, source: { lesson: slug, question: id } },
    truth: answers[i]!.truth,
    phase: 'truth',
    rounds: [{ answers: {} }],
  }));
}

const own: Asked = {
  ask: { id: 'o1', title: 'A question', text: 'Is *this* {{30 m}} [x](y)?', by: 'choice', options: ['yes', '# no'] },
  truth: { by: 'choice', right: 1 },
  phase: 'truth',
  rounds: [{ answers: {} }],
};
const titled = { title: 'Questions of our class', known };

describe('the questions of a class for home', () => {
  it('are a lesson that stands the check of lessons: all of a lesson’s, of a dive’s and of the teacher’s own', () => {
    const asked = [...ofLesson(FOUR), ...ofDive('no-stop', 480, 1), own];
    const { text, leftOut } = homeLesson(asked, new Map([[FOUR, textOf(FOUR)]]), titled);
    expect(leftOut).toEqual([]);
    const read = readLesson(text!, { known });
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.lesson.steps).toHaveLength(asked.length + 1);
  });

  it('fit a code that can be photographed, with all a lesson asks and a covered reading', () => {
    const asked = [...ofLesson(FOUR), ...ofDive('no-stop', 480, 1)];
    const { text } = homeLesson(asked, new Map([[FOUR, textOf(FOUR)]]), titled);
    const link = encodeLesson(text!, { slug: FOUR, text: textOf(FOUR) });
    // Of the 1,200 characters of a code, some eighty are the address.
    expect(link.ok && link.value.length).toBeLessThan(1120);
    expect(link.ok && decodeLesson(link.value, textOf(FOUR))).toEqual({ ok: true, value: text });
  });

  it.each(DIVE_ASKS.map(({ id }) => id))(
    'can be the covered reading “%s”, with what is said to wrong answers',
    (id) => {
      const asked = [480, 1780, 4000].flatMap((atS, i) => ofDive(id, atS, i)).slice(0, 1);
      if (asked.length === 0) return;
      const { text, leftOut } = homeLesson(asked, new Map(), titled);
      expect(leftOut).toEqual([]);
      expect(prepareText({ text: text!, slug: 'own', known })).toBeDefined();
    },
  );

  it('leave out, with the reason, what has no right answer and what an earlier one tells', () => {
    const open: Asked = { ...own, truth: { by: 'choice' } };
    const twice = [...ofDive('no-stop', 480, 1), ...ofDive('no-stop', 480, 2), open];
    const { text, leftOut } = homeLesson(twice, new Map(), titled);
    expect(text).toBeDefined();
    expect(leftOut.map(({ title }) => title)).toEqual(['A question', 'At 8:00']);
    expect(leftOut[0]!.why).toMatch(/No answer is marked as right/);
    expect(homeLesson([open], new Map(), titled).text).toBeUndefined();
  });

  it('show what someone typed as it was typed', () => {
    const { text } = homeLesson([own], new Map(), titled);
    const lesson = prepareText({ text: text!, slug: 'own', known })!;
    const html = JSON.stringify(lesson.steps[0]);
    expect(html).toContain('Is *this* {{30 m}} [x](y)?');
    expect(html).not.toContain('<em>');
    const [step] = lesson.steps;
    expect(step?.kind === 'predict' && step.choice?.map(({ right }) => right)).toEqual([false, true]);
  });
});
