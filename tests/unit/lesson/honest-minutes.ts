import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import type { Lesson } from '@/lib/lesson/lesson';
import { runSpeed } from '@/lib/lesson/run-speed';
import { momentOf } from '@/lib/lesson/questions/drawing-question';
import type { LessonStep } from '@/lib/lesson/step';

/** Words a minute that are read with understanding; common practice, no single source. */
const WORDS_A_MINUTE = 200;
/** A look at a moment where a run waits, and at a picture beside a text, min. */
const A_LOOK = 0.5;
/** What it takes to think of an answer and to give it with a reason, min. */
const ANSWERS = { choice: 1.5, number: 2, draw: 3, goal: 6, question: 1, working: 2 } as const;

/** How long a lesson takes, min: its words read, its runs played, its questions answered. */
export function honestMinutes(lesson: Lesson): number {
  const worlds = lessonWorld(lesson);
  const lengthMin = (step: Extract<LessonStep, { kind: 'run' }>) => {
    const world = worlds.about(step.script);
    const [from, to] = [momentOf(step.from, world), momentOf(step.to, world)];
    if (!from.ok || !to.ok) return 0;
    const spanS = to.value - from.value;
    return spanS / 60 / runSpeed(spanS);
  };
  const words = wordsIn([lesson.opening ?? '', ...lesson.objectives, ...lesson.needs]);
  return lesson.steps.reduce((sum, step) => sum + stepMinutes(step, lengthMin), words / WORDS_A_MINUTE);
}

function stepMinutes(step: LessonStep, playedMin: (step: Extract<LessonStep, { kind: 'run' }>) => number): number {
  const read = (...texts: readonly (string | undefined)[]) =>
    wordsIn([step.title, step.text, step.more ?? '', ...texts.map((text) => text ?? '')]) / WORDS_A_MINUTE;
  switch (step.kind) {
    case 'read':
      return read() + (step.look ? A_LOOK * step.look.show.length : 0);
    case 'predict': {
      const said = (step.choice ?? []).map(({ text }) => text);
      const because = (step.choice ?? []).slice(0, 2).map((option) => option.because);
      return (
        read(step.after, ...said, ...because) +
        (step.draw ? ANSWERS.draw : step.number ? ANSWERS.number : ANSWERS.choice)
      );
    }
    case 'run':
      return read(...step.watch.map(({ text }) => text)) + playedMin(step) + A_LOOK * step.watch.length;
    case 'explain':
      return read() + ANSWERS.working;
    case 'try':
      return read(step.after) + ANSWERS.goal;
    case 'check':
      return step.questions.reduce(
        (sum, { ask, after, choice = [] }) =>
          sum + ANSWERS.question + wordsIn([ask, after ?? '', ...choice.map(({ text }) => text)]) / WORDS_A_MINUTE,
        read(),
      );
    case 'recap':
      return read(...step.points);
  }
}

/** Words of Markdown: a value counts as one, a link as what is read of it. */
export function wordsIn(texts: readonly string[]): number {
  return texts
    .map((text) => text.replace(/\{\{[^{}]*\}\}/g, '1').replace(/\]\([^)]*\)/g, ']'))
    .reduce((sum, text) => sum + (text.match(/[\p{L}\p{N}][\p{L}\p{N}'’.-]*/gu)?.length ?? 0), 0);
}

/** The minutes as a shelf says them: to the next five. */
export function shelfMinutes(minutes: number): number {
  return Math.max(5, Math.round(minutes / 5) * 5);
}
