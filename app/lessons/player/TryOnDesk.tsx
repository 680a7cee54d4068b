'use client';

import { Button } from '../../parts/Button';
import { isLessonPage, lessonPath } from '../../parts/lesson-paths';
import { routes } from '../../parts/routes';
import { useStatus } from '../../parts/status';
import type { PreparedLesson, PreparedStep } from '../prepared';

interface TryOnDeskProps {
  lesson: PreparedLesson;
  step: PreparedStep;
  /** Which dive of the lesson. */
  script: string;
}

/** Takes the dive of a step to the desk, where everything about it may be changed, with the way back to this step. */
export function TryOnDesk({ lesson, step, script }: TryOnDeskProps) {
  const say = useStatus((state) => state.say);
  const take = async () => {
    const { leaveForDesk } = await import('../../parts/hand-over');
    const { title, script: text } = lesson.scripts[script]!;
    // One that is tried out in the workshop has no address to come back to.
    const back = isLessonPage(location.pathname) ? { back: lessonPath(lesson.slug, step.id) } : {};
    if (leaveForDesk({ title, script: text, ...back })) location.assign(routes.desk.path);
    else say('This browser does not let the page hand a dive on. Copy its script from the lesson’s file instead.');
  };
  return (
    <Button kind="quiet" onClick={() => void take()}>
      Try this dive on the desk
    </Button>
  );
}
