'use client';

import { useState } from 'react';
import { Button } from '../../parts/Button';
import { lessonPath } from '../../parts/lesson-paths';
import type { PreparedLesson, PreparedStep } from '../prepared';
import { LinkDialog } from './now-and-then';

/** A link, and a code to photograph, that opens the lesson at this step. */
export function LinkToStep({ lesson, step }: { lesson: PreparedLesson; step: PreparedStep }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button kind="quiet" icon="link" onClick={() => setOpen(true)}>
        Link to this step
      </Button>
      {open && (
        <LinkDialog
          link={`${location.origin}${lessonPath(lesson.slug, step.id)}`}
          title={`${lesson.title}: ${step.title}`}
          onClose={() => setOpen(false)}
        />
      )}
    </>
  );
}
