import * as z from 'zod';
import { lessonSchema, type Lesson } from './lesson';
import type { LessonStep, StepOf } from './step';

/**
 * A question of a lesson on a page of its own, alone or with the run that follows it: a lesson of one or two steps, and
 * beside it its texts as they were set, so that a page needs nothing to set them with. Values aren't in them; the engine
 * works them out where the page is opened.
 */
export const stepPageSchema = z
  .strictObject({
    /** What answers to it go under. */
    slug: z.string().regex(/^[a-z0-9-]{1,80}$/),
    /** Where it was saved, scheme and host, for links that lead there. */
    site: z
      .string()
      .max(200)
      .regex(/^https?:\/\/[a-z0-9.:[\]-]+$/i)
      .optional(),
    lesson: lessonSchema,
    /** Where the pictures of the run end, s, lest they tell what the lesson asks later. */
    endS: z.strictObject({ metric: z.number().min(0).optional(), imperial: z.number().min(0).optional() }),
    /** HTML by the text it was set from, whose values are marked, after `prose` or `line`. */
    set: z.record(z.string().max(10_000), z.string().max(60_000)),
  })
  .refine(({ lesson: { steps } }) => isQuestionWithRun(steps), 'a page has a question and at most the run after it');

export type StepPage = z.infer<typeof stepPageSchema>;

function isQuestionWithRun(steps: readonly LessonStep[]): boolean {
  const [question, run] = steps;
  return steps.length <= 2 && question?.kind === 'predict' && (run === undefined || run.kind === 'run');
}

export interface RunAfter {
  readonly run: StepOf<'run'>;
  /** Its place in the lesson. */
  readonly place: number;
  /** Titles of the questions between, which the run answers too. */
  readonly between: readonly string[];
}

/** The run that follows a question, with nothing but further questions between; undefined where another step comes first. */
export function runAfter({ steps }: Pick<Lesson, 'steps'>, question: number): RunAfter | undefined {
  const place = steps.findIndex(({ kind }, index) => index > question && kind !== 'predict');
  const run = steps[place];
  if (run?.kind !== 'run') return undefined;
  return { run, place, between: steps.slice(question + 1, place).map(({ title }) => title) };
}

/** The lesson that a page carries: a question, the run if it is wanted, and nothing that is for the teacher or another step. */
export function lessonOfPage(lesson: Lesson, steps: readonly LessonStep[]): Lesson {
  return {
    ...lesson,
    after: [],
    needs: [],
    objectives: [lesson.title],
    opening: undefined,
    steps: steps.map(({ notes: _, ...step }) => ({ ...step, claims: [] })),
  };
}
