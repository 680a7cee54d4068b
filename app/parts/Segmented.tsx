import { useId } from 'react';
import { Icon, type IconName } from './Icon';
import styles from './Segmented.module.css';

export interface Segment<Value extends string> {
  value: Value;
  label: string;
  /** Draws this in place of the label, which is still said and shown on hover. */
  icon?: IconName;
}

interface SegmentedProps<Value extends string> {
  label: string;
  segments: readonly Segment<Value>[];
  value: Value;
  onChange: (value: Value) => void;
  /** Says the label without drawing it, where the place makes it plain. */
  labelSpokenOnly?: boolean;
}

/** One of a few, all in sight: a radio group, so the arrow keys move through it. */
export function Segmented<Value extends string>(props: SegmentedProps<Value>) {
  const { label, segments, value, onChange, labelSpokenOnly = false } = props;
  const name = useId();
  return (
    <fieldset className={styles.group}>
      <legend className={labelSpokenOnly ? 'spoken' : styles.legend}>{label}</legend>
      <div className={styles.segments}>
        {segments.map((segment) => (
          <label key={segment.value} className={styles.segment} title={segment.icon ? segment.label : undefined}>
            <input
              type="radio"
              name={name}
              value={segment.value}
              checked={segment.value === value}
              onChange={() => onChange(segment.value)}
            />
            {segment.icon ? (
              <>
                <Icon name={segment.icon} />
                <span className="spoken">{segment.label}</span>
              </>
            ) : (
              segment.label
            )}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
