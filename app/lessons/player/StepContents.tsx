import type { LessonProgress } from '@/lib/lesson/progress';
import type { PreparedLesson } from '../prepared';
import styles from './player.module.css';

interface StepContentsProps {
  lesson: PreparedLesson;
  place: number;
  progress: LessonProgress;
  onTurn: (place: number) => void;
}

/** The steps of a lesson: where you are, what is done, and the way to any of them. */
export function StepContents({ lesson: { steps }, place, progress, onTurn }: StepContentsProps) {
  return (
    <nav aria-label="Steps" className={`${styles.contents} unprinted`}>
      <ol>
        {steps.map(({ id, title }, index) => {
          const done = progress.done.includes(id);
          return (
            <li key={id}>
              <button type="button" aria-current={index === place ? 'step' : undefined} onClick={() => onTurn(index)}>
                <span className={styles.mark} data-done={done} aria-hidden="true">
                  {done ? '✓' : index + 1}
                </span>
                <span>{title}</span>
                {done && <span className="spoken">, done</span>}
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
}
