import type { Metadata } from 'next';
import type { Term } from '@/lib/lesson/glossary';
import { AsBuilt } from '../../parts/AsBuilt';
import { layDown } from '../../parts/as-built';
import { Page } from '../../parts/Page';
import { loadLessons, shippedPaths, type ShippedLesson } from '../load-lessons';
import { lessonPath } from '../../parts/lesson-paths';
import { playPath, readyDive } from '../../parts/ready-dives';
import { renderLine } from '../prose';
import { readGlossary } from '../read-content';
import { DrawnMark, MARKS } from '../../pictures/marks/marks';
import { ProseLine } from '../../parts/prose/Prose';
import { taughtIn } from './taught-in';
import { TermFinder } from './TermFinder';
import styles from './glossary.module.css';

export const metadata: Metadata = { title: 'Glossary', description: 'The terms of the trade, in plain words.' };

/** The terms of the trade by letter. They are set at build time; only the search runs in the browser. */
export default function GlossaryPage() {
  const terms = readGlossary();
  return (
    <Page title="Glossary" lead="The terms of the trade, in plain words.">
      <TermFinder count={terms.length} />
      <AsBuilt name={layDown('terms', <Terms terms={terms} lessons={loadLessons()} />)} />
    </Page>
  );
}

const initial = ({ term }: Term) => term.normalize('NFD').charAt(0).toUpperCase();

function Terms({ terms, lessons }: { terms: readonly Term[]; lessons: readonly ShippedLesson[] }) {
  const letters = [...new Set(terms.map(initial))];
  return (
    <>
      <nav aria-label="Letters" className={`${styles.letters} unprinted`}>
        {letters.map((letter) => (
          <a key={letter} href={`#letter-${letter}`}>
            {letter}
          </a>
        ))}
      </nav>
      {letters.map((letter) => (
        <section key={letter} id={`letter-${letter}`} aria-label={`Terms with ${letter}`} data-letter={letter}>
          <h2 className={styles.letter}>{letter}</h2>
          <dl className={styles.terms}>
            {terms
              .filter((term) => initial(term) === letter)
              .map((term) => (
                <Entry key={term.id} term={term} taught={taughtIn(term.id, lessons)} />
              ))}
          </dl>
        </section>
      ))}
    </>
  );
}

const pictured = (id: string) => MARKS.filter(({ terms = [] }) => terms.includes(id));

function Entry({ term: { id, term, also, means, dive }, taught }: { term: Term; taught: readonly ShippedLesson[] }) {
  return (
    <div id={id} data-term={id}>
      <dt>
        {term}
        {also.length > 0 && <span className={styles.also}> also {also.join(', ')}</span>}
      </dt>
      <dd>
        {pictured(id).map(({ name, drawn }) => (
          <span key={name} className={styles.mark}>
            <DrawnMark drawn={drawn} /> as the pictures show it
          </span>
        ))}
        <ProseLine html={renderLine(means, shippedPaths)} />
        {dive && (
          <p className={styles.taught}>
            See it on a dive: <a href={playPath(dive)}>{readyDive(dive)!.title}</a>.
          </p>
        )}
        {taught.length > 0 && (
          <p className={styles.taught}>
            Taught in{' '}
            {taught.map(({ slug, lesson: { number, title } }, index) => (
              <span key={slug}>
                {index > 0 && ', '}
                <a href={lessonPath(slug)} title={title}>
                  lesson {number}
                </a>
              </span>
            ))}
            .
          </p>
        )}
      </dd>
    </div>
  );
}
