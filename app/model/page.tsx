import '../parts/formulas.css';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metadata } from 'next';
import { AsBuilt } from '../parts/AsBuilt';
import { layDownHtml } from '../parts/as-built';
import { renderMarkdown } from '../parts/markdown';
import { Marks } from './Marks';
import { Sketches } from './Sketches';
import styles from './page.module.css';

export const metadata: Metadata = { title: 'Model' };

/** The model told to a teacher. Written in content/model.md and set at build time: no script of it reaches the reader. */
export default function ModelPage() {
  const { html, headings } = renderMarkdown(readFileSync(join(process.cwd(), 'content/model.md'), 'utf8'));
  const sections = headings.filter(({ depth }) => depth === 2);
  return (
    <div className={styles.page}>
      <nav aria-label="On this page" className={`${styles.contents} unprinted`}>
        <h2>On this page</h2>
        <ol>
          {sections.map(({ id, text }) => (
            <li key={id}>
              <a href={`#${id}`} dangerouslySetInnerHTML={{ __html: text }} />
            </li>
          ))}
          <li>
            <a href="#marks">What the marks mean</a>
          </li>
        </ol>
      </nav>
      <Sketches />
      <AsBuilt name={layDownHtml('model-text', html)} as="article" className={styles.text} />
      <Marks />
    </div>
  );
}
