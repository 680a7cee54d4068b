import { memo, useId } from 'react';
import styles from './Field.module.css';

interface ChoiceProps<Value extends string> {
  label: string;
  options: readonly { value: Value; label: string }[];
  value: Value;
  onChange: (value: Value) => void;
  hint?: string | undefined;
  disabled?: boolean | undefined;
  /** Says the label without drawing it, where the place makes it plain. */
  labelSpokenOnly?: boolean;
}

function DrawnChoice<Value extends string>({
  label,
  options,
  value,
  onChange,
  hint,
  disabled,
  labelSpokenOnly = false,
}: ChoiceProps<Value>) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={labelSpokenOnly ? 'spoken' : undefined}>
        {label}
      </label>
      <span className={styles.box}>
        <select
          id={id}
          value={value}
          disabled={disabled}
          aria-describedby={hint ? `${id}-hint` : undefined}
          onChange={(event) => onChange(event.target.value as Value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      </span>
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
    </div>
  );
}

/** One of many, in a drop-down list; for two to five, use Segmented. */
export const Choice = memo(DrawnChoice) as typeof DrawnChoice;
