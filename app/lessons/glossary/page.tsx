import type { Metadata } from 'next';
import { AsBuilt } from '../../parts/AsBuilt';
import { layDown } from '../../parts/as-built';
import { Page } from '../../parts/Page';
import { shippedPaths } from '../load-lessons';
import { renderLine } from '../prose';
import { readGlossary } from '../read-content';
import { ProseLine } from '../Prose';
import styles from './glossary.module.css';

export const metadata: Metadata = { title: 'Glossary', description: 'The terms of the trade, in plain words.' };

/** The terms of the trade. Set at build time: no script of it reaches the reader. */
export default function GlossaryPage() {
  return (
    <Page title="Glossary" lead="The terms of the trade, in plain words.">
      <AsBuilt name={layDown('terms', <Terms />)} />
    </Page>
  );
}

function Terms() {
  return (
    <dl className={styles.terms}>
      {readGlossary().map(({ id, term, also, means }) => (
        <div key={id} id={id}>
          <dt>
            {term}
            {also.length > 0 && <span className={styles.also}> also {also.join(', ')}</span>}
          </dt>
          <dd>
            <ProseLine html={renderLine(means, shippedPaths)} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
