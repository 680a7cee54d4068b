import { useId, type InputHTMLAttributes } from 'react';
import { useSaidOncePaused } from './said-once-paused';
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
export function Field({ label, error, hint, unit, type = 'text', onKeyDown, ...rest }: FieldProps) {
  const id = useId();
  const { key, role, again } = useSaidOncePaused(error);
  const described = [unit && `${id}-unit`, hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ');
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
            if (event.key === 'Enter' && error) again();
          }}
          aria-invalid={error ? true : undefined}
          aria-describedby={described === '' ? undefined : described}
        />
        {unit && (
          <span id={`${id}-unit`} className={styles.unit}>
            {unit}
          </span>
        )}
      </span>
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      <p key={key} className={styles.error} role={role}>
        {error && <span className="spoken">{label}: </span>}
        <span id={`${id}-error`}>{error}</span>
      </p>
    </div>
  );
}
