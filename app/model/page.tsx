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
  const unitsAt = html.indexOf('<h2 id="units"');
  const [intro, rest] = [html.slice(0, unitsAt), html.slice(unitsAt)];
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
      <article className={styles.article}>
        <AsBuilt name={layDownHtml('model-intro', intro)} className={styles.text} />
        <Sketches />
        <AsBuilt name={layDownHtml('model-text', rest)} className={styles.text} />
      </article>
      <Marks />
    </div>
  );
}
