import { memo, useDeferredValue, type ComponentType } from 'react';
import { answeredIn, stepAsks, type StepAsks } from '@/lib/lesson/standing';
import type { LessonProgress } from '@/lib/lesson/progress';
import type { PreparedLesson } from '../prepared';
import { useLessonProgress } from './progress-store';
import styles from './player.module.css';

interface StepContentsProps {
  lesson: PreparedLesson;
  place: number;
  onTurn: (place: number) => void;
}

/** A list of steps with what is done in them, marked once what has just been done is itself on the page. */
function withProgress(List: ComponentType<StepContentsProps & { progress: LessonProgress }>) {
  const Drawn = memo(List);
  return function WithProgress(props: StepContentsProps) {
    return <Drawn {...props} progress={useDeferredValue(useLessonProgress(props.lesson.slug))} />;
  };
}

/** Before a title in a list that can hold nothing but words. */
function markOf(step: StepAsks, progress: LessonProgress): string {
  const { answered, questions } = answeredIn(step, progress);
  return (questions > 0 ? answered === questions : progress.seen.includes(step.id)) ? '✓ ' : '';
}

/** The steps of a lesson in one line, by their titles. */
export const StepChoice = withProgress(function Choice({ lesson: { steps }, place, progress, onTurn }) {
  const asks = stepAsks(steps);
  return (
    <label className={styles.contentsShort}>
      <span className="spoken">Step</span>
      <select value={place} onChange={(event) => onTurn(Number(event.target.value))}>
        {steps.map(({ id, title }, index) => (
          <option key={id} value={index}>
            {markOf(asks[index]!, progress)}
            {index + 1} of {steps.length}: {title}
          </option>
        ))}
        <option value={steps.length}>Your results</option>
      </select>
    </label>
  );
});

/** The steps of a lesson: where you are, what is seen and what is answered, and the way to any of them. */
export const StepContents = withProgress(function Contents({ lesson: { steps }, place, progress, onTurn }) {
  const asks = stepAsks(steps);
  return (
    <nav aria-label="Steps" className={`${styles.contents} unprinted`}>
      <ol>
        {steps.map(({ id, title }, index) => {
          const seen = progress.seen.includes(id);
          const { answered, questions } = answeredIn(asks[index]!, progress);
          const done = questions > 0 ? answered === questions : seen;
          const standing = questions === 0 ? 'seen' : done ? 'answered' : 'seen, not answered';
          return (
            <li key={id}>
              <button
                type="button"
                aria-label={[title, ...(done || seen ? [standing] : [])].join(', ')}
                aria-current={index === place ? 'step' : undefined}
                onClick={() => onTurn(index)}
              >
                <span className={styles.mark} data-done={done} data-seen={seen} aria-hidden="true">
                  {done ? '✓' : index + 1}
                </span>
                <span>{title}</span>
              </button>
            </li>
          );
        })}
        <li>
          <button
            type="button"
            aria-current={place === steps.length ? 'step' : undefined}
            onClick={() => onTurn(steps.length)}
          >
            <span className={styles.mark} aria-hidden="true">
              =
            </span>
            <span>Your results</span>
          </button>
        </li>
      </ol>
    </nav>
  );
});
