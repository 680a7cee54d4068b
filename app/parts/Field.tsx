import { useEffect, useId, useState, type InputHTMLAttributes } from 'react';
import styles from './Field.module.css';

interface FieldProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'id'> {
  label: string;
  /** What is wrong and how to mend it; announced, and tied to the box. */
  error?: string | undefined;
  hint?: string | undefined;
  /** Printed after the box, such as "m" or "min". */
  unit?: string | undefined;
}

/** Once typing pauses for so long what is wrong is said, ms; until then it only stands there. */
const PAUSE_MS = 800;

/** One box to type in, with its label, its unit and what is wrong with it. */
export function Field({ label, error, hint, unit, type = 'text', onKeyDown, ...rest }: FieldProps) {
  const id = useId();
  // What is new in the page as an alert is read out: once when typing pauses, and again whenever Enter asks.
  const [said, setSaid] = useState<{ error: string | undefined; times: number }>({ error: undefined, times: 0 });
  const say = () => setSaid(({ times }) => ({ error, times: times + 1 }));
  useEffect(() => {
    const pause = setTimeout(() => setSaid(({ times }) => ({ error, times: times + 1 })), error ? PAUSE_MS : 0);
    return () => clearTimeout(pause);
  }, [error]);
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <span className={styles.box}>
        <input
          {...rest}
          id={id}
          type={type}
          onKeyDown={(event) => {
            onKeyDown?.(event);
            if (event.key === 'Enter' && error) say();
          }}
          aria-invalid={error ? true : undefined}
          aria-describedby={described === '' ? undefined : described}
        />
        {unit && <span className={styles.unit}>{unit}</span>}
      </span>
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      <p
        key={said.times}
        id={`${id}-error`}
        className={styles.error}
        role={error !== undefined && said.error === error ? 'alert' : undefined}
      >
        {error}
      </p>
    </div>
  );
}
