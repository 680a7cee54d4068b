import { useId, type InputHTMLAttributes } from 'react';
import styles from './Field.module.css';

interface FieldProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'id'> {
  label: string;
  /** What is wrong and how to mend it; announced, and tied to the box. */
  error?: string | undefined;
  hint?: string | undefined;
  /** Printed after the box, such as "m" or "min". */
  unit?: string | undefined;
}

/** One box to type in, with its label, its unit and what is wrong with it. */
export function Field({ label, error, hint, unit, type = 'text', ...rest }: FieldProps) {
  const id = useId();
  const described = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <span className={styles.box}>
        <input
          {...rest}
          id={id}
          type={type}
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
      <p id={`${id}-error`} className={styles.error} role="alert">
        {error}
      </p>
    </div>
  );
}
