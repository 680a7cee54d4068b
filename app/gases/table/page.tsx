import type { Metadata } from 'next';
import { Caution } from '../../parts/Caution';
import { Page } from '../../parts/Page';
import { TableMaker } from './TableMaker';
import styles from '../gases.module.css';

export const metadata: Metadata = {
  title: 'Teaching table',
  description: 'A table of no-stop times and stops worked out by the engine for chosen limits, for a class to read.',
};

/** A table for a class to read, and how a dive is carried out by one with a unit that only shows depth and time. */
export default function TeachingTablePage() {
  return (
    <Page
      title="Teaching table"
      lead="Depth and bottom time in, stops out: how dives were carried out before instruments worked, and how they still are with a unit in gauge mode."
    >
      <Caution about="deepCourse" />
      <TableMaker />
      <section aria-labelledby="timer" className={`${styles.section} unprinted`}>
        <h2 id="timer">With a unit in gauge mode</h2>
        <p>
          In gauge mode a unit works nothing out: it shows depth, greatest depth and time. The table holds the rest, so
          the diver does what the instrument no longer does.
        </p>
        <ol className={styles.steps}>
          <li>
            Before the dive, pick the row and the column you mean to stay inside, and the ones you would need if you
            went deeper or stayed longer. Write all of them down.
          </li>
          <li>
            Start the time when you leave the surface. The bottom time runs until you leave the bottom, the way down
            included.
          </li>
          <li>
            Read the greatest depth, not the one you are at. A minute at 31 m makes it a dive of the next deeper row,
            however shallow the rest was: a table takes the whole time to be spent at the bottom.
          </li>
          <li>Never read between two rows or two columns: the next deeper, the next longer.</li>
          <li>
            Go up at the table’s rate. A slower way up adds bottom time, a faster one loses washout; the gauge may not
            warn you.
          </li>
          <li>At a stop you count the minutes yourself, from arriving there to leaving.</li>
          <li>
            After the dive the unit knows of no gas left over: it can’t tell you when to dive again or when to fly. Many
            units stay in gauge mode for a day or more for that reason.
          </li>
        </ol>
        <p>On the desk, set a unit to gauge mode and watch what it leaves unsaid while the model goes on.</p>
      </section>
    </Page>
  );
}
