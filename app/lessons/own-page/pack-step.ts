import { encodeStep } from '@/lib/files/links/step-link';
import { cutsOf } from '@/lib/lesson/checking/given-away';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { lessonInFeet } from '@/lib/lesson/in-feet';
import type { Lesson } from '@/lib/lesson/lesson';
import { lessonOfPage, runAfter, type RunAfter } from '@/lib/lesson/step-page';
import { accepted, refused, type Parsed } from '@/lib/quantity/parsed';
import type { UnitSystem } from '@/lib/quantity/unit-system';
import { TELLS } from '../../stage/what-tells';
import { lessonIn } from '../in-units';
import { plainWords } from '../plain-words';
import { markdownTypesetter } from '../prepare-lesson';
import { prepareSteps } from '../prepare-steps';
import { stepsOf } from './steps-of-page';
import { carriedOf } from './carried-pictures';

/** Which question of a lesson is wanted on a page of its own, and how. */
export interface PageOfStep {
  /** The step, by id. */
  readonly step: string;
  /** Whether the run after it comes along, where there is one. */
  readonly run: boolean;
  /** Where the page is made, scheme and host. */
  readonly site: string;
  readonly units: UnitSystem;
}

export interface PackedStep {
  readonly title: string;
  /** What the page carries behind its #. */
  readonly fragment: string;
  /** The question and its dive in words, to be read where no script of the page runs. The answer isn't among them. */
  readonly words: string;
  /** The run that follows in the lesson, if one does: what comes along of it. */
  readonly run: RunOnPage | undefined;
}

export interface RunOnPage {
  readonly title: string;
  /** Titles of further questions that it answers too. */
  readonly between: readonly string[];
  /** How many of its pictures are left out. */
  readonly left: number;
}

/** Packs a question of a checked lesson for a page of its own. */
export function packStep(
  lesson: Lesson,
  slug: string,
  { step, run: wanted, site, units }: PageOfStep,
): Parsed<PackedStep> {
  const place = lesson.steps.findIndex(({ id }) => id === step);
  const question = lesson.steps[place];
  if (question?.kind !== 'predict')
    return refused('The lesson asks no such question now.', 'Open the lesson anew and choose the question again.');
  const after = runAfter(lesson, place);
  const { show, left } = carriedOf(after?.run.show ?? []);
  const own = lessonOfPage(lesson, after && wanted ? [question, { ...after.run, show }] : [question]);
  const set: Record<string, string> = {};
  const markdown = markdownTypesetter(() => undefined);
  const prepared = prepareSteps(own, slug, {
    typesetter: {
      prose: (marked) => (set[`prose ${marked}`] = markdown.prose(marked)),
      line: (marked) => (set[`line ${marked}`] = markdown.line(marked)),
    },
    cutsOf: () => new Map(),
  });
  const encoded = encodeStep({ slug, site, lesson: own, endS: endsOf(lesson, after), set });
  if (!encoded.ok) return encoded;
  const shown = lessonIn(prepared, units);
  const { question: asked } = stepsOf(shown);
  const dive = shown.scripts[asked.script]!;
  return accepted({
    title: asked.title,
    fragment: encoded.value,
    words: [
      `${shown.title}: ${asked.title}`,
      plainWords(asked.html, units).trim(),
      dive.title,
      dive.script.trim(),
    ].join('\n\n'),
    run: after && { title: after.run.title, between: after.between, left: left.length },
  });
}

/** Where the pictures of the run end in the whole lesson, s: what they would tell later is asked there. */
function endsOf(lesson: Lesson, after: RunAfter | undefined) {
  const endOf = (one: Lesson) => after && cutsOf(one, lessonWorld(one), TELLS).get(after.place);
  return { metric: endOf(lesson), imperial: lesson.inFeet && endOf(lessonInFeet(lesson)) };
}
