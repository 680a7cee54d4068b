import { evaluateAmount } from '../expression/evaluate';
import type { LessonWorld } from '../expression/lesson-world';
import { parseTemplate } from '../expression/template';
import type { Amount, FactRead, World } from '../expression/world';
import type { Lesson } from '../lesson';
import { rightOption } from '../questions/judge';
import type { Subject } from '../questions/subject';
import type { LessonStep, StepOf } from '../step';

export type Path = readonly PropertyKey[];

/** What a text says in so many words, its values left out. */
export interface Words {
  readonly path: Path;
  /** Of which dive; undefined before the first step. */
  readonly subject: Subject | undefined;
  readonly words: string;
}

/** A value that a text says. */
export interface Told {
  readonly path: Path;
  readonly below: number;
  readonly written: string;
  readonly amount: Amount;
  readonly reads: readonly FactRead[];
}

/** What is told in texts, with the first step that may no longer ask for it. */
interface ToldBy {
  readonly until: number;
  readonly values: readonly Told[];
  readonly words: readonly Words[];
}

interface Text {
  readonly path: Path;
  readonly text: string;
}

/** All that the texts of a lesson say, in order, each with the first step by index that may no longer ask for it. */
export function toldBefore(lesson: Lesson, worlds: LessonWorld): ToldBy[] {
  const about = worlds.about();
  const told = (until: number, texts: readonly Text[], world: World): ToldBy => ({
    until,
    values: texts.flatMap((text) => valuesIn(text, world)),
    words: texts.map(({ path, text }) => ({
      path,
      subject: until === 0 && path[0] !== 'steps' ? undefined : world.subject,
      words: text.replace(/\{\{[^{}]*\}\}/g, '{}'),
    })),
  });
  const front = [
    { path: ['summary'], text: lesson.summary },
    { path: ['opening'], text: lesson.opening ?? '' },
    ...lesson.objectives.map((text, i) => ({ path: ['objectives', i], text })),
    ...lesson.needs.map((text, i) => ({ path: ['needs', i], text })),
  ];
  return [
    told(0, front, about),
    ...lesson.steps.flatMap((step, i) => {
      const world = worlds.about(step.kind === 'read' ? step.look?.script : 'script' in step ? step.script : undefined);
      const path = ['steps', i];
      const before = [
        { path: [...path, 'title'], text: step.title },
        { path: [...path, 'text'], text: step.text },
        { path: [...path, 'more'], text: step.more ?? '' },
      ];
      return [told(i, before, world), told(i + 1, laterTexts(step, path, world), world)];
    }),
  ];
}

/** What a step says once it is done. */
function laterTexts(step: LessonStep, path: Path, world: World): Text[] {
  switch (step.kind) {
    case 'predict':
      return [{ path: [...path, 'after'], text: step.after }, ...answersOf(step, path, world)];
    case 'run':
      return step.watch.map(({ text }, i) => ({ path: [...path, 'watch', i, 'text'], text }));
    case 'try':
      return step.after === undefined ? [] : [{ path: [...path, 'after'], text: step.after }];
    case 'recap':
      return step.points.map((text, i) => ({ path: [...path, 'points', i], text }));
    default:
      return [];
  }
}

/** The options of a question and what is said to the right one; the rest is said to some only. */
function answersOf({ choice = [] }: StepOf<'predict'>, path: Path, world: World): Text[] {
  const right = rightOption(choice, world);
  return choice.flatMap(({ text, because }, i) => [
    { path: [...path, 'choice', i, 'text'], text },
    ...(right.ok && right.value === i ? [{ path: [...path, 'choice', i, 'because'], text: because }] : []),
  ]);
}

function valuesIn({ path, text }: Text, world: World): Told[] {
  const template = parseTemplate(text);
  if (!template.ok) return [];
  const { pieces, slots } = template.value;
  return slots.flatMap(({ expression, written }, i) => {
    const reads: FactRead[] = [];
    const amount = evaluateAmount(expression, { ...world, noted: (read) => reads.push(read) });
    const below = pieces
      .slice(0, i + 1)
      .join(' ')
      .split('\n').length;
    return amount.ok ? [{ path, below, written, amount: amount.value, reads }] : [];
  });
}
