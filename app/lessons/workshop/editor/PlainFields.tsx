'use client';

import { useId } from 'react';
import type { Path } from '@/lib/lesson/edit-lesson';
import type { FieldSpec } from './field-specs';
import styles from '../workshop.module.css';
import { type Editing, Faults, isWrong } from '../faults/Faults';

export interface ControlProps<Control extends FieldSpec['control']> {
  field: FieldSpec & { control: Control };
  value: unknown;
  path: Path;
  editing: Editing;
}

const CODE = ['script', 'expression'];

export function TextField({
  field,
  value,
  path,
  editing,
}: ControlProps<'line' | 'expression' | 'number' | 'prose' | 'script'>) {
  const id = useId();
  const text = typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
  const change = (typed: string) => {
    if (typed === '' && field.optional) editing.set(path, undefined);
    else if (field.control === 'number') editing.set(path, /^\d+$/.test(typed) ? Number(typed) : typed);
    else editing.set(path, typed);
  };
  const shared = {
    id,
    value: text,
    'data-path': path.join('.'),
    'aria-invalid': isWrong(path, editing),
    'aria-describedby': `${id}-hint ${id}-faults`,
    className: CODE.includes(field.control) ? styles.code : undefined,
    spellCheck: !CODE.includes(field.control),
  };
  const tall = field.control === 'prose' || field.control === 'script';
  return (
    <div className={styles.field}>
      <label htmlFor={id}>
        {field.label}
        {field.optional && <span className={styles.optional}> (may be left out)</span>}
      </label>
      {tall ? (
        <textarea
          {...shared}
          rows={Math.min(18, Math.max(2, text.split('\n').length + (field.control === 'script' ? 1 : 0)))}
          onChange={(event) => change(event.target.value)}
        />
      ) : (
        <input
          {...shared}
          inputMode={field.control === 'number' ? 'numeric' : undefined}
          autoComplete="off"
          onChange={(event) => change(event.target.value)}
        />
      )}
      {field.hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {field.hint}
        </p>
      )}
      <Faults path={path} editing={editing} id={`${id}-faults`} of={field.label} />
    </div>
  );
}

export function SelectField({ field, value, path, editing }: ControlProps<'select'>) {
  const id = useId();
  const now = value === undefined ? '' : String(value);
  const options = now === '' || field.options.includes(now) ? field.options : [...field.options, now];
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{field.label}</label>
      <select
        id={id}
        value={now}
        data-path={path.join('.')}
        aria-invalid={isWrong(path, editing)}
        aria-describedby={`${id}-faults`}
        onChange={(event) => {
          const { value: chosen } = event.target;
          editing.set(path, chosen === '' ? undefined : chosen === 'true' ? true : chosen);
        }}
      >
        {(field.optional || now === '') && <option value="">–</option>}
        {options.map((option) => (
          <option key={option} value={option}>
            {option === 'true' ? 'yes' : (field.words?.(option) ?? option)}
          </option>
        ))}
      </select>
      <Faults path={path} editing={editing} id={`${id}-faults`} of={field.label} />
    </div>
  );
}

export function ChecksField({ field, value, path, editing }: ControlProps<'checks'>) {
  const chosen = Array.isArray(value) ? value.map(String) : [];
  const toggle = (name: string) => {
    const next = chosen.includes(name) ? chosen.filter((one) => one !== name) : [...chosen, name];
    editing.set(path, next.length === 0 && field.optional ? undefined : next);
  };
  return (
    <fieldset className={styles.checks}>
      <legend>{field.label}</legend>
      {field.hint && <p className={styles.hint}>{field.hint}</p>}
      {field.options.map((name) => (
        <label key={name}>
          <input type="checkbox" checked={chosen.includes(name)} onChange={() => toggle(name)} />{' '}
          {field.words?.(name) ?? name}
        </label>
      ))}
      <Faults path={path} editing={editing} />
      {chosen.map((_, index) => (
        <Faults key={index} path={[...path, index]} editing={editing} />
      ))}
    </fieldset>
  );
}
