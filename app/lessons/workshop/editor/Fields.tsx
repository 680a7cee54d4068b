'use client';

import { useId, type ReactNode } from 'react';
import type { Path, Value } from '@/lib/lesson/edit-lesson';
import { Button } from '../../../parts/Button';
import type { FieldSpec } from './field-specs';
import { NamedGroups } from './NamedGroups';
import styles from '../workshop.module.css';
import { type Editing, Faults } from '../faults/Faults';
import { type ControlProps, TextField, SelectField, ChecksField } from './PlainFields';
import { capital } from '@/lib/quantity/capital';
import { fieldOf } from '@/lib/lesson/read-progress';

interface FieldsProps {
  fields: readonly FieldSpec[];
  /** What is there now, of whatever shape. */
  data: unknown;
  path: Path;
  editing: Editing;
}

/** A form for a part of a lesson. */
export function Fields({ fields, data, path, editing }: FieldsProps) {
  return (
    <div className={styles.fields}>
      {fields.map((field) => (
        <OneField key={field.key} field={field} data={data} path={path} editing={editing} />
      ))}
    </div>
  );
}

function OneField({ field, data, path, editing }: { field: FieldSpec; data: unknown; path: Path; editing: Editing }) {
  const own = [...path, field.key];
  const value = fieldOf(data, field.key);
  switch (field.control) {
    case 'line':
    case 'expression':
    case 'number':
    case 'prose':
    case 'script':
      return <TextField field={field} value={value} path={own} editing={editing} />;
    case 'select':
      return <SelectField field={field} value={value} path={own} editing={editing} />;
    case 'checks':
      return <ChecksField field={field} value={value} path={own} editing={editing} />;
    case 'lines':
      return <LinesField field={field} value={value} path={own} editing={editing} />;
    case 'group':
      return <GroupField field={field} value={value} path={own} editing={editing} />;
    case 'groups':
      return <GroupsField field={field} value={value} path={own} editing={editing} />;
    case 'named':
      return <NamedGroups field={field} value={value} path={own} editing={editing} />;
    case 'ways':
      return <WaysField field={field} data={data} path={path} editing={editing} />;
  }
}

/** A list whose entries can be moved, removed and added to. */
function Entries(props: {
  field: Pick<Extract<FieldSpec, { control: 'groups' | 'lines' }>, 'label' | 'hint' | 'item'>;
  count: number;
  path: Path;
  make: Value;
  editing: Editing;
  children: (index: number) => ReactNode;
}) {
  const { count, path, make, editing, children } = props;
  const { label, hint, item } = props.field;
  return (
    <fieldset className={styles.entries}>
      <legend>{label}</legend>
      {hint && <p className={styles.hint}>{hint}</p>}
      <Faults path={path} editing={editing} />
      <ol>
        {Array.from({ length: count }, (_, index) => (
          <li key={index}>
            <div>{children(index)}</div>
            <div className={styles.entryTools}>
              <Button
                kind="quiet"
                disabled={index === 0}
                aria-label={`Move ${item} ${index + 1} up`}
                onClick={() => editing.move(path, index, index - 1)}
              >
                Up
              </Button>
              <Button
                kind="quiet"
                disabled={index === count - 1}
                aria-label={`Move ${item} ${index + 1} down`}
                onClick={() => editing.move(path, index, index + 1)}
              >
                Down
              </Button>
              <Button
                kind="quiet"
                aria-label={`Remove ${item} ${index + 1}`}
                onClick={() => editing.set(count === 1 ? path : [...path, index], undefined)}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ol>
      <Button icon="plus" onClick={() => editing.add(path, make)}>
        Add {/^[aeiou]/.test(item) ? 'an' : 'a'} {item}
      </Button>
    </fieldset>
  );
}

function LinesField({ field, value, path, editing }: ControlProps<'lines'>) {
  const lines: readonly unknown[] = Array.isArray(value) ? value : [];
  return (
    <Entries
      {...{ field, path, editing }}
      count={lines.length}
      make={field.make ?? `${/^[aeiou]/.test(field.item) ? 'An' : 'A'} ${field.item}.`}
    >
      {(index) => (
        <TextField
          field={{
            control: 'prose',
            key: String(index),
            label: `${capital(field.item)} ${index + 1}`,
          }}
          value={lines[index]}
          path={[...path, index]}
          editing={editing}
        />
      )}
    </Entries>
  );
}

function GroupField({ field, value, path, editing }: ControlProps<'group'>) {
  if (value === undefined && field.optional) {
    return (
      <div>
        <Button icon="plus" onClick={() => editing.set(path, field.make)}>
          Add: {field.label.charAt(0).toLowerCase()}
          {field.label.slice(1)}
        </Button>
      </div>
    );
  }
  return (
    <fieldset className={styles.group}>
      <legend>{field.label}</legend>
      <Faults path={path} editing={editing} />
      <Fields fields={field.fields} data={value} path={path} editing={editing} />
      {field.optional && (
        <Button kind="quiet" aria-label={`Take it out: ${field.label}`} onClick={() => editing.set(path, undefined)}>
          Take it out
        </Button>
      )}
    </fieldset>
  );
}

function GroupsField({ field, value, path, editing }: ControlProps<'groups'>) {
  const groups: readonly unknown[] = Array.isArray(value) ? value : [];
  return (
    <Entries {...{ field, path, editing }} count={groups.length} make={field.make}>
      {(index) => (
        <>
          <Faults path={[...path, index]} editing={editing} />
          <Fields fields={field.fields} data={groups[index]} path={[...path, index]} editing={editing} />
        </>
      )}
    </Entries>
  );
}

/** One of several ways, such as the ways to answer; changing the way puts a new beginning in its place. */
function WaysField({
  field,
  data,
  path,
  editing,
}: {
  field: Extract<FieldSpec, { control: 'ways' }>;
  data: unknown;
  path: Path;
  editing: Editing;
}) {
  const id = useId();
  const now = field.ways.find((way) => fieldOf(data, way.field.key) !== undefined);
  return (
    <div className={styles.ways}>
      <Faults path={path} editing={editing} />
      <div className={styles.field}>
        <label htmlFor={id}>{field.label}</label>
        <select
          id={id}
          value={now?.field.key ?? ''}
          onChange={(event) => {
            const next = field.ways.find((way) => way.field.key === event.target.value);
            if (next) editing.exchange(path, now?.field.key, next.field.key, next.make);
          }}
        >
          {!now && <option value="">–</option>}
          {field.ways.map((way) => (
            <option key={way.field.key} value={way.field.key}>
              {way.field.label}
            </option>
          ))}
        </select>
      </div>
      {now && <OneField field={now.field} data={data} path={path} editing={editing} />}
    </div>
  );
}
