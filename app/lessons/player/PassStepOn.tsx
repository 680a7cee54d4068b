'use client';

import { StepPageDialog } from '../own-page/StepPageDialog';
import { lessonPath } from '../../parts/lesson-paths';
import type { PreparedLesson, PreparedStep } from '../prepared';
import { LinkDialog } from './LinkDialog';

/** How a step can be passed on. */
export type PassedOn = 'link' | 'page';

interface PassStepOnProps {
  as: PassedOn;
  lesson: PreparedLesson;
  /** The lesson's text, where it is not on the shelf. */
  own: string | undefined;
  step: PreparedStep;
  onClose: () => void;
}

/** One step for others: as a link to it or, where it is a question, as a page of its own. */
export function PassStepOn({ as, lesson: { slug, title }, own, step, onClose }: PassStepOnProps) {
  return as === 'page' ? (
    <StepPageDialog slug={slug} own={own} step={step.id} onClose={onClose} />
  ) : (
    <LinkDialog
      link={`${location.origin}${lessonPath(slug, step.id)}`}
      title={`${title}: ${step.title}`}
      onClose={onClose}
    />
  );
}
