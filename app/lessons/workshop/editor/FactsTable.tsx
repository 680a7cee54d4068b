import { factForm } from '@/lib/lesson/facts/fact-row';
import { DIMENSION_UNITS } from '@/lib/lesson/expression/dimension';
import { MOMENT_MEANINGS, NAMED_MOMENTS } from '@/lib/lesson/expression/expression';
import { FACT_GROUPS } from '@/lib/lesson/facts/facts';
import { DataTable } from '../../../parts/DataTable';
import { Disclosure } from '../../../parts/Disclosure';
import styles from '../workshop.module.css';

/** What an expression may say: every fact with its meaning, and the moments it may be asked at. */
export function FactsTable() {
  return (
    <Disclosure summary="What an expression may say">
      <div className={styles.facts}>
        <p>
          Numbers with their units, facts, + − × ÷, comparisons, and, or, not. A fact of a moment needs to know when:{' '}
          <code>noStopMin at 5 min</code>, <code>at arrival</code>, <code>at 2 min after leaving</code>; or take its
          extreme, <code>highest ceilingM</code>. Of the second dive of a day: <code>in dive 2</code>. Of another dive
          of the lesson: <code>of</code> and its name. As an instrument of the script has it:{' '}
          <code>on &quot;its name&quot;</code>.
        </p>
        <ul>
          {NAMED_MOMENTS.map((name) => (
            <li key={name}>
              <code>{name}</code>: {MOMENT_MEANINGS[name]}
            </li>
          ))}
        </ul>
        {FACT_GROUPS.map(({ title, facts }) => (
          <DataTable
            key={title}
            caption={title}
            captionShown
            rows={facts}
            columns={[
              { heading: 'Fact', cell: (fact) => <code>{factForm(fact)}</code> },
              { heading: 'Unit', cell: ({ dimension }) => DIMENSION_UNITS[dimension] || 'number' },
              { heading: 'Meaning', cell: ({ meaning }) => meaning },
            ]}
          />
        ))}
      </div>
    </Disclosure>
  );
}
