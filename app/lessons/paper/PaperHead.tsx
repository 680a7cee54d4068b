import { cautions } from '@/content/cautions';
import type { PreparedLesson } from '../prepared';
import { ProseList } from '../../parts/prose/Prose';
import styles from './paper.module.css';

/** What stands at the head of everything that is printed of a lesson. */
export function PaperHead({ lesson, named }: { lesson: PreparedLesson; named: boolean }) {
  return (
    <header className={styles.head}>
      <p className={styles.caution}>{cautions.general}</p>
      {lesson.cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
      {named && (
        <p className={styles.nameLine}>
          <span>Name</span>
          <span>Date</span>
        </p>
      )}
      <h2>Afterwards</h2>
      <ProseList lines={lesson.objectives} />
    </header>
  );
}
