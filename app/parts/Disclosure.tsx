import type { ReactNode } from 'react';
import styles from './Disclosure.module.css';
import { Icon } from './Icon';

interface DisclosureProps {
  summary: ReactNode;
  children: ReactNode;
  /** Open when first drawn. */
  open?: boolean;
  onToggle?: (open: boolean) => void;
}

/** Something to open when wanted: the browser's own `<details>`, which works before any script has loaded. */
export function Disclosure({ summary, children, open, onToggle }: DisclosureProps) {
  return (
    <details
      className={styles.disclosure}
      open={open}
      {...(onToggle && { onToggle: (event) => onToggle(event.currentTarget.open) })}
    >
      <summary>
        <Icon name="chevron" />
        {summary}
      </summary>
      <div className={styles.content}>{children}</div>
    </details>
  );
}
