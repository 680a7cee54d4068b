import { useRef, type ReactNode } from 'react';
import { Icon } from './Icon';
import styles from './Reading.module.css';

/** Who says so: nobody's alarm, the model's own stop, or a rule laid on top of the model. */
type ReadingTone = 'plain' | 'stop' | 'rule';

interface ReadingProps {
  /** Which reading it is, for whoever looks for it on the page. */
  id?: string;
  label: string;
  /** Already rounded and spelled for a person, such as "12.4" or "more than 99". */
  value: string;
  unit?: string | undefined;
  tone?: ReadingTone;
  /** A few words under the number. With a tone, say here what is asked: colour alone says nothing. */
  note?: ReactNode;
  /** Room kept for this many characters, so that the number never pushes its neighbours about. */
  roomFor?: 2 | 3 | 4 | 5 | 6 | 7 | 8;
  /** Leaves the reading out altogether, where only some are on show. */
  absent?: boolean;
  /** Hides the figure, also from screen readers, until the class has guessed. */
  covered?: boolean;
  onUncover?: (() => void) | undefined;
  /** Covers this reading alone; without it there is no button for that. */
  onCover?: (() => void) | undefined;
  /** A button that opens the working. */
  why?: ReactNode;
  size?: 'normal' | 'large';
}

/** One number, large, with its name and unit. */
export function Reading(props: ReadingProps) {
  const {
    id,
    label,
    value,
    unit,
    tone = 'plain',
    note,
    roomFor = 4,
    absent = false,
    covered = false,
    onUncover,
    onCover,
    why,
    size = 'normal',
  } = props;
  /** Whether the reading's own button was pressed: the one that takes its place then has the focus. */
  const pressed = useRef(false);
  const takesFocus = (button: HTMLButtonElement | null) => {
    if (!button || !pressed.current) return;
    pressed.current = false;
    button.focus();
  };
  const press = (doing: () => void) => () => {
    pressed.current = true;
    doing();
  };
  if (absent) return null;
  return (
    <div
      className={`${styles.reading} ${styles[covered ? 'plain' : tone]} ${styles[size]}`}
      role="group"
      aria-label={label}
      data-reading={id}
    >
      <span className={styles.label}>{label}</span>
      {covered ? (
        <Cover label={label} takesFocus={takesFocus} onUncover={onUncover && press(onUncover)} />
      ) : (
        <>
          <p className={styles.figure}>
            <span className={styles.value} data-room={roomFor}>
              {value}
            </span>
            {unit && <span className={styles.unit}>{unit}</span>}
          </p>
          {note && <p className={styles.note}>{note}</p>}
          {(why || onCover) && (
            <span className={styles.why}>
              {why}
              {onCover && (
                <button
                  ref={takesFocus}
                  type="button"
                  className={styles.coverThis}
                  aria-label={`Cover ${label}`}
                  title={`Cover ${label}`}
                  onClick={press(onCover)}
                >
                  <Icon name="covered" />
                </button>
              )}
            </span>
          )}
        </>
      )}
    </div>
  );
}

interface CoverProps {
  label: string;
  onUncover: (() => void) | undefined;
  takesFocus: (button: HTMLButtonElement | null) => void;
}

function Cover({ label, onUncover, takesFocus }: CoverProps) {
  return (
    <p className={styles.figure}>
      {onUncover ? (
        <button
          ref={takesFocus}
          type="button"
          className={styles.cover}
          onClick={onUncover}
          aria-label={`Uncover ${label}`}
        >
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
