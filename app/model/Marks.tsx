import { DrawnMark, MARKS } from '../pictures/marks/marks';
import styles from './page.module.css';

/** The grammar of the pictures. Colour alone never tells: each mark has a shape and words of its own. */
export function Marks() {
  return (
    <section aria-labelledby="marks" className={styles.marks}>
      <h2 id="marks">What the marks mean</h2>
      <p>
        The same in every picture, on screen, on paper and in files. Rust means that the model says stop, and nothing
        else; violet means that a rule says so. Each mark has a shape of its own, so that no colour is needed.
      </p>
      <dl>
        {MARKS.map(({ name, means, drawn }) => (
          <div key={name}>
            <DrawnMark drawn={drawn} />
            <dt>{name}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
