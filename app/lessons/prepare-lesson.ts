import { cutsOf } from '@/lib/lesson/checking/given-away';
import type { Lesson } from '@/lib/lesson/lesson';
import { TELLS } from '../stage/what-tells';
import { prepareSteps, type HowToPrepare, type Typesetter } from './prepare-steps';
import type { PreparedLesson } from './prepared';
import { renderLine, renderProse } from './prose';

/** Where lessons are, by number; a text links to them so. */
export type LessonPaths = (number: number) => string | undefined;

/** Sets the Markdown of lessons. */
export const markdownTypesetter = (paths: LessonPaths): Typesetter => ({
  prose: (marked) => renderProse(marked, paths),
  line: (marked) => renderLine(marked, paths),
});

/** Pictures end where they would tell what a later step asks. */
export const cutsOfLesson: HowToPrepare['cutsOf'] = (lesson, worlds) => cutsOf(lesson, worlds, TELLS);

/** A checked lesson with its texts set and its answers worked out. Throws where it was not checked and is wrong. */
export function prepareLesson(lesson: Lesson, slug: string, paths: LessonPaths): PreparedLesson {
  return prepareSteps(lesson, slug, { typesetter: markdownTypesetter(paths), cutsOf: cutsOfLesson });
}
