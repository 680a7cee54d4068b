import type { PreparedNotes } from '../../prepared';
import { ProseLine, ProseList } from '../../../parts/prose/Prose';
import styles from './notes.module.css';

/** What stands beside a step for whoever teaches it. */
export function StepNotes({ notes: { ask, wrong, tip } }: { notes: PreparedNotes }) {
  return (
    <div role="note" aria-label="Notes for the instructor" className={styles.notes}>
      {ask.length > 0 && (
        <>
          <h3>Ask</h3>
          <ProseList lines={ask} />
        </>
      )}
      {wrong.length > 0 && (
        <>
          <h3>You may hear</h3>
          <dl>
            {wrong.map(({ answer, tempts }, index) => (
              <div key={index}>
                <dt>
                  “<ProseLine html={answer} />”
                </dt>
                <dd>
                  <ProseLine html={tempts} />
                </dd>
              </div>
            ))}
          </dl>
        </>
      )}
      {tip && (
        <p>
          <ProseLine html={tip} />
        </p>
      )}
    </div>
  );
}
