import { decodeStep } from '@/lib/files/links/step-link';
import { MOST_LOOKS, Work } from '@/lib/lesson/expression/work';
import type { StepPage } from '@/lib/lesson/step-page';
import { refused, type Parsed } from '@/lib/quantity/parsed';
import { prepareSteps } from '../prepare-steps';
import type { PreparedLesson } from '../prepared';
import { setHtml } from './set-html';

/** A question on a page of its own, ready for the screen: its truth worked out by the engine in the page. */
export interface OpenedStep {
  readonly lesson: PreparedLesson;
  /** Where it was saved, scheme and host. */
  readonly site: string | undefined;
}

const FAULTY = refused(
  'The question in this page can’t be worked out: something in it was changed.',
  'Ask for it again, or make it anew from the lesson.',
);

/** Reads what a page of a question carries, checked anew. Never throws. */
export function openStep(packed: string, here: string | undefined): Parsed<OpenedStep> {
  const read = decodeStep(packed);
  if (!read.ok) return read;
  const site = here ?? read.value.site;
  try {
    return { ok: true, value: { lesson: prepared(read.value, site), site } };
  } catch {
    return FAULTY;
  }
}

function prepared({ lesson, slug, endS, set }: StepPage, site: string | undefined): PreparedLesson {
  const setBefore = (as: 'prose' | 'line') => (marked: string) => {
    const html = Object.hasOwn(set, `${as} ${marked}`) ? set[`${as} ${marked}`] : undefined;
    if (html === undefined) throw new Error('a text of this page was not set');
    return setHtml(html, site);
  };
  return prepareSteps(lesson, slug, {
    typesetter: { prose: setBefore('prose'), line: setBefore('line') },
    cutsOf: (_, __, system) => {
      const cutS = endS[system];
      return new Map(cutS === undefined ? [] : [[1, cutS]]);
    },
    work: new Work(2 * MOST_LOOKS),
  });
}
