import styles from './prose.module.css';

/** A text of a lesson that has been set: see prose.ts for what it may hold. */
export function Prose({ html }: { html: string }) {
  return <div className={styles.prose} dangerouslySetInnerHTML={{ __html: html }} />;
}

/** The same within a line. */
export function ProseLine({ html }: { html: string }) {
  return <span className={styles.line} dangerouslySetInnerHTML={{ __html: html }} />;
}

/** Lines as the points of a list. */
export function ProseList({ lines, className }: { lines: readonly string[]; className?: string | undefined }) {
  return (
    <ul className={className}>
      {lines.map((html, index) => (
        <li key={index}>
          <ProseLine html={html} />
        </li>
      ))}
    </ul>
  );
}
