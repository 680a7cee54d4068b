import { cautions } from '@/content/cautions';
import styles from './Caution.module.css';
import { Icon } from './Icon';

/** The line at the top of every screen and of every printed page. */
export function CautionStrip() {
  return (
    <aside className={styles.strip} aria-label="Caution" data-part="caution">
      <p>
        <Icon name="caution" />
        {cautions.general}
      </p>
    </aside>
  );
}

/** A caution that belongs to one screen, such as the chamber bench, set above its content. */
export function Caution({ about, hidden = false }: { about: keyof typeof cautions; hidden?: boolean }) {
  return (
    <p className={styles.note} role="note" hidden={hidden}>
      <Icon name="caution" />
      <span>{cautions[about]}</span>
    </p>
  );
}
