import type { ReactNode } from 'react';
import { Icon } from './Icon';
import styles from './Reading.module.css';

/** Who says so: nobody's alarm, the model's own stop, or a rule laid on top of the model. */
export type ReadingTone = 'plain' | 'stop' | 'rule';

interface ReadingProps {
  label: string;
  /** Already rounded and spelled for a person, such as "12.4" or "more than 99". */
  value: string;
  unit?: string | undefined;
  tone?: ReadingTone;
  /** A few words under the number. With a tone, say here what is asked: colour alone says nothing. */
  note?: ReactNode;
  /** Room kept for this many characters, so that the number never pushes its neighbours about. */
  roomFor?: 2 | 3 | 4 | 5 | 6 | 7 | 8;
  /** Hides the figure, also from screen readers, until the class has guessed. */
  covered?: boolean;
  onUncover?: (() => void) | undefined;
  /** A button that opens the working. */
  why?: ReactNode;
  size?: 'normal' | 'large';
}

/** One number, large, with its name and unit. */
export function Reading(props: ReadingProps) {
  const { label, value, unit, tone = 'plain', note, roomFor = 4, covered = false, onUncover, why, size = 'normal' } = props;
  return (
    <div className={`${styles.reading} ${styles[tone]} ${styles[size]}`} role="group" aria-label={label}>
      <div className={styles.head}>
        <span className={styles.label}>{label}</span>
        {!covered && why && <span className={styles.why}>{why}</span>}
      </div>
      {covered ? (
        <Cover label={label} onUncover={onUncover} />
      ) : (
        <>
          <p className={styles.figure}>
            <span className={styles.value} data-room={roomFor}>
              {value}
            </span>
            {unit && <span className={styles.unit}>{unit}</span>}
          </p>
          {note && <p className={styles.note}>{note}</p>}
        </>
      )}
    </div>
  );
}

function Cover({ label, onUncover }: { label: string; onUncover: (() => void) | undefined }) {
  return (
    <p className={styles.figure}>
      {onUncover ? (
        <button type="button" className={styles.cover} onClick={onUncover} aria-label={`Uncover ${label}`}>
          <Icon name="covered" />
          Covered
        </button>
      ) : (
        <span className={styles.cover}>
          <Icon name="covered" />
          Covered
        </span>
      )}
    </p>
  );
}
